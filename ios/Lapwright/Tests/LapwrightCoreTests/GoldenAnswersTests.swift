import Foundation
import LapwrightCore
import Testing

/// One case of `fixtures/answers`.
struct GoldenCase: CustomTestStringConvertible {
    let name: String
    let content: Json

    var testDescription: String { name }

    static func all(_ kind: String) throws -> [GoldenCase] {
        let here = URL(fileURLWithPath: #filePath)
        let root = (0..<5).reduce(here) { url, _ in url.deletingLastPathComponent() }
        let folder = root.appendingPathComponent("fixtures/answers/\(kind)")
        let files = try FileManager.default.contentsOfDirectory(atPath: folder.path)
        return try files.filter { $0.hasSuffix(".json") }.sorted().map { file in
            let text = try String(contentsOf: folder.appendingPathComponent(file), encoding: .utf8)
            return GoldenCase(name: file, content: try Json(reading: text))
        }
    }

    func given() throws -> Json {
        let question = try #require(content["question"]?.string)
        let request = try content["text"]?.string ?? #require(content["request"]).written()
        return try Json(reading: figure(question: question, request: request))
    }
}

/// Every golden answer through the Swift bindings: all but the texts of warnings and errors must agree.
struct GoldenAnswersTests {
    @Test func thereAreCases() throws {
        #expect(try !GoldenCase.all("valid").isEmpty)
        #expect(try !GoldenCase.all("invalid").isEmpty)
    }

    @Test(arguments: try GoldenCase.all("valid"))
    func validRequestsGetTheirAnswers(_ golden: GoldenCase) throws {
        let wanted = try #require(golden.content["answer"])
        let fields = golden.content["compare"]?.array?.compactMap(\.string)
        let compared = { (answer: Json) in withoutTexts(fields.map(answer.only) ?? answer).rounded() }
        #expect(compared(try golden.given()) == compared(wanted))
    }

    @Test(arguments: try GoldenCase.all("invalid"))
    func invalidRequestsGetTheirErrors(_ golden: GoldenCase) throws {
        let wanted = try #require(golden.content["error"])
        let error = try #require(try golden.given()["error"])
        #expect(error["code"] == wanted["code"])
        #expect(error["field"] == wanted["field"])
        #expect(try #require(error["text"]?.string).count > 8)
    }

    private func withoutTexts(_ answer: Json) -> Json {
        guard case .object(var fields) = answer, case .list(let warnings)? = fields["warnings"] else { return answer }
        fields["warnings"] = .list(warnings.map { $0.without("text") })
        return .object(fields)
    }
}
