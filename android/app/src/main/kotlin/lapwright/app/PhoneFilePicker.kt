package lapwright.app

import android.app.Activity
import android.content.ActivityNotFoundException
import android.content.Intent
import android.net.Uri
import android.provider.OpenableColumns
import java.io.File
import java.io.IOException
import lapwright.screens.services.FilePicker
import lapwright.screens.services.Picked

/** Picks a file with the phone's own list of files, which needs no permission. */
class PhoneFilePicker(private val activity: Activity) : FilePicker {
    /** The activity tells the app what was picked: whoever asked may have gone with the process by then. */
    override fun pick(done: (Picked) -> Unit) {
        val open = Intent(Intent.ACTION_OPEN_DOCUMENT).addCategory(Intent.CATEGORY_OPENABLE).setType("*/*")
        try {
            @Suppress("DEPRECATION") // Its successor asks before the activity is there.
            activity.startActivityForResult(open, REQUEST)
        } catch (_: ActivityNotFoundException) {
            done(Picked.Unreadable)
        }
    }

    /** The address of a file that came back with the result of a [request]; none where it is another's, or nothing was picked. */
    fun back(request: Int, data: Intent?): Uri? = data?.data?.takeIf { request == REQUEST }

    /** Brings a file into our own folder, where the book can read it; the one before goes. */
    fun fetch(address: Uri): Picked {
        val folder = Folders(activity).picked
        return try {
            folder.deleteRecursively()
            folder.mkdirs()
            val file = File(folder, nameOf(address))
            val from = activity.contentResolver.openInputStream(address) ?: return Picked.Unreadable
            from.use { file.outputStream().use(it::copyTo) }
            Picked.File(file.path)
        } catch (_: IOException) {
            Picked.Unreadable
        } catch (_: SecurityException) {
            Picked.Unreadable
        }
    }

    /** What the other program calls the file: never a way out of our folder. */
    private fun nameOf(address: Uri): String {
        val columns = arrayOf(OpenableColumns.DISPLAY_NAME)
        val told = activity.contentResolver.query(address, columns, null, null, null)?.use { row ->
            if (row.moveToFirst()) row.getString(0) else null
        }
        return told?.substringAfterLast('/')?.takeIf { it.isNotBlank() && it != "." && it != ".." } ?: "file"
    }

    private companion object {
        const val REQUEST = 3
    }
}
