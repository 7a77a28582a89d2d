package lapwright.app

import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.database.Cursor
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException

/**
 * The two folders that other programs see, each file only by a grant: they read what is handed on, and a camera fills
 * what the book waits for.
 */
class HandedOn : ContentProvider() {
    override fun onCreate() = true

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        val file = file(uri)
        if (mode != "r" && uri.pathSegments.first() != INCOMING) throw FileNotFoundException("$uri may only be read")
        return ParcelFileDescriptor.open(file, ParcelFileDescriptor.parseMode(mode))
    }

    override fun getType(uri: Uri): String = TYPES[file(uri).extension] ?: "application/octet-stream"

    override fun query(uri: Uri, columns: Array<String>?, where: String?, values: Array<String>?, order: String?): Cursor {
        val file = file(uri)
        val known = mapOf(OpenableColumns.DISPLAY_NAME to file.name, OpenableColumns.SIZE to file.length())
        val asked = (columns?.toList() ?: known.keys.toList()).filter { it in known }
        return MatrixCursor(asked.toTypedArray(), 1).apply { addRow(asked.map(known::get)) }
    }

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null

    override fun update(uri: Uri, values: ContentValues?, where: String?, args: Array<String>?) = 0

    override fun delete(uri: Uri, where: String?, args: Array<String>?) = 0

    private fun file(uri: Uri): File {
        val folders = Folders(requireNotNull(context))
        val (folder, name) = uri.pathSegments.takeIf { it.size == 2 } ?: throw FileNotFoundException("$uri is no file here")
        val inside = when (folder) {
            OUT -> folders.out
            INCOMING -> folders.incoming
            else -> throw FileNotFoundException("$uri is no file here")
        }
        val file = File(inside, name).canonicalFile
        if (file.parentFile != inside.canonicalFile) throw FileNotFoundException("$uri is no file here")
        return file
    }

    companion object {
        private const val OUT = "out"
        private const val INCOMING = "incoming"
        private val TYPES = mapOf(
            "jpg" to "image/jpeg",
            "pdf" to "application/pdf",
            "csv" to "text/csv",
            "json" to "application/json",
            "zip" to "application/zip",
            "lapwright" to "application/vnd.sqlite3",
        )

        /** The address under which other programs open a file of one of the two folders. */
        fun address(context: Context, file: File): Uri {
            val folder = if (file.parentFile == Folders(context).incoming) INCOMING else OUT
            return Uri.Builder().scheme("content").authority("lapwright.app.files").appendPath(folder).appendPath(file.name)
                .build()
        }
    }
}
