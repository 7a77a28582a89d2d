package lapwright.shell.parts

import androidx.compose.foundation.Image
import androidx.compose.foundation.background
import androidx.compose.foundation.clickable
import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.BoxWithConstraints
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxHeight
import androidx.compose.foundation.layout.fillMaxSize
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.padding
import androidx.compose.foundation.layout.safeDrawingPadding
import androidx.compose.foundation.layout.size
import androidx.compose.runtime.Composable
import androidx.compose.runtime.LaunchedEffect
import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.remember
import androidx.compose.runtime.setValue
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.graphics.ImageBitmap
import androidx.compose.ui.layout.ContentScale
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.semantics.Role
import androidx.compose.ui.semantics.contentDescription
import androidx.compose.ui.semantics.semantics
import androidx.compose.ui.unit.dp
import lapwright.screens.PhotoPlace
import lapwright.screens.StepLine
import lapwright.screens.StepPhoto
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.look.Target

/** The sides of a photo that is small, and of one that fills the glass, in pixels. */
private const val SMALL = 256
private const val LARGE = 2_048

/** A photo, small; a tap shows it large. One that is not here, or cannot be read, is the sign of a camera. */
@Composable
fun Thumbnail(app: App, photo: StepPhoto, of: String) {
    val words = app.shown?.frame?.words ?: return
    val inks = LocalLook.current.inks
    val here = photo.place == PhotoPlace.HERE
    val image = if (here) picture(app, photo, SMALL) else null
    val look = if (here) Modifier.clickable(role = Role.Button) { app.look(photo) } else Modifier
    Box(
        Modifier.size(Target).then(look).testTag("look ${photo.photo}").semantics { contentDescription = "${words.photo}: $of" },
        Alignment.Center,
    ) {
        if (image == null) {
            Icon(Glyph.CAMERA, if (here) inks.done else inks.warning)
        } else {
            Image(image, null, Modifier.size(Target), contentScale = ContentScale.Crop)
        }
    }
}

/** The photo that is looked at, in place of its screen, until it is closed; the one before it can stand beside it. */
@Composable
fun LargePhoto(app: App) {
    val words = app.shown?.frame?.words ?: return
    val steps = app.lookedSteps
    val shown = if (app.comparing) steps else steps.takeLast(1)
    Column(
        Modifier.fillMaxSize().background(LocalLook.current.inks.ground).safeDrawingPadding().padding(8.dp),
        Arrangement.spacedBy(6.dp),
    ) {
        // What is compared stands side by side where the phone lies, and one over the other where it stands.
        BoxWithConstraints(Modifier.weight(1f).fillMaxWidth()) {
            if (maxWidth > maxHeight) {
                Row(Modifier.fillMaxSize(), Arrangement.spacedBy(6.dp)) {
                    for (step in shown) Large(app, step, Modifier.weight(1f).fillMaxHeight())
                }
            } else {
                Column(Modifier.fillMaxSize(), Arrangement.spacedBy(6.dp)) {
                    for (step in shown) Large(app, step, Modifier.weight(1f).fillMaxWidth())
                }
            }
        }
        if (steps.size > 1) {
            OtherAction(if (app.comparing) words.compareNot else words.compare, Modifier.fillMaxWidth().testTag("compare")) {
                app.compare(!app.comparing)
            }
        }
        OtherAction(words.close, Modifier.fillMaxWidth().testTag("close photo"), Glyph.CLOSE) { app.look(null) }
    }
}

/** The photo of a step under what the step says. */
@Composable
private fun Large(app: App, step: StepLine, modifier: Modifier) {
    val words = app.shown?.frame?.words ?: return
    val photo = step.photo ?: return
    Column(modifier, Arrangement.spacedBy(4.dp)) {
        Say(step.text, size = Sizes.small.atMost(1.4f))
        val described = Modifier.testTag("large photo").semantics { contentDescription = "${words.photo}: ${step.text}" }
        Box(Modifier.weight(1f).fillMaxWidth().then(described), Alignment.Center) {
            picture(app, photo, LARGE)?.let { Image(it, null, Modifier.fillMaxSize(), contentScale = ContentScale.Fit) }
        }
    }
}

@Composable
private fun picture(app: App, photo: StepPhoto, most: Int): ImageBitmap? {
    var image by remember(photo.photo, most) { mutableStateOf<ImageBitmap?>(null) }
    LaunchedEffect(photo.photo, most) { image = app.picture(photo, most) }
    return image
}
