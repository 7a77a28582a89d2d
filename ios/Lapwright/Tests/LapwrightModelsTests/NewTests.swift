import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// Things in the making: kind, size and two offsets are enough for a penetration.
@MainActor struct NewTests {
    private func wall() async throws -> Phone {
        let phone = try await Phone.withDemo()
        await phone.app.go(.wall(wall: try phone.house().view.walls[0].wall)).value
        return phone
    }

    @Test func aPenetrationTakesFourAnswersFromItsWall() async throws {
        let phone = try await wall()
        await (try phone.wall()).addPenetration().value
        let kind = try #require(phone.app.entry.question)
        #expect(kind.field == "what")
        phone.app.entry.choose(try #require(kind.choices.first { $0.code == "cable" }))
        await phone.app.settled()
        var asked: [String] = []
        for answer in ["3/4", "60", "20"] {
            asked.append(try #require(phone.app.entry.question).field)
            await phone.type(answer)
        }
        #expect(asked == ["width", "from-left", "from-base"])
        #expect(try phone.penetration().view.what == "cable")
    }

    @Test func theWayBackLeadsToTheWallAndNotIntoTheMaking() async throws {
        let phone = try await wall()
        let wall = phone.app.place
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        await phone.type("20")
        _ = try phone.penetration()
        await phone.app.back().value
        #expect(phone.app.place == wall)
    }

    @Test func aRefusedFieldIsAskedOn() async throws {
        let phone = try await wall()
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        await phone.type("a hand high")
        #expect(phone.app.trouble?.field == "from-base")
        #expect(phone.app.entry.question?.field == "from-base" && phone.app.entry.text == "a hand high")
        phone.app.entry.type("20")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble == nil)
        _ = try phone.penetration()
    }

    @Test func anAnswerGivenBeforeIsOpenedAgain() async throws {
        let phone = try await wall()
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        phone.app.ask(try phone.new().questions[0])
        await phone.type("61")
        #expect(try phone.new().questions[0].answer == "61")
        #expect(phone.app.entry.question?.field == "from-base")
    }

    @Test func whatIsLeftComesToNothingAndLeadsBack() async throws {
        let phone = try await wall()
        let before = try phone.wall().view.penetrations.count
        let place = phone.app.place
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        await (try phone.new()).leave().value
        #expect(phone.app.place == place)
        #expect(try phone.wall().view.penetrations.count == before)
        await phone.app.back().value
        _ = try phone.house()
        await phone.app.go(place).value
        await (try phone.wall()).addSameAsLast().value
        #expect(try phone.new().questions[0].answer == "")
    }

    @Test func putAwayItIsStillThereNextTime() async throws {
        let phone = try await wall()
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        await phone.app.back().value
        await (try phone.wall()).addSameAsLast().value
        #expect(try phone.new().questions[0].answer == "60")
        #expect(phone.app.entry.question?.field == "from-base")
    }

    @Test func stockHasItsLengthAndItsCount() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).addStock().value
        await phone.type("10'")
        await phone.type("12")
        let stock = try phone.house().view.stock
        #expect(stock.contains { $0.count == 12 && $0.length.nm == 3_048_000_000 })
    }

    @Test func aThingOfNoParentIsRefused() async throws {
        let phone = try await Phone.withDemo()
        let place = phone.app.place
        await phone.app.go(.new(what: .stud, parent: "nowhere")).value
        #expect(phone.app.trouble?.field == "parent" && phone.app.place == place)
    }
}
