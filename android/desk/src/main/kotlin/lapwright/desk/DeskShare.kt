package lapwright.desk

import lapwright.screens.services.Share
import java.awt.FileDialog
import java.awt.Frame
import java.awt.Toolkit
import java.awt.datatransfer.StringSelection
import java.io.File
import java.nio.file.Files

/** Hands on at a desk: a file is saved where the person says, a text goes to the clipboard. */
class DeskShare(private val window: Frame) : Share {
    override fun place(name: String): String = Files.createTempDirectory("lapwright").resolve(name).toString()

    override fun file(title: String, path: String) {
        val dialog = FileDialog(window, title, FileDialog.SAVE).apply { file = File(path).name; isVisible = true }
        // The dialog itself asks before something is overwritten.
        dialog.files.firstOrNull()?.let { File(path).copyTo(it, overwrite = true) }
    }

    override fun text(title: String, text: String) =
        Toolkit.getDefaultToolkit().systemClipboard.setContents(StringSelection(text), null)
}
