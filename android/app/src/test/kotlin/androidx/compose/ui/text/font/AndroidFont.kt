package androidx.compose.ui.text.font

import android.content.res.AssetManager

/** The shape of the real function, which reads a face from the app's assets; here nothing is drawn with it. */
@Suppress("UNUSED_PARAMETER")
fun Font(
    path: String,
    assetManager: AssetManager,
    weight: FontWeight = FontWeight.Normal,
    style: FontStyle = FontStyle.Normal,
): Font = object : Font {
    override val weight = weight
    override val style = style
}
