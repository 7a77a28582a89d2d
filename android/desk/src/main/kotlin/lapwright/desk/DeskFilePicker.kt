package lapwright.desk

import lapwright.screens.services.FilePicker
import lapwright.screens.services.Picked
import java.awt.FileDialog
import java.awt.Frame

/** Picks a file at a desk: it is read where it lies. */
class DeskFilePicker(private val window: Frame) : FilePicker {
    override fun pick(done: (Picked) -> Unit) {
        val dialog = FileDialog(window, NAME, FileDialog.LOAD).apply { isVisible = true }
        done(dialog.files.firstOrNull()?.let { Picked.File(it.path) } ?: Picked.Nothing)
    }
}
