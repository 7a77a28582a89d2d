package lapwright.screens.services

import lapwright.screens.Place

/**
 * Takes a photo for a step. The book knows of it before the camera opens, and says in the view which file it is to fill;
 * once the camera is back the shell tells the book, which looks at the file itself. So nothing is lost where the app is
 * killed while the camera is open.
 */
interface Camera {
    /** Opens the camera for [photo]; false where this device has none. */
    fun take(photo: PhotoWanted): Boolean
}

/** A photo that the book waits for: of a [step] of the board or penetration at a place, and the absolute path of the [file] to fill. */
data class PhotoWanted(val of: Place, val step: String, val file: String)
