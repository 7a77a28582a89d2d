package lapwright.core

import kotlinx.serialization.json.Json
import kotlinx.serialization.json.JsonArray
import kotlinx.serialization.json.JsonElement
import kotlinx.serialization.json.JsonObject
import kotlinx.serialization.json.JsonPrimitive
import kotlinx.serialization.json.jsonArray
import kotlinx.serialization.json.jsonObject
import kotlinx.serialization.json.jsonPrimitive
import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.junit.runners.Parameterized
import java.io.File
import java.math.BigDecimal
import java.math.RoundingMode

/** Every case of `fixtures/answers` through the Kotlin bindings: all but the texts of warnings and errors must agree. */
@RunWith(Parameterized::class)
class GoldenAnswersTest(@Suppress("unused") private val name: String, private val case: JsonObject) {
    @Test
    fun isAnsweredAsRecorded() {
        val request = case["text"]?.jsonPrimitive?.content ?: case.getValue("request").toString()
        val given = Json.parseToJsonElement(figure(case.getValue("question").jsonPrimitive.content, request)).jsonObject
        val error = case["error"]?.jsonObject
        if (error != null) compareErrors(error, given) else compareAnswers(case.getValue("answer").jsonObject, given)
    }

    private fun compareErrors(wanted: JsonObject, given: JsonObject) {
        val own = given.getValue("error").jsonObject
        assertEquals(wanted["code"], own["code"])
        assertEquals(wanted["field"], own["field"])
        assertTrue("$own", own.getValue("text").jsonPrimitive.content.length > 8)
    }

    private fun compareAnswers(wanted: JsonObject, given: JsonObject) {
        val fields = case["compare"]?.jsonArray?.map { it.jsonPrimitive.content }
        val compared = { answer: JsonObject ->
            val chosen = if (fields == null) answer else answer.filterKeys { it in fields }
            comparable(JsonObject(chosen.mapValues { (key, value) -> if (key == "warnings") withoutTexts(value) else value }))
        }
        assertEquals(compared(wanted), compared(given))
    }

    companion object {
        @JvmStatic
        @Parameterized.Parameters(name = "{0}")
        fun cases(): List<Array<Any>> = listOf("valid", "invalid").flatMap { kind ->
            val files = File(System.getProperty("lapwright.fixtures"), "answers/$kind").listFiles().orEmpty()
            check(files.isNotEmpty()) { "no cases in fixtures/answers/$kind" }
            files.filter { it.extension == "json" }.sorted().map { file ->
                arrayOf("$kind/${file.nameWithoutExtension}", Json.parseToJsonElement(file.readText()).jsonObject)
            }
        }
    }
}

private fun withoutTexts(warnings: JsonElement): JsonElement =
    JsonArray(warnings.jsonArray.map { warning -> JsonObject(warning.jsonObject.filterKeys { it != "text" }) })

/**
 * The element as plain lists, maps and values, with numbers by their value and fractions to ten places: angles and areas
 * are floats, whose last digit depends on the reader.
 */
private fun comparable(element: JsonElement): Any = when (element) {
    is JsonObject -> element.mapValues { comparable(it.value) }
    is JsonArray -> element.map(::comparable)
    is JsonPrimitive ->
        if (element.isString) element.content else element.content.toBigDecimalOrNull()?.let(::plain) ?: element
}

private fun plain(number: BigDecimal): BigDecimal = number.setScale(10, RoundingMode.HALF_UP)
