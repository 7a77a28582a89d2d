package lapwright.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.ClipData
import android.content.Intent
import android.os.Bundle
import android.provider.MediaStore
import java.io.File
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
        wanted?.let { state.putStringArray(KEY, arrayOf(it.penetration, it.step, it.file)) }
    }

    /** Takes up what an earlier process waited for. */
    fun restore(state: Bundle?) {
        val kept = state?.getStringArray(KEY) ?: return
        wanted = PhotoWanted(kept[0], kept[1], kept[2])
    }

    private companion object {
        const val REQUEST = 1
        const val KEY = "photo-wanted"
    }
}
