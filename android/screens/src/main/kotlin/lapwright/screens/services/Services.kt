package lapwright.screens.services

import kotlin.io.path.createTempDirectory

/** What a device does for the screens. Each has a quiet form for a device, window or test without it. */
class Services(
    val speech: Speech = Quiet,
    val haptics: Haptics = Quiet,
    val share: Share = Quiet,
    val camera: Camera = Quiet,
    val keepAwake: KeepAwake = Quiet,
    val listening: Listening = Quiet,
    val pictures: Pictures = Pictures { _, _ -> null },
    val files: FilePicker = Quiet,
)

private object Quiet : Speech, Haptics, Share, Camera, KeepAwake, Listening, FilePicker {
    override fun say(text: String, language: String) = Unit
    override fun hush() = Unit
    override fun taken() = Unit
    override fun refused() = Unit
    override fun place(name: String): String = createTempDirectory("lapwright").resolve(name).toString()
    override fun file(title: String, path: String) = Unit
    override fun text(title: String, text: String) = Unit
    override fun take(photo: PhotoWanted) = false
    override fun keep() = Unit
    override fun release() = Unit
    override val available = false
    override fun listen(language: String, done: (Heard) -> Unit) = done(Heard.Nothing)
    override fun pick(done: (Picked) -> Unit) = done(Picked.Nothing)
}
