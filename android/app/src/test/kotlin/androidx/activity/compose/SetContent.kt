package androidx.activity.compose

import androidx.activity.ComponentActivity
import androidx.compose.runtime.Composable

/** The shape of the real function, so that the activity's content is type-checked. */
fun ComponentActivity.setContent(content: @Composable () -> Unit) {
    this.content = content
}

/** The shape of the real function; nothing here composes it. */
@Composable
@Suppress("UNUSED_PARAMETER")
fun BackHandler(enabled: Boolean = true, onBack: () -> Unit) = Unit
