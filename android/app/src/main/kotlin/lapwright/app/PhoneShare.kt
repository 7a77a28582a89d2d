package lapwright.app

import android.app.Activity
import android.content.ClipData
import android.content.Intent
import java.io.File
import lapwright.screens.services.Share

/** Hands on through the phone's own list of programs. */
class PhoneShare(private val activity: Activity) : Share {
    override fun place(name: String): String {
        val out = Folders(activity).out.apply { mkdirs() }
        val yesterday = System.currentTimeMillis() - DAY_MS
        out.listFiles().orEmpty().filter { it.lastModified() < yesterday || it.name == name }.forEach(File::delete)
        return File(out, name).path
    }

    override fun file(title: String, path: String) {
        val address = HandedOn.address(activity, File(path))
        val type = activity.contentResolver.getType(address)
        val send = Intent(Intent.ACTION_SEND).setType(type).putExtra(Intent.EXTRA_STREAM, address)
        // The list of programs passes the grant on by the clip.
        send.clipData = ClipData.newRawUri(title, address)
        start(title, send.addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION))
    }

    override fun text(title: String, text: String) =
        start(title, Intent(Intent.ACTION_SEND).setType("text/plain").putExtra(Intent.EXTRA_TEXT, text))

    private fun start(title: String, send: Intent) =
        activity.startActivity(Intent.createChooser(send.putExtra(Intent.EXTRA_SUBJECT, title), title))

    private companion object {
        const val DAY_MS = 86_400_000L
    }
}
