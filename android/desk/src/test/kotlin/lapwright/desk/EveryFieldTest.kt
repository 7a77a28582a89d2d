package lapwright.desk

import androidx.compose.runtime.getValue
import androidx.compose.runtime.key
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.ui.geometry.Size
import androidx.compose.ui.semantics.SemanticsActions
import androidx.compose.ui.semantics.SemanticsNode
import androidx.compose.ui.semantics.SemanticsProperties
import androidx.compose.ui.semantics.getOrNull
import androidx.compose.ui.test.ExperimentalTestApi
import androidx.compose.ui.test.hasTestTag
import androidx.compose.ui.test.runSkikoComposeUiTest
import androidx.compose.ui.text.AnnotatedString
import androidx.compose.ui.unit.Density
import lapwright.screens.AnswerKind
import lapwright.screens.NewThing
import lapwright.screens.Place
import lapwright.screens.Question
import lapwright.screens.View
import lapwright.shell.App
import lapwright.shell.Screens
import org.junit.Assert.assertTrue
import org.junit.Test
import java.io.File
import java.lang.reflect.Modifier
import java.nio.file.Files

/** A field of a screen that takes keys. */
private class Field(val place: Place, val question: Question) {
    val keys get() = if (question.kind == AnswerKind.TEXT_KIND) "Ab" else "7"
    override fun toString() = "${question.field} of ${question.subject} on $place"
}

/** Killed at any field of any screen, the next process is on that screen, asks that field and has its keys. */
@OptIn(ExperimentalTestApi::class)
class EveryFieldTest {
    @Test
    fun whatWasTypedInAnyFieldIsThereAfterTheProcessWasKilled() {
        val folder = Files.createTempDirectory("lapwright").toFile()
        val book = File(folder, "book.lapwright")
        val fields = Desk(book, Noon).use { desk ->
            Planned(desk)
            fields(desk)
        }
        assertTrue("${fields.size} fields", fields.size > 40)
        for (at in fields.indices) book.copyTo(File(folder, "$at.lapwright"))
        killedOnceItTyped(jvm("lapwright.desk.EveryFieldTestKt", folder.path))
        val lost = mutableListOf<String>()
        runSkikoComposeUiTest(Size(720f, 1600f), Density(2f)) {
            var app: App? by mutableStateOf(null)
            setContent { app?.let { key(it) { Screens(it, Face) } } }
            for ((at, field) in fields.withIndex()) {
                Desk(File(folder, "$at.lapwright"), Noon).use { desk ->
                    runOnIdle { app = desk.app() }
                    waitForIdle()
                    val panel = onAllNodes(hasTestTag("typed") or hasTestTag("text"), useUnmergedTree = true).fetchSemanticsNodes()
                    val typed = panel.flatMap(::all).flatMap(::texts)
                    if (app!!.shown!!.place != field.place) {
                        lost += "$field: it is on ${app!!.shown!!.place}"
                    } else if (typed.none { it.substringBefore(' ') == field.keys }) {
                        lost += "$field: $typed"
                    }
                    runOnIdle { app = null }
                    waitForIdle()
                }
            }
        }
        folder.deleteRecursively()
        assertTrue("${lost.size} of ${fields.size} fields:\n${lost.take(20).joinToString("\n")}", lost.isEmpty())
    }
}

private fun texts(node: SemanticsNode): List<String> =
    node.config.getOrNull(SemanticsProperties.Text).orEmpty().map { it.text } +
        listOfNotNull(node.config.getOrNull(SemanticsProperties.EditableText)?.text)

/** The process that is killed: types a key in every field, each in a book of its own, and says so. */
@OptIn(ExperimentalTestApi::class)
fun main(args: Array<String>) {
    val folder = File(args[0])
    val fields = Desk(File(folder, "book.lapwright"), Noon).use { desk -> fields(desk) }
    runSkikoComposeUiTest(Size(720f, 1600f), Density(2f)) {
        var app: App? by mutableStateOf(null)
        setContent { app?.let { key(it) { Screens(it, Face) } } }
        for ((at, field) in fields.withIndex()) {
            val here = Desk(File(folder, "$at.lapwright"), Noon).app()
            here.go(field.place)
            here.ask(field.question)
            runOnIdle { app = here }
            waitForIdle()
            if (field.question.kind == AnswerKind.TEXT_KIND) {
                onNode(hasTestTag("text")).fetchSemanticsNode().config[SemanticsActions.SetText].action!!(AnnotatedString(field.keys))
            } else {
                onNode(hasTestTag("key ${field.keys}")).fetchSemanticsNode().config[SemanticsActions.OnClick].action!!()
            }
            waitForIdle()
        }
        println("typed")
        Thread.sleep(600_000)
    }
}

/** Every field that takes keys, of every screen. */
private fun fields(desk: Desk): List<Field> = places(desk).flatMap { place ->
    // The readings of a hung course are asked on a screen of their own, where they are made.
    val here = questions(desk.view(place)).filterNot { place is Place.Pole && it.subject.isEmpty() }
    here.distinctBy { it.subject to it.field }.map { Field(place, it) }
}

/** One screen of each kind, and one of each thing that can be made. */
private fun places(desk: Desk): List<Place> {
    val job = (desk.view(Place.Jobs) as View.JobsKind).view.jobs.single().job
    val walls = (desk.view(Place.House(job)) as View.HouseKind).view.walls.map { it.wall }
    val views = walls.map { (desk.view(Place.Wall(it)) as View.WallKind).view }
    val boards = views.flatMap { view -> view.boards.map { it.board } }
    val notched = boards.first { board -> (desk.view(Place.Board(board)) as View.BoardKind).view.notches.any { it.questions.isNotEmpty() } }
    val penetrations = views.flatMap { view -> view.penetrations.map { it.penetration } }
    val parents = listOf("", job, walls.first(), notched)
    val made = NewThing.entries.flatMap { thing ->
        parents.map { Place.New(thing, it) }.filter { runCatching { desk.view(it) }.isSuccess }.take(1)
    }
    return listOf(Place.Jobs, Place.Settings, Place.House(job), Place.Pole(job), Place.Rules(job), Place.SawList(job), Place.Order(job)) +
        listOf(Place.DoneList(job), Place.Wall(walls.first()), Place.Measure(walls.first()), Place.Board(notched)) +
        penetrations.map { Place.Penetration(it) } + made
}

/** The questions in a view, wherever they stand. */
private fun questions(shown: Any?): List<Question> = when (shown) {
    is Question -> if (shown.kind == AnswerKind.CHOICE_KIND) emptyList() else listOf(shown)
    is Iterable<*> -> shown.flatMap(::questions)
    null -> emptyList()
    else -> if (!shown.javaClass.name.startsWith("lapwright.screens.") || shown is Enum<*>) {
        emptyList()
    } else {
        shown.javaClass.declaredFields.filterNot { Modifier.isStatic(it.modifiers) }.flatMap {
            it.isAccessible = true
            questions(it.get(shown))
        }
    }
}
