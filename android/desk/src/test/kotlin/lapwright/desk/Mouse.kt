package lapwright.desk

import java.awt.Point
import java.awt.Rectangle
import java.awt.Robot
import java.awt.Window
import java.awt.event.InputEvent
import java.awt.event.WindowEvent
import java.io.File
import javax.accessibility.Accessible
import javax.accessibility.AccessibleContext
import javax.accessibility.AccessibleRole
import javax.imageio.ImageIO
import javax.swing.SwingUtilities
import kotlin.concurrent.thread
import kotlin.system.exitProcess

/** A hand at the mouse, which finds things by the names that a screen reader says. */
private class Mouse {
    private val robot = Robot()

    /** Where the window stands is known for sure only once it was put there: the display may have moved it as it opened. */
    fun settle() {
        await("the window") { all -> all.firstOrNull { it.isButton() } }
        SwingUtilities.invokeAndWait { Window.getWindows().first { it.isShowing }.setLocation(20, 30) }
        robot.waitForIdle()
        robot.delay(500)
    }

    private fun contexts(): List<AccessibleContext> {
        val found = mutableListOf<AccessibleContext>()
        fun walk(one: Accessible) {
            val context = one.accessibleContext ?: return
            found += context
            for (at in 0 until context.accessibleChildrenCount) context.getAccessibleChild(at)?.let(::walk)
        }
        SwingUtilities.invokeAndWait { Window.getWindows().filter { it.isShowing }.forEach { walk(it as Accessible) } }
        return found
    }

    /** All that can be read, a line each. */
    fun read(): List<String> = contexts().mapNotNull(::name)

    private fun name(context: AccessibleContext): String? = context.accessibleDescription ?: context.accessibleName

    private fun await(what: String, found: (List<AccessibleContext>) -> AccessibleContext?): AccessibleContext {
        repeat(PATIENCE) {
            found(contexts())?.let { return it }
            Thread.sleep(100)
        }
        error("$what did not come; there is:\n${read().joinToString("\n")}")
    }

    fun await(text: String) {
        await(text) { all -> all.firstOrNull { text in name(it).orEmpty() } }
    }

    fun click(text: String) = click(await(text) { all -> all.firstOrNull { it.isButton() && name(it) == text } })

    /** The one large button at the bottom. */
    fun clickNext() = click(await("the next action") { all -> all.lastOrNull { it.isButton() } })

    private fun AccessibleContext.isButton() = accessibleRole == AccessibleRole.PUSH_BUTTON

    private fun click(context: AccessibleContext) {
        val (corner, size) = context.accessibleComponent.let { it.locationOnScreen to it.size }
        val middle = Point(corner.x + size.width / 2, corner.y + size.height / 2)
        robot.mouseMove(middle.x, middle.y)
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK)
        robot.delay(50)
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK)
        robot.waitForIdle()
        Thread.sleep(150)
    }

    fun photograph(file: File) {
        val area = Window.getWindows().first { it.isShowing }.bounds
        ImageIO.write(robot.createScreenCapture(Rectangle(area)), "png", file)
    }

    private companion object {
        /** Tenths of a second. */
        const val PATIENCE = 300
    }
}

/** `BOOK PICTURE READING… CUT`: opens the window and clicks from the jobs to the notch of the next board. */
fun main(args: Array<String>) {
    thread {
        try {
            val mouse = Mouse()
            mouse.settle()
            mouse.click("Demo: Plover Cottage")
            mouse.await("Street gable")
            mouse.clickNext()
            for (reading in args.slice(2 until args.lastIndex)) {
                for (at in reading.indices) {
                    mouse.click("${reading[at]}")
                    mouse.await("${reading.take(at + 1)} in")
                }
                mouse.click("OK")
            }
            mouse.await(args.last())
            mouse.photograph(File(args[1]))
            println(mouse.read().joinToString("\n"))
            val window = Window.getWindows().first { it.isShowing }
            SwingUtilities.invokeLater { window.dispatchEvent(WindowEvent(window, WindowEvent.WINDOW_CLOSING)) }
        } catch (trouble: Throwable) {
            trouble.printStackTrace()
            exitProcess(1)
        }
    }
    window(File(args[0]), demo = false)
}
