package lapwright.app

import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Matrix
import android.media.ExifInterface
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.graphics.asImageBitmap
import java.io.IOException
import lapwright.screens.services.Pictures

/** Reads photos as the phone does: upright, and not much larger than they are drawn. */
object PhonePictures : Pictures {
    override fun photo(path: String, most: Int): ImageBitmap? {
        val whole = BitmapFactory.Options().apply { inJustDecodeBounds = true }
        BitmapFactory.decodeFile(path, whole)
        val side = maxOf(whole.outWidth, whole.outHeight)
        if (side <= 0) return null
        // A camera's photo is many times as large as the glass: it is read by every second, fourth or eighth point.
        val part = generateSequence(1) { it * 2 }.takeWhile { side / it >= most }.lastOrNull() ?: 1
        val read = BitmapFactory.decodeFile(path, BitmapFactory.Options().apply { inSampleSize = part }) ?: return null
        val turn = turn(path)
        if (turn == 0f) return read.asImageBitmap()
        val turned = Matrix().apply { postRotate(turn) }
        return Bitmap.createBitmap(read, 0, 0, read.width, read.height, turned, true).asImageBitmap()
    }

    /** How far the camera was turned, in degrees. */
    private fun turn(path: String): Float = try {
        when (ExifInterface(path).getAttributeInt(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_NORMAL)) {
            ExifInterface.ORIENTATION_ROTATE_90 -> 90f
            ExifInterface.ORIENTATION_ROTATE_180 -> 180f
            ExifInterface.ORIENTATION_ROTATE_270 -> 270f
            else -> 0f
        }
    } catch (_: IOException) {
        0f
    }
}
