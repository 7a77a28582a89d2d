package lapwright.app

import android.content.Intent
import android.graphics.Bitmap
import android.graphics.Color
import android.net.Uri
import android.os.Bundle
import android.provider.MediaStore
import android.view.ViewGroup
import android.widget.TextView
import lapwright.screens.PhotoPlace
import lapwright.screens.Place
import lapwright.shell.App
import org.junit.Assert.assertEquals
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.RobolectricTestRunner
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController

/** The activity over the real book, from start to start. */
@RunWith(RobolectricTestRunner::class)
class MainActivityTest {
    private val folders = Folders(RuntimeEnvironment.getApplication())

    private fun start(state: Bundle? = null): ActivityController<MainActivity> {
        val controller = Robolectric.buildActivity(MainActivity::class.java)
        if (state == null) controller.setup() else controller.setup(state)
        await("opening") { controller.get().app?.shown != null }
        return controller
    }

    private fun stop(controller: ActivityController<MainActivity>): Bundle {
        val state = Bundle().also { controller.pause().saveInstanceState(it) }
        controller.stop().destroy()
        return state
    }

    private fun bib(): String = openBook(folders).use { it.withHoseBib() }

    private fun go(app: App, place: Place) {
        app.go(place)
        await("going to $place") { app.shown!!.place == place }
    }

    @Test
    fun theBookIsOpenedAndDrawnAndTheNextStartIsWhereThisOneEnded() {
        val place = Place.Penetration(bib())
        val first = start()
        assertNotNull(first.get().window.decorView)
        assertEquals(Place.Jobs, first.get().app!!.shown!!.place)
        go(first.get().app!!, place)
        stop(first)
        assertEquals(place, start().get().app!!.shown!!.place)
    }

    @Test
    fun aPhotoComesBackToANewProcess() {
        val bib = bib()
        val first = start()
        go(first.get().app!!, Place.Penetration(bib))
        first.get().app!!.takePhoto(STEP)
        await("the camera") { shadowOf(first.get()).peekNextStartedActivityForResult() != null }
        val asked = shadowOf(first.get()).nextStartedActivityForResult
        val state = stop(first)

        val second = Robolectric.buildActivity(MainActivity::class.java).create(state).start().restoreInstanceState(state)
        val to = asked.intent.getParcelableExtra(MediaStore.EXTRA_OUTPUT, Uri::class.java)!!
        second.get().contentResolver.openOutputStream(to)!!.use {
            Bitmap.createBitmap(8, 8, Bitmap.Config.ARGB_8888).compress(Bitmap.CompressFormat.JPEG, 80, it)
        }
        // The result comes before the book is open, as after a stop it does.
        assertNull(second.get().app)
        shadowOf(second.get()).callOnActivityResult(asked.requestCode, android.app.Activity.RESULT_OK, Intent())
        second.resume()
        await("the photo") { second.get().app?.shown?.let { photo(it.view)?.place == PhotoPlace.HERE } == true }
    }

    @Test
    fun stoppingKeepsACopyOfTheBook() {
        bib()
        stop(start())
        await("a copy") { folders.copies.listFiles().orEmpty().any { it.extension == "lapwright" } }
    }

    @Test
    fun whatIsNoBookIsToldAndLeftAsItIs() {
        folders.book.writeText("not a book")
        val activity = Robolectric.buildActivity(MainActivity::class.java).setup().get()
        fun told() = activity.findViewById<ViewGroup>(android.R.id.content)?.getChildAt(0) as? ViewGroup
        await("telling") { told() != null }
        val line = told()!!.getChildAt(0) as TextView
        assertTrue(line.text.startsWith(activity.getString(R.string.book_shut)))
        val contrast = contrast(line.currentTextColor, activity.getColor(R.color.ground))
        assertTrue("$contrast to 1", contrast >= 7)
        assertEquals("not a book", folders.book.readText())
    }

    /** The contrast of two colours by WCAG 2.2, "contrast ratio". */
    private fun contrast(one: Int, other: Int): Double {
        val (dark, light) = listOf(one, other).map { Color.luminance(it).toDouble() }.sorted()
        return (light + 0.05) / (dark + 0.05)
    }
}
