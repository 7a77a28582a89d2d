package androidx.activity

import android.app.Activity
import androidx.compose.runtime.Composable

/** Stands in for the real one, which the JVM does not have: it keeps what it is to draw and draws nothing. */
open class ComponentActivity : Activity() {
    var content: (@Composable () -> Unit)? = null
}
