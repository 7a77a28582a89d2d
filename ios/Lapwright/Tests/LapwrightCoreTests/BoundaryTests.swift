import LapwrightCore
import Testing

/// Values, lengths and errors come across the boundary whole.
struct BoundaryTests {
    @Test func theVersionIsThatOfTheWorkspace() {
        let parts = version().split(separator: ".")
        #expect(parts.count == 3 && parts.allSatisfy { Int($0) != nil })
    }

    @Test func lengthsCrossAsNanometres() throws {
        // 25.4 mm is an inch exactly (NIST SP 811), so these are 6 1/16 in.
        #expect(try lengthText(length: 153_987_500, show: "in/16", language: "en") == "6 1/16\"")
        #expect(try lengthText(length: -153_987_500, show: "in/16", language: "en") == "-6 1/16\"")
    }

    @Test func anErrorKeepsItsCodeFieldAndText() throws {
        let english = try #require(try refusal(language: "en"))
        let spanish = try #require(try refusal(language: "es"))
        #expect(english.code == "choice")
        #expect(english.field == "show")
        #expect(english.text.contains("in/16"))
        #expect(spanish.text != english.text)
    }

    private func refusal(language: String) throws -> (code: String, field: String, text: String)? {
        do {
            _ = try lengthText(length: 0, show: "cubits", language: language)
            return nil
        } catch Refusal.Refused(let code, let field, let text) {
            return (code, field, text)
        }
    }
}
