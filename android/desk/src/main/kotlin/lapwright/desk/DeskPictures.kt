package lapwright.desk

import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.toComposeImageBitmap
import lapwright.screens.services.Pictures
import org.jetbrains.skia.Image
import java.io.File
import java.io.IOException

/** Reads photos at a desk, in their own size: there is memory for it. */
object DeskPictures : Pictures {
    override fun photo(path: String, most: Int): ImageBitmap? = try {
        Image.makeFromEncoded(File(path).readBytes()).toComposeImageBitmap()
    } catch (_: IOException) {
        null
    } catch (_: IllegalArgumentException) {
        null
    }
}
