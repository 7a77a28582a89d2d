package lapwright.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Intent
import android.os.Bundle
import android.provider.MediaStore
import java.io.File
import lapwright.screens.Place
import lapwright.screens.services.Camera
import lapwright.screens.services.PhotoWanted

/** Takes a photo with the phone's own camera program, which needs no permission. */
class PhoneCamera(private val activity: Activity) : Camera {
    private var wanted: PhotoWanted? = null

    override fun take(photo: PhotoWanted): Boolean {
        val address = HandedOn.address(activity, File(photo.file))
        val capture = Intent(MediaStore.ACTION_IMAGE_CAPTURE).putExtra(MediaStore.EXTRA_OUTPUT, address)
        capture.clipData = ClipData.newRawUri("", address)
        capture.addFlags(Intent.FLAG_GRANT_WRITE_URI_PERMISSION or Intent.FLAG_GRANT_READ_URI_PERMISSION)
        wanted = photo
        return try {
            @Suppress("DEPRECATION") // Its successor keeps what is waited for no better.
            activity.startActivityForResult(capture, REQUEST)
            true
        } catch (_: ActivityNotFoundException) {
            wanted = null
            false
        }
    }

    /** What was waited for, where this [request] is the camera's: told once. */
    fun back(request: Int): PhotoWanted? = wanted.takeIf { request == REQUEST }?.also { wanted = null }

    /** Keeps what is waited for over the end of the process. */
    fun save(state: Bundle) {
        val photo = wanted ?: return
        val (kind, thing) = when (val of = photo.of) {
            is Place.Board -> BOARD to of.board
            is Place.Penetration -> PENETRATION to of.penetration
            else -> return
        }
        state.putStringArray(KEY, arrayOf(kind, thing, photo.step, photo.file))
    }

    /** Takes up what an earlier process waited for. */
    fun restore(state: Bundle?) {
        val (kind, thing, step, file) = state?.getStringArray(KEY) ?: return
        wanted = PhotoWanted(if (kind == BOARD) Place.Board(thing) else Place.Penetration(thing), step, file)
    }

    private companion object {
        const val REQUEST = 1
        const val KEY = "photo-wanted"
        const val BOARD = "board"
        const val PENETRATION = "penetration"
    }
}
