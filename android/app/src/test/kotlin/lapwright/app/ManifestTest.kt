package lapwright.app

import android.content.Context
import android.content.pm.PackageManager
import android.content.res.XmlResourceParser
import java.io.File
import javax.xml.parsers.DocumentBuilderFactory
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.annotation.Config

/** What the phone reads of the app before any of it runs. */
@RunWith(RobolectricTestRunner::class)
class ManifestTest {
    private val app: Context = RuntimeEnvironment.getApplication()

    @Test
    fun onlyTheMicrophoneIsAskedForAndNeverTheNetwork() {
        val asked = app.packageManager.getPackageInfo(app.packageName, PackageManager.GET_PERMISSIONS).requestedPermissions
        assertEquals(listOf(android.Manifest.permission.RECORD_AUDIO), asked.orEmpty().toList())
        assertEquals(PackageManager.PERMISSION_DENIED, app.checkSelfPermission(android.Manifest.permission.INTERNET))
        val source = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(File(System.getProperty("lapwright.manifest")))
        assertEquals(1, source.getElementsByTagName("uses-permission").length)
        assertEquals(0, source.getElementsByTagName("uses-permission-sdk-23").length)
    }

    @Test
    fun onlyTheActivityIsOpenToOthers() {
        val flags = PackageManager.GET_ACTIVITIES or PackageManager.GET_PROVIDERS or PackageManager.GET_SERVICES or
            PackageManager.GET_RECEIVERS
        val own = app.packageManager.getPackageInfo(app.packageName, flags)
        val all = listOf(own.activities, own.providers, own.services, own.receivers).flatMap { it.orEmpty().toList() }
        assertEquals(listOf("lapwright.app.MainActivity"), all.filter { it.exported }.map { it.name })
        val provider = own.providers!!.single()
        assertTrue(provider.grantUriPermissions)
        assertEquals("lapwright.app.files", provider.authority)
    }

    @Test
    fun onlyCheckedCopiesAndPhotosAreBackedUp() {
        assertEquals(
            listOf("cloud-backup copies", "device-transfer copies", "device-transfer book.lapwright.photos"),
            included(R.xml.data_extraction_rules),
        )
        assertEquals(
            listOf("full-backup-content copies", "full-backup-content book.lapwright.photos deviceToDeviceTransfer"),
            included(R.xml.backup_rules),
        )
    }

    /** The included paths of a file of rules, each behind the element that it stands in. */
    private fun included(rules: Int): List<String> = app.resources.getXml(rules).use { xml ->
        val found = mutableListOf<String>()
        var inside = ""
        while (xml.next() != XmlResourceParser.END_DOCUMENT) {
            if (xml.eventType != XmlResourceParser.START_TAG) continue
            if (xml.name == "include") {
                assertEquals("file", xml.getAttributeValue(null, "domain"))
                found += listOfNotNull(inside, xml.getAttributeValue(null, "path"), xml.getAttributeValue(null, "requireFlags"))
                    .joinToString(" ")
            } else {
                inside = xml.name
            }
        }
        found
    }

    @Test
    fun wordsAreThereInEnglish() = assertEquals("The book cannot be opened. It was left as it is.", app.getString(R.string.book_shut))

    @Test
    @Config(qualifiers = "es-rMX")
    fun wordsAreThereInSpanish() {
        assertEquals("No se puede abrir el libro. Quedó como estaba.", app.getString(R.string.book_shut))
        assertEquals("Lapwright", app.getString(R.string.app_name))
        assertEquals("Lapwright", app.applicationInfo.loadLabel(app.packageManager))
    }

    @Test
    @Config(qualifiers = "notnight")
    fun byDayTheGroundIsPale() {
        assertEquals(0xFFFAF8F3.toInt(), app.getColor(R.color.ground))
        assertTrue(app.resources.getBoolean(R.bool.dark_ink_on_bars))
    }

    @Test
    @Config(qualifiers = "night")
    fun atNightTheGroundIsDark() {
        assertEquals(0xFF15191C.toInt(), app.getColor(R.color.ground))
        assertFalse(app.resources.getBoolean(R.bool.dark_ink_on_bars))
    }
}
