package lapwright.desk

import androidx.compose.foundation.background
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.rememberCoroutineScope
import androidx.compose.runtime.setValue
import androidx.compose.runtime.withFrameNanos
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import kotlinx.coroutines.CoroutineDispatcher
import kotlinx.coroutines.withContext
import lapwright.screens.services.Services
import lapwright.shell.App
import lapwright.shell.Screens
import lapwright.shell.look.InLook
import lapwright.shell.look.Look
import lapwright.shell.look.Sizes
import lapwright.shell.look.Sun
import lapwright.shell.parts.Say

/** The name of the program, which is the same in every language. */
const val NAME = "Lapwright"

/**
 * The screens on a book that [open] opens on its own thread: neither the book nor the library that reads it is touched
 * before the ground was shown.
 */
@Composable
fun Opening(bookThread: CoroutineDispatcher, services: Services = Services(), open: () -> Desk) {
    val scope = rememberCoroutineScope()
    var app by remember { mutableStateOf<App?>(null) }
    LaunchedEffect(Unit) {
        // The frame that is drawn now, and the one after it: by then the first is on the glass.
        repeat(2) { withFrameNanos {} }
        val desk = withContext(bookThread) { open() }
        app = desk.app(scope, bookThread, services)
    }
    val opened = app
    if (opened?.shown == null) Ground() else Screens(opened, Face)
}

/** What stands in the window until the book is open. */
@Composable
private fun Ground() = InLook(Look(Sun, Face, leftHanded = false, gloves = false)) {
    Box(Modifier.fillMaxSize().background(Sun.ground), Alignment.Center) { Say(NAME, size = Sizes.title, bold = true) }
}
