package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.runtime.Composable
import androidx.compose.ui.Alignment
import androidx.compose.ui.Modifier
import androidx.compose.ui.platform.testTag
import androidx.compose.ui.unit.dp
import lapwright.screens.Action
import lapwright.screens.BoardAction
import lapwright.screens.HouseAction
import lapwright.screens.HouseView
import lapwright.screens.JobsAction
import lapwright.screens.NewThing
import lapwright.screens.NextWork
import lapwright.screens.Place
import lapwright.screens.Subject
import lapwright.screens.WallAction
import lapwright.shell.App
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Warning

/** How far a house is, what comes next, and what is open to the weather now. */
@Composable
fun House(app: App, view: HouseView) {
    val words = app.shown?.frame?.words ?: return
    val question = app.asked(view.questions, view.asked)
    val asking = question?.let { asked ->
        Asking(
            asked,
            keep = { Action.HouseKind(HouseAction.KeepDraft(view.job, asked.field, it)) },
            answer = { Action.HouseKind(HouseAction.Answer(view.job, asked.field, it)) },
        )
    }
    Frame(app, view.name, view.job, asking, Next(view.nextSaid) { goOn(app, view) }) {
        if (view.openToWeather.isNotEmpty()) {
            Heading(words.openToWeather)
            for (open in view.openToWeather) {
                Line({ app.go(open.place) }) { Warning(open.text, Modifier.weight(1f)) }
            }
        }
        Heading(words.walls)
        for (wall in view.walls) {
            val open = { app.go(if (wall.measured) Place.Wall(wall.wall) else Place.Measure(wall.wall)) }
            Line({ open() }, Modifier.testTag("wall ${wall.wall}")) {
                Column(Modifier.weight(1f), Arrangement.spacedBy(4.dp)) {
                    Say(wall.name, bold = true)
                    Say(wall.said, size = Sizes.small)
                    if (wall.revision != 0L) Drawn(app, Subject.WallSmall(wall.wall), wall.revision, 110.dp)
                }
            }
        }
        OtherAction(words.newWall, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.WALL, view.job)) }
        OtherAction(words.pole, Modifier.fillMaxWidth()) { app.go(Place.Pole(view.job)) }
        OtherAction(words.sawList, Modifier.fillMaxWidth()) { app.go(Place.SawList(view.job)) }
        OtherAction(words.order, Modifier.fillMaxWidth()) { app.go(Place.Order(view.job)) }
        OtherAction(words.rules, Modifier.fillMaxWidth()) { app.go(Place.Rules(view.job)) }
        Heading(words.stock)
        for (stock in view.stock) Part(app, view.job, stock.stock, stock.said)
        OtherAction(words.newStock, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.STOCK, view.job)) }
        Heading(words.blocks)
        for (size in view.blockSizes) Part(app, view.job, size.blockSize, size.said)
        OtherAction(words.newBlock, Modifier.fillMaxWidth().testTag("new block")) { app.go(Place.New(NewThing.BLOCK_SIZE, view.job)) }
        OtherAction(words.looseBoard, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.LOOSE_BOARD, view.job)) }
        if (view.hasLooseBoard) {
            OtherAction(words.sameBoard, Modifier.fillMaxWidth().testTag("same board")) {
                app.act(Action.BoardKind(BoardAction.CreateSameAsLast(view.job)))
            }
        }
        Heading(words.answers)
        Answers(app, view.questions)
        OtherAction(words.houseLike, Modifier.fillMaxWidth().testTag("house like")) { app.go(Place.New(NewThing.HOUSE, view.job)) }
        OtherAction(if (view.archived) words.bringBack else words.archive, Modifier.fillMaxWidth().testTag("archive")) {
            app.act(Action.JobsKind(if (view.archived) JobsAction.BringBack(view.job) else JobsAction.Archive(view.job)))
        }
        Say(view.copied)
    }
}

/** What the house has, with the tap that takes it off. */
@Composable
private fun Part(app: App, job: String, part: String, said: String) {
    val words = app.shown?.frame?.words ?: return
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        Say(said, Modifier.weight(1f))
        GlyphButton(Glyph.CLOSE, "${words.remove}: $said", Modifier.testTag("remove $part")) {
            app.act(Action.HouseKind(HouseAction.RemovePart(job, part)))
        }
    }
}

/** Goes to what comes next. */
private fun goOn(app: App, view: HouseView) {
    when (val next = view.next) {
        is NextWork.AnswerJob -> app.ask(next.question)
        is NextWork.AddStock -> app.go(Place.New(NewThing.STOCK, view.job))
        is NextWork.AddWall -> app.go(Place.New(NewThing.WALL, view.job))
        is NextWork.MeasureWall -> app.go(Place.Measure(next.wall))
        is NextWork.LayOutPole -> app.go(Place.Pole(view.job))
        is NextWork.PlanWall -> app.act(Action.WallKind(WallAction.PlanBoards(next.wall)))
        is NextWork.MakeTight -> app.go(Place.Penetration(next.penetration))
        is NextWork.HangBoard -> app.go(Place.Board(next.board))
        is NextWork.NothingLeft -> {}
    }
}
