package lapwright.app

import android.content.Context
import android.net.Uri
import android.os.ParcelFileDescriptor
import androidx.core.content.FileProvider
import java.io.File
import java.io.FileNotFoundException

/**
 * The two folders that other programs see, each file only by a grant: they read what is handed on, and a camera fills
 * what the book waits for. The folders stand in `res/xml/handed_on.xml`.
 */
class HandedOn : FileProvider() {
    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor? {
        if (mode != "r" && uri.pathSegments.firstOrNull() != "incoming") throw FileNotFoundException("$uri may only be read")
        return super.openFile(uri, mode)
    }

    /** Android knows the type of every other kind of file that is handed on. */
    override fun getType(uri: Uri): String? =
        if (uri.lastPathSegment.orEmpty().endsWith(".lapwright")) "application/vnd.sqlite3" else super.getType(uri)

    companion object {
        /** The address under which other programs open a file of one of the two folders. */
        fun address(context: Context, file: File): Uri = getUriForFile(context, "lapwright.app.files", file)
    }
}
