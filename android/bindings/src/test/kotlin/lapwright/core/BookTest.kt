package lapwright.core

import lapwright.screens.Action
import lapwright.screens.Context
import lapwright.screens.JobsAction
import lapwright.screens.Place
import lapwright.screens.View
import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.nio.file.Files

/** A book is opened, answered and read from the other side of the boundary, on a real file. */
class BookTest {
    private val folder: File = Files.createTempDirectory("lapwright").toFile().apply { deleteOnExit() }

    private fun context(language: String = "en") = Context(
        nowMs = 1_700_000_000_000L,
        utcOffsetMinutes = -360,
        signer = "Rosa",
        language = language,
        show = "in/16",
        division = "1/16\"",
        entropy = ByteArray(16) { it.toByte() },
    )

    private fun names(view: View): List<String> = (view as View.JobsKind).view.jobs.map { it.name }

    @Test
    fun anAnswerIsThereAfterTheBookIsOpenedAgain() {
        val path = File(folder, "a.lapwright").path
        Book.open(path, null).use { book ->
            assertEquals(emptyList<String>(), names(book.view(context(), Place.Jobs)))
            book.act(context(), Action.JobsKind(JobsAction.Create("Lot 7", null)))
        }
        Book.open(path, null).use { book -> assertEquals(listOf("Lot 7"), names(book.view(context(), Place.Jobs))) }
    }

    @Test
    fun aRefusedAnswerChangesNothing() {
        Book.open(File(folder, "b.lapwright").path, null).use { book ->
            val texts = listOf("en", "es").map { language ->
                val refused = assertThrows(Refusal.Refused::class.java) {
                    book.act(context(language), Action.JobsKind(JobsAction.Create("  ", null)))
                }
                assertEquals("name", refused.field)
                refused.text
            }
            assertTrue(texts.toString(), texts[0] != texts[1])
            assertEquals(emptyList<String>(), names(book.view(context(), Place.Jobs)))
        }
    }

    @Test
    fun aHeardLengthIsReadAndWhatIsNoneIsRefused() {
        Book.open(File(folder, "h.lapwright").path, null).use { book ->
            assertEquals("6 1/16\"", book.heard(context(), "six and one sixteenth"))
            assertEquals("6 1/16\"", book.heard(context("es"), "seis y un dieciseisavo"))
            assertThrows(Refusal.Refused::class.java) { book.heard(context(), "good morning") }
        }
    }

    @Test
    fun aCopyIsABookOfItsOwnAndItsAgeIsKept() {
        val (path, copied) = File(folder, "c.lapwright").path to File(folder, "copy.lapwright").path
        Book.open(path, null).use { book ->
            book.act(context(), Action.JobsKind(JobsAction.Create("Lot 7", null)))
            val before = (book.view(context(), Place.Jobs) as View.JobsKind).view.copied
            book.copy(copied, context().nowMs)
            assertTrue(before, (book.view(context(), Place.Jobs) as View.JobsKind).view.copied != before)
            assertThrows(Refusal.Refused::class.java) { book.copy(File(folder, "no/such/folder/c").path, context().nowMs) }
        }
        Book.open(copied, null).use { book -> assertEquals(listOf("Lot 7"), names(book.view(context(), Place.Jobs))) }
    }

    @Test
    fun whatIsNotABookIsLeftAsItIsAndSaysSoInThePhonesLanguage() {
        val file = File(folder, "notes.txt").apply { writeText("not a book") }
        val refused = { language: String -> assertThrows(Refusal.Refused::class.java) { Book.open(file.path, null, language) }.text }
        assertEquals("${file.path} is not a book. It was left as it is.", refused("fr"))
        assertEquals("${file.path} no es un libro. Se dejó como está.", refused("es"))
        assertEquals("not a book", file.readText())
    }
}
