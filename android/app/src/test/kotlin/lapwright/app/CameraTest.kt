package lapwright.app

import android.app.Activity
import android.content.Intent
import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.graphics.Color
import android.media.ExifInterface
import android.net.Uri
import android.os.Bundle
import android.os.Parcel
import android.provider.MediaStore
import java.io.File
import lapwright.core.Book
import lapwright.core.Refusal
import lapwright.screens.PhotoPlace
import lapwright.screens.Place
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf

/** A photo from the tap to the export, with the camera program played by the test. */
@RunWith(RobolectricTestRunner::class)
class CameraTest {
    private val folders = Folders(RuntimeEnvironment.getApplication())

    /** A picture as a camera writes it, by the framework's own encoder. */
    private fun shoot(activity: Activity, to: Uri) {
        val picture = Bitmap.createBitmap(64, 48, Bitmap.Config.ARGB_8888).apply { eraseColor(Color.rgb(160, 150, 120)) }
        activity.contentResolver.openOutputStream(to)!!.use { picture.compress(Bitmap.CompressFormat.JPEG, 90, it) }
    }

    private fun asked(activity: Activity): Pair<Intent, Int> =
        shadowOf(activity).nextStartedActivityForResult.let { it.intent to it.requestCode }

    private fun address(capture: Intent): Uri = capture.getParcelableExtra(MediaStore.EXTRA_OUTPUT, Uri::class.java)!!

    /** The state as the system keeps it while the process is gone: bytes. */
    private fun overTheEnd(state: Bundle): Bundle {
        val parcel = Parcel.obtain().apply { writeBundle(state) }
        val bytes = parcel.marshall().also { parcel.recycle() }
        val again = Parcel.obtain().apply { unmarshall(bytes, 0, bytes.size); setDataPosition(0) }
        return again.readBundle(javaClass.classLoader)!!
    }

    @Test
    fun aPhotoComesBackToANewStartAfterTheAppWasKilled() {
        val (bib, state, asked) = openBook(folders).use { book ->
            val bib = book.withHoseBib()
            val start = Robolectric.buildActivity(Start::class.java).setup()
            assertTrue(start.get().phone.services.camera.take(book.beginPhoto(bib)))
            val state = Bundle().also { start.saveInstanceState(it) }
            val asked = asked(start.get())
            start.pause().stop().destroy()
            Triple(bib, overTheEnd(state), asked)
        }
        assertEquals(MediaStore.ACTION_IMAGE_CAPTURE, asked.first.action)
        assertTrue(asked.first.flags and Intent.FLAG_GRANT_WRITE_URI_PERMISSION != 0)

        val again = Robolectric.buildActivity(Start::class.java).setup(state).get()
        shoot(again, address(asked.first))
        openBook(folders).use { book ->
            val wanted = again.phone.photoBack(asked.second)!!
            assertEquals(Place.Penetration(bib), wanted.of)
            val photo = photo(book.takeIn(wanted, context()).view)!!
            assertEquals(PhotoPlace.HERE, photo.place)
            assertEquals(64, BitmapFactory.decodeFile(photo.file).width)
            assertFalse(File(wanted.file).exists())
            assertNull("told once", again.phone.photoBack(asked.second))
        }
    }

    @Test
    fun aCameraThatTookNothingLeavesNothing() {
        openBook(folders).use { book ->
            val bib = book.withHoseBib()
            val start = Robolectric.buildActivity(Start::class.java).setup().get()
            start.phone.services.camera.take(book.beginPhoto(bib))
            val wanted = start.phone.photoBack(asked(start).second)!!
            assertNull(photo(book.takeIn(wanted, context()).view))
            assertEquals(emptyList<File>(), folders.incoming.listFiles().orEmpty().toList())
        }
    }

    @Test
    fun aPhotoThatIsDeletedIsMissingAndIsNotExported() {
        openBook(folders).use { book ->
            val photo = taken(book)
            File(photo.file).delete()
            val view = book.view(context("es"), Place.Penetration(photo.bib))
            assertEquals(PhotoPlace.MISSING, photo(view)!!.place)
            assertThrows(Refusal.Refused::class.java) { book.exportPhoto(photo.id, File(folders.out, "a.jpg").path) }
        }
    }

    @Test
    fun whatIsExportedSaysNoPlaceAndStandsTheSameWayUp() {
        openBook(folders).use { book ->
            val photo = taken(book) { file ->
                ExifInterface(file).apply {
                    setAttribute(ExifInterface.TAG_ORIENTATION, ExifInterface.ORIENTATION_ROTATE_90.toString())
                    setAttribute(ExifInterface.TAG_GPS_LATITUDE, "41/1,24/1,0/1")
                    setAttribute(ExifInterface.TAG_GPS_LATITUDE_REF, "N")
                    setAttribute(ExifInterface.TAG_GPS_LONGITUDE, "2/1,10/1,0/1")
                    setAttribute(ExifInterface.TAG_GPS_LONGITUDE_REF, "E")
                    setAttribute(ExifInterface.TAG_MAKE, "Invented")
                    saveAttributes()
                }
            }
            val place = FloatArray(2)
            assertTrue("the photo itself has a place", ExifInterface(photo.file).getLatLong(place))
            val out = File(folders.out.apply { mkdirs() }, "photo.jpg")
            book.exportPhoto(photo.id, out.path)
            val exported = ExifInterface(out.path)
            assertFalse(exported.getLatLong(place))
            assertNull(exported.getAttribute(ExifInterface.TAG_MAKE))
            assertEquals(ExifInterface.ORIENTATION_ROTATE_90, exported.getAttributeInt(ExifInterface.TAG_ORIENTATION, 0))
            val (before, after) = listOf(photo.file, out.path).map(BitmapFactory::decodeFile)
            assertTrue("the picture is the same", before.sameAs(after))
        }
    }

    private class Taken(val bib: String, val id: String, val file: String)

    private fun taken(book: Book, change: (String) -> Unit = {}): Taken {
        val bib = book.withHoseBib()
        val start = Robolectric.buildActivity(Start::class.java).setup().get()
        start.phone.services.camera.take(book.beginPhoto(bib))
        val (capture, request) = asked(start)
        shoot(start, address(capture))
        val wanted = start.phone.photoBack(request)!!
        change(wanted.file)
        val photo = photo(book.takeIn(wanted, context()).view)!!
        return Taken(bib, photo.photo, photo.file)
    }
}
