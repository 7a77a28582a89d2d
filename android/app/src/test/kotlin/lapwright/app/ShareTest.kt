package lapwright.app

import android.app.Activity
import android.content.Intent
import android.net.Uri
import android.provider.OpenableColumns
import java.io.File
import java.io.FileNotFoundException
import lapwright.core.Book
import lapwright.screens.Place
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.Shadows.shadowOf

/** What is handed on arrives whole at the other program, and nothing else can be opened. */
@RunWith(RobolectricTestRunner::class)
class ShareTest {
    private val start = Robolectric.buildActivity(Start::class.java).setup().get()
    private val share = start.phone.services.share
    private val folders = Folders(start)

    private fun handedOn(): Intent {
        val chooser = shadowOf(start as Activity).nextStartedActivity
        assertEquals(Intent.ACTION_CHOOSER, chooser.action)
        return chooser.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
    }

    private fun stream(send: Intent): Uri = send.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)!!

    @Test
    fun aCopyOfTheBookOpensAtTheOtherProgramWithEverythingInIt() {
        openBook(folders).use { book ->
            book.withHoseBib()
            val place = share.place("book.lapwright")
            book.copy(place, 1_777_896_000_000L)
            share.file("The book", place)
        }
        val send = handedOn()
        assertEquals("application/vnd.sqlite3", send.type)
        assertTrue(send.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
        assertEquals(stream(send), send.clipData!!.getItemAt(0).uri)
        val theirs = File(start.cacheDir, "theirs.lapwright")
        start.contentResolver.openInputStream(stream(send))!!.use { theirs.writeBytes(it.readBytes()) }
        Book.open(theirs.path, null).use { copy ->
            val jobs = copy.view(context(), Place.Jobs) as View.JobsKind
            assertEquals(listOf("Lot 12"), jobs.view.jobs.map { it.name })
        }
    }

    @Test
    fun aFileArrivesUnderItsNameAndSizeAndCannotBeWritten() {
        val place = share.place("order.csv")
        File(place).writeText("boards,12\n")
        share.file("Order", place)
        val uri = stream(handedOn())
        assertEquals("text/csv", start.contentResolver.getType(uri))
        start.contentResolver.query(uri, null, null, null, null)!!.use { row ->
            row.moveToFirst()
            assertEquals("order.csv", row.getString(row.getColumnIndexOrThrow(OpenableColumns.DISPLAY_NAME)))
            assertEquals(10L, row.getLong(row.getColumnIndexOrThrow(OpenableColumns.SIZE)))
        }
        assertThrows(FileNotFoundException::class.java) { start.contentResolver.openOutputStream(uri) }
        assertEquals("boards,12\n", File(place).readText())
    }

    @Test
    fun textIsHandedOnAsText() {
        share.text("Order", "12 boards")
        assertEquals("12 boards", handedOn().getStringExtra(Intent.EXTRA_TEXT))
    }

    @Test
    fun nothingOutsideTheTwoFoldersCanBeOpened() {
        folders.out.mkdirs()
        folders.book.writeText("the book itself")
        val root = Uri.parse("content://lapwright.app.files")
        val tries = listOf(
            root.buildUpon().appendPath("out").appendPath("../../files/book.lapwright").build(),
            root.buildUpon().appendPath("out").appendPath("..").appendPath("x").build(),
            root.buildUpon().appendPath("files").appendPath("book.lapwright").build(),
            root.buildUpon().appendPath("book.lapwright").build(),
            root.buildUpon().appendPath("out").appendPath("..").build(),
        )
        for (uri in tries) {
            assertThrows(uri.toString(), FileNotFoundException::class.java) { start.contentResolver.openInputStream(uri) }
        }
    }

    @Test
    fun whatWasHandedOnYesterdayIsGone() {
        val old = File(share.place("old.pdf")).apply { writeText("old") }
        val today = File(share.place("today.pdf")).apply { writeText("today") }
        old.setLastModified(System.currentTimeMillis() - 2 * 86_400_000L)
        share.place("new.pdf")
        assertFalse(old.exists())
        assertTrue(today.exists())
    }

    @Test
    fun aCopyIsKeptWhereTheBackupRulesLook() {
        openBook(folders).use { book ->
            val kept = File(book.keepCopy(folders.copies.path, 1_777_896_000_000L))
            assertEquals(folders.copies, kept.parentFile)
            assertEquals(File(start.filesDir, "copies"), folders.copies)
        }
    }
}
