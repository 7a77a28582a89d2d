package lapwright.shell

import androidx.compose.runtime.Composable
import androidx.compose.ui.ImageComposeScene
import androidx.compose.ui.unit.Density
import org.jetbrains.skia.EncodedImageFormat
import java.awt.image.BufferedImage
import java.io.ByteArrayInputStream
import java.io.File
import javax.imageio.ImageIO

/** A screen of the reference phone, 360 x 800 dp, as a picture of two pixels to the dp. */
fun picture(fontScale: Float = 1f, content: @Composable () -> Unit): BufferedImage {
    val scene = ImageComposeScene(720, 1600, Density(2f, fontScale), content = content)
    try {
        scene.render(0)
        val bytes = scene.render(2_000_000_000).encodeToData(EncodedImageFormat.PNG) ?: error("no picture was made")
        return ImageIO.read(ByteArrayInputStream(bytes.bytes))
    } finally {
        scene.close()
    }
}

fun save(image: BufferedImage, file: File) {
    file.parentFile.mkdirs()
    ImageIO.write(image, "png", file)
}
