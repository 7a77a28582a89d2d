package lapwright.desk

import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.NextWork
import lapwright.screens.PenetrationAction
import lapwright.screens.Place
import lapwright.screens.StepHow
import lapwright.screens.StepState
import lapwright.screens.View
import lapwright.shell.parts.said

/** Hangs boards and signs steps until the next board is one that a block is cut into. */
internal fun upToANotch(desk: Desk, planned: Planned) {
    repeat(400) {
        val house = (desk.view(Place.House(planned.job)) as View.HouseKind).view
        when (val next = house.next) {
            is NextWork.HangBoard -> {
                val view = planned.board(next.board)
                if (view.asked != null) return
                val open = view.steps.first { it.state == StepState.OPEN }.code
                desk.act(Action.BoardKind(BoardAction.SignStep(view.board, open, said(StepHow.TICK))))
            }
            is NextWork.MakeTight ->
                desk.act(Action.PenetrationKind(PenetrationAction.SignStep(next.penetration, next.step, said(StepHow.TICK))))
            else -> error("$next")
        }
    }
    error("no board with a notch came")
}
