package lapwright.shell.screens

import androidx.compose.foundation.layout.Arrangement
import androidx.compose.foundation.layout.Box
import androidx.compose.foundation.layout.Column
import androidx.compose.foundation.layout.Row
import androidx.compose.foundation.layout.fillMaxWidth
import androidx.compose.foundation.layout.width
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
import lapwright.screens.WallProgress
import lapwright.shell.App
import lapwright.shell.look.LocalLook
import lapwright.shell.look.Sizes
import lapwright.shell.parts.Answers
import lapwright.shell.parts.Asking
import lapwright.shell.parts.Bar
import lapwright.shell.parts.Drawn
import lapwright.shell.parts.Fold
import lapwright.shell.parts.Frame
import lapwright.shell.parts.Glyph
import lapwright.shell.parts.GlyphButton
import lapwright.shell.parts.Heading
import lapwright.shell.parts.Icon
import lapwright.shell.parts.Line
import lapwright.shell.parts.Next
import lapwright.shell.parts.OtherAction
import lapwright.shell.parts.Say
import lapwright.shell.parts.Stop

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
    val next = if (view.next is NextWork.NothingLeft) null else Next(view.nextSaid) { goOn(app, view, view.next) }
    Frame(app, view.name, view.job, asking, next) {
        if (view.progress.isNotEmpty()) Bar(view.progress, view.boardsUp, view.boards)
        if (view.next is NextWork.NothingLeft) Say(view.nextSaid, bold = true)
        if (view.openToWeather.isNotEmpty()) {
            Heading(words.openToWeather)
            for (open in view.openToWeather) {
                Line({ app.go(open.place) }) { Stop(open.text, Modifier.weight(1f)) }
            }
        }
        view.then?.let { then ->
            Heading(words.nextWork)
            Line({ goOn(app, view, then) }, Modifier.testTag("then")) { Say(view.thenSaid, Modifier.weight(1f)) }
        }
        Heading(words.walls)
        for (wall in view.walls) WallCard(app, wall)
        if (view.penetrations.isNotEmpty()) {
            val done = view.penetrations.count { it.done }
            Fold(app, "${words.penetrations}: $done / ${view.penetrations.size}", "penetrations") {
                for (line in view.penetrations) {
                    Line({ app.go(Place.Penetration(line.penetration)) }, Modifier.testTag("penetration ${line.penetration}")) {
                        Column(Modifier.weight(1f)) {
                            Say("${line.letter} · ${line.name}", bold = !line.done)
                            Say("${line.wall} · ${line.said}", size = Sizes.small)
                        }
                        if (line.done) Icon(Glyph.TICK, LocalLook.current.inks.done)
                    }
                }
            }
        }
        OtherAction(words.looseBoard, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.LOOSE_BOARD, view.job)) }
        if (view.hasLooseBoard) {
            OtherAction(words.sameBoard, Modifier.fillMaxWidth().testTag("same board")) {
                app.act(Action.BoardKind(BoardAction.CreateSameAsLast(view.job)))
            }
        }
        OtherAction(words.pole, Modifier.fillMaxWidth()) { app.go(Place.Pole(view.job)) }
        OtherAction(words.sawList, Modifier.fillMaxWidth()) { app.go(Place.SawList(view.job)) }
        OtherAction(words.order, Modifier.fillMaxWidth()) { app.go(Place.Order(view.job)) }
        OtherAction(words.rules, Modifier.fillMaxWidth()) { app.go(Place.Rules(view.job)) }
        OtherAction(words.newWall, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.WALL, view.job)) }
        Fold(app, words.stock, "stock") {
            for (stock in view.stock) Part(app, view.job, stock.stock, stock.said)
            OtherAction(words.newStock, Modifier.fillMaxWidth()) { app.go(Place.New(NewThing.STOCK, view.job)) }
            Heading(words.blocks)
            for (size in view.blockSizes) Part(app, view.job, size.blockSize, size.said)
            OtherAction(words.newBlock, Modifier.fillMaxWidth().testTag("new block")) { app.go(Place.New(NewThing.BLOCK_SIZE, view.job)) }
        }
        Fold(app, words.answers, "answers") { Answers(app, view.questions) }
        Fold(app, words.more, "more") {
            OtherAction(words.houseLike, Modifier.fillMaxWidth().testTag("house like")) { app.go(Place.New(NewThing.HOUSE, view.job)) }
            OtherAction(words.handOver, Modifier.fillMaxWidth().testTag("hand over")) { app.go(Place.HandOver(view.job)) }
            OtherAction(if (view.archived) words.bringBack else words.archive, Modifier.fillMaxWidth().testTag("archive")) {
                app.act(Action.JobsKind(if (view.archived) JobsAction.BringBack(view.job) else JobsAction.Archive(view.job)))
            }
        }
        Say(view.copied)
    }
}

/** A wall, how far it is, and a small drawing of it beside that. */
@Composable
private fun WallCard(app: App, wall: WallProgress) {
    val open = { app.go(if (wall.measured) Place.Wall(wall.wall) else Place.Measure(wall.wall)) }
    Line({ open() }, Modifier.testTag("wall ${wall.wall}")) {
        Column(Modifier.weight(1f), Arrangement.spacedBy(4.dp)) {
            Say(wall.name, bold = true)
            Say(wall.said, size = Sizes.small)
            val all = wall.planned + wall.cut + wall.fixed
            if (all > 0u) Bar("", wall.fixed, all)
        }
        if (wall.revision != 0L) {
            Box(Modifier.width(SMALL_WALL)) { Drawn(app, Subject.WallSmall(wall.wall), wall.revision, SMALL_WALL) }
        }
    }
}

/** How wide and high a wall is drawn beside its words. */
private val SMALL_WALL = 120.dp

/** What the house has, with the tap that takes it off. */
@Composable
private fun Part(app: App, job: String, part: String, said: String) {
    val words = app.shown?.frame?.words ?: return
    Row(Modifier.fillMaxWidth(), Arrangement.spacedBy(4.dp), Alignment.CenterVertically) {
        Say(said, Modifier.weight(1f))
        GlyphButton(Glyph.REMOVE, words.remove, Modifier.testTag("remove $part"), "${words.remove}: $said") {
            app.act(Action.HouseKind(HouseAction.RemovePart(job, part)))
        }
    }
}

/** Goes to a piece of work. */
private fun goOn(app: App, view: HouseView, next: NextWork) {
    when (next) {
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
