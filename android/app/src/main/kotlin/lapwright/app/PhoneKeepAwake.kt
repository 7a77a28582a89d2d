package lapwright.app

import android.os.Handler
import android.os.Looper
import android.view.Window
import android.view.WindowManager.LayoutParams.FLAG_KEEP_SCREEN_ON
import lapwright.screens.services.KeepAwake

/** Keeps the display lit for [LIMIT_MS] after the last tap: long enough to make a cut, too short to empty a battery. */
class PhoneKeepAwake(private val window: Window) : KeepAwake {
    private val handler = Handler(Looper.getMainLooper())
    private val end = Runnable { window.clearFlags(FLAG_KEEP_SCREEN_ON) }

    override fun keep() {
        handler.removeCallbacks(end)
        window.addFlags(FLAG_KEEP_SCREEN_ON)
        handler.postDelayed(end, LIMIT_MS)
    }

    override fun release() {
        handler.removeCallbacks(end)
        end.run()
    }

    companion object {
        /** Ten minutes. */
        const val LIMIT_MS = 600_000L
    }
}
