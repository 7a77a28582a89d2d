package lapwright.core

import org.junit.Assert.assertEquals
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test

/** Values, lengths and errors come across the boundary whole. */
class BoundaryTest {
    @Test
    fun theVersionIsThatOfTheWorkspace() {
        assertTrue(version(), Regex("""\d+\.\d+\.\d+""").matches(version()))
    }

    @Test
    fun lengthsCrossAsNanometres() {
        // 25.4 mm is an inch exactly (NIST SP 811), so these are 6 1/16 in.
        assertEquals("6 1/16\"", lengthText(153_987_500L, "in/16", "en"))
        assertEquals("-6 1/16\"", lengthText(-153_987_500L, "in/16", "en"))
    }

    @Test
    fun anErrorKeepsItsCodeFieldAndText() {
        val refused = assertThrows(Refusal.Refused::class.java) { lengthText(0L, "cubits", "en") }
        assertEquals("choice", refused.code)
        assertEquals("show", refused.field)
        assertTrue(refused.text, refused.text.contains("in/16"))
    }

    @Test
    fun anErrorSpeaksTheLanguageThatWasAskedFor() {
        val texts = listOf("en", "es").map { language ->
            assertThrows(Refusal.Refused::class.java) { lengthText(0L, "cubits", language) }.text
        }
        assertTrue(texts.toString(), texts[0] != texts[1])
    }
}
