package lapwright.app

import android.os.Build
import android.view.HapticFeedbackConstants
import android.view.View
import lapwright.screens.services.Haptics

/** The phone's own buzz, as the person has set it; no permission is needed for it. */
class PhoneHaptics(private val view: () -> View) : Haptics {
    override fun taken() = buzz(HapticFeedbackConstants.VIRTUAL_KEY)

    override fun refused() = buzz(
        if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) HapticFeedbackConstants.REJECT
        else HapticFeedbackConstants.LONG_PRESS,
    )

    private fun buzz(kind: Int) {
        view().performHapticFeedback(kind)
    }
}
