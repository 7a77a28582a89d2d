package lapwright.shell.parts

import androidx.compose.runtime.Composable
import androidx.compose.runtime.DisposableEffect
import androidx.compose.runtime.LaunchedEffect
import lapwright.shell.App

/** A board or a penetration is in hand: the glass stays lit, for a while after each tap. */
@Composable
fun InHand(app: App) {
    LaunchedEffect(app.shown) { app.services.keepAwake.keep() }
    DisposableEffect(Unit) { onDispose { app.services.keepAwake.release() } }
}
