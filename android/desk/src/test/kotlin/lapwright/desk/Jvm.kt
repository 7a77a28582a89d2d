package lapwright.desk

import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import java.io.File
import java.util.concurrent.TimeUnit

/**
 * A further process with these classes and the real library: the `main` of a file, by the name that Kotlin gives it.
 * It has no display unless it is given one.
 */
internal fun jvm(main: String, vararg args: String): ProcessBuilder = ProcessBuilder(
    File(System.getProperty("java.home"), "bin/java").path,
    "-XX:TieredStopAtLevel=1", "-Dskiko.renderApi=SOFTWARE",
    "-Djna.library.path=${System.getProperty("jna.library.path")}",
    "-cp", System.getProperty("java.class.path"), main, *args,
).redirectErrorStream(true).apply { environment() -= "DISPLAY" }

/** Runs a process until it says `typed`, and kills it there. */
internal fun killedOnceItTyped(builder: ProcessBuilder) {
    val process = builder.start()
    val printed = mutableListOf<String>()
    for (line in process.inputReader().lineSequence()) {
        printed += line
        if (line == "typed") break
    }
    process.destroyForcibly().waitFor(30, TimeUnit.SECONDS)
    assertEquals(printed.joinToString("\n"), "typed", printed.lastOrNull())
    assertTrue("it was killed", process.exitValue() != 0)
}
