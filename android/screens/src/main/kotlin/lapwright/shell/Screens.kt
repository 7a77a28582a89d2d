package lapwright.shell

import androidx.compose.runtime.Composable
import androidx.compose.runtime.saveable.rememberSaveableStateHolder
import androidx.compose.ui.text.font.FontFamily
import lapwright.screens.View
import lapwright.shell.look.InLook
import lapwright.shell.look.Indoors
import lapwright.shell.look.Look
import lapwright.shell.look.Sun
import lapwright.shell.parts.LargePhoto
import lapwright.shell.screens.Backups
import lapwright.shell.screens.Board
import lapwright.shell.screens.Differences
import lapwright.shell.screens.DoneList
import lapwright.shell.screens.HandOver
import lapwright.shell.screens.House
import lapwright.shell.screens.Jobs
import lapwright.shell.screens.Measure
import lapwright.shell.screens.New
import lapwright.shell.screens.Order
import lapwright.shell.screens.Penetration
import lapwright.shell.screens.Pole
import lapwright.shell.screens.Restore
import lapwright.shell.screens.Rules
import lapwright.shell.screens.SawList
import lapwright.shell.screens.Settings
import lapwright.shell.screens.TakeIn
import lapwright.shell.screens.Wall

/** The screen that the app is on, in the look that its settings ask for. */
@Composable
fun Screens(app: App, font: FontFamily) {
    val shown = app.shown ?: return
    val remembered = shown.remembered
    val inks = if (remembered.theme == "dark") Indoors else Sun
    InLook(Look(inks, font, remembered.hand == "left", remembered.gloves)) {
        // How far a screen was scrolled is kept while a photo stands in its place.
        val kept = rememberSaveableStateHolder()
        if (app.looked != null) {
            LargePhoto(app)
        } else {
            kept.SaveableStateProvider("screen") { Screen(app, shown.view) }
        }
    }
}

@Composable
private fun Screen(app: App, shown: View) {
    when (val view = shown) {
        is View.JobsKind -> Jobs(app, view.view)
        is View.HouseKind -> House(app, view.view)
        is View.WallKind -> Wall(app, view.view)
        is View.BoardKind -> Board(app, view.view)
        is View.PenetrationKind -> Penetration(app, view.view)
        is View.NewKind -> New(app, view.view)
        is View.MeasureKind -> Measure(app, view.view)
        is View.PoleKind -> Pole(app, view.view)
        is View.SawListKind -> SawList(app, view.view)
        is View.OrderKind -> Order(app, view.view)
        is View.RulesKind -> Rules(app, view.view)
        is View.SettingsKind -> Settings(app, view.view)
        is View.DoneListKind -> DoneList(app, view.view)
        is View.BackupsKind -> Backups(app, view.view)
        is View.RestoreKind -> Restore(app, view.view)
        is View.HandOverKind -> HandOver(app, view.view)
        is View.TakeInKind -> TakeIn(app, view.view)
        is View.DifferencesKind -> Differences(app, view.view)
    }
}
