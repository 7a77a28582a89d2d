package lapwright.screens.services

import androidx.compose.ui.graphics.ImageBitmap

/** Reads photos. */
fun interface Pictures {
    /** The photo in the file at an absolute [path], upright and with no side much over [most] pixels; `null` where none can be read. */
    fun photo(path: String, most: Int): ImageBitmap?
}
