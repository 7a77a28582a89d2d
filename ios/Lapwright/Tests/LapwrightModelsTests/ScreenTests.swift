import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// Each screen's own taps, on the demo house.
@MainActor struct ScreenTests {
    @Test func aHouseIsNamedRenamedPutAwayAndBroughtBack() async throws {
        let phone = try await Phone()
        await (try phone.jobs()).create().value
        await phone.type("Lot 7")
        #expect(try phone.house().view.name == "Lot 7")
        let house = try phone.house()
        phone.app.ask(try #require(house.view.questions.first { $0.field == "name" }))
        await phone.type("Lot 8")
        #expect(phone.app.trouble == nil && house.view.name == "Lot 8")
        await house.archive().value
        #expect(phone.app.trouble == nil)
        await phone.app.go(.house(job: house.view.job)).value
        #expect(try phone.house().view.archived)
        await phone.app.go(.jobs).value
        #expect(try phone.jobs().view.jobs.map(\.archived) == [true])
        await (try phone.jobs()).open(try phone.jobs().view.jobs[0]).value
        await (try phone.house()).archive().value
        await phone.app.go(.jobs).value
        #expect(try phone.jobs().view.jobs.map(\.archived) == [false])
    }

    @Test func aNewHouseTakesBoardsAndStockOfAnother() async throws {
        let phone = try await Phone.withDemo()
        let stock = try phone.house().view.stock.count
        await (try phone.house()).createLike().value
        await phone.type("Lot 9")
        #expect(try phone.house().view.name == "Lot 9")
        #expect(try phone.house().view.stock.count == stock && stock > 0)
    }

    @Test func theHouseLeadsToWhatComesNext() async throws {
        let phone = try await Phone.withDemo()
        guard case .layOutPole = try phone.house().view.next else {
            Issue.record("\(try phone.house().view.next)")
            return
        }
        await (try phone.house()).goOn(try phone.house().view.next).value
        await (try phone.pole()).layOut().value
        #expect(try phone.pole().view.laidOut && phone.app.trouble == nil)
        await phone.app.back().value
        guard case .planWall(let wall, _) = try phone.house().view.next else {
            Issue.record("\(try phone.house().view.next)")
            return
        }
        await (try phone.house()).goOn(try phone.house().view.next).value
        #expect(try phone.wall().view.wall == wall)
        #expect(try phone.wall().view.boards.count > 10)
    }

    @Test func aStockLengthComesOffTheHouse() async throws {
        let phone = try await Phone.withDemo()
        let house = try phone.house()
        let stock = try #require(house.view.stock.first)
        await house.remove(stock.stock).value
        #expect(!house.view.stock.contains { $0.stock == stock.stock })
    }

    @Test func aSizeOfBlockIsTypedAndTakenOffAgain() async throws {
        let phone = try await Phone.withDemo()
        let before = try phone.house().view.blockSizes
        await (try phone.house()).addBlockSize().value
        for size in ["11", "9"] { await phone.type(size) }
        let made = try #require(try phone.house().view.blockSizes.first { !before.contains($0) })
        #expect(made.said == "11\" × 9\"")
        await (try phone.house()).remove(made.blockSize).value
        #expect(try phone.house().view.blockSizes == before)
    }

    @Test func aPenetrationComesOffTheWallAndBackByUndo() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.wall(wall: try phone.house().view.walls[0].wall)).value
        let wall = try phone.wall()
        let before = wall.view.penetrations
        await wall.remove(before[0]).value
        #expect(wall.view.penetrations.count == before.count - 1)
        try await phone.undoTheLast()
        await phone.app.back().value
        #expect(try phone.wall().view.penetrations == before)
    }

    @Test func thePartsOfAWallAreAddedAnsweredAndTakenOff() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.measure(wall: try phone.house().view.walls[0].wall)).value
        var measure = try phone.measure()
        let before = measure.view.parts.count
        await measure.add(.stud).value
        await phone.type("60")
        measure = try phone.measure()
        #expect(measure.view.parts.count == before + 1, "\(String(describing: phone.app.trouble))")
        let stud = try #require(measure.view.parts.first { $0.kind == "stud" })
        phone.app.ask(stud.questions[0])
        await phone.type("61")
        #expect(measure.view.parts.first { $0.kind == "stud" }?.questions[0].answer == "61\"")
        await measure.remove(stud).value
        #expect(measure.view.parts.count == before)
    }

    @Test func everyPartOfAWallCanBeMade() async throws {
        let phone = try await Phone.withDemo()
        let place = Place.measure(wall: try phone.house().view.walls[0].wall)
        await phone.app.go(place).value
        let words = phone.app.words
        let parts: [(NewThing, String)] = [
            (.baseStep, words.baseStep), (.stud, words.stud), (.opening, words.opening), (.abutment, words.abutment),
        ]
        for (what, word) in parts {
            await (try phone.measure()).add(what).value
            #expect(try phone.new().view.title == word)
            await phone.app.back().value
            #expect(phone.app.place == place)
        }
    }

    @Test func thePoleTakesAMarkAndSaysItsLines() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).pole().value
        let pole = try phone.pole()
        let before = pole.view.marks.count
        await phone.app.act(
            .poleKind(
                action: .addMark(
                    job: pole.view.job,
                    answers: [
                        Given(field: "name", text: "Shelf"), Given(field: "at", text: "20"),
                        Given(field: "want", text: "land"),
                    ]
                )
            )
        ).value
        #expect(pole.view.marks.count == before + 1, "\(String(describing: phone.app.trouble))")
        let mark = try #require(pole.view.marks.first { $0.name == "Shelf" })
        await pole.remove(mark).value
        #expect(pole.view.marks.count == before)
        pole.say(pole.view.lines[1])
        let said = try #require(phone.device.said.last)
        #expect(said.contains(pole.view.lines[1].height.spoken) && phone.device.languages.last == "en")
    }

    @Test func aCourseIsTapedAsItHangsAndTakenOffAgain() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).pole().value
        #expect(try phone.pole().view.walls.isEmpty, "no course hangs before a layout is kept")
        await (try phone.pole()).layOut().value
        await (try phone.pole()).tape(try #require(try phone.pole().view.walls.last)).value
        for reading in ["2", "7", "", "6"] { await phone.type(reading) }
        #expect(phone.app.trouble == nil)
        let pole = try phone.pole()
        let built = try #require(pole.view.asBuilt.first)
        #expect(built.course == 2 && built.left.nm == 177_800_000 && built.right.nm == 152_400_000)
        #expect(["course", "left", "middle", "right"].allSatisfy { !pole.title($0).isEmpty })
        await pole.remove(built).value
        #expect(pole.view.asBuilt.isEmpty)
    }

    @Test func aRuleIsChangedWithAReasonAndGoesBackToItsDefault() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).rules().value
        let rules = try phone.rules()
        let rule = try #require(rules.view.rules.first { $0.key == "gap.trim" } ?? rules.view.rules.first { !$0.fixed })
        for opened in [rule.key, "", rule.key] {
            rules.open(rule)
            #expect(rules.opened == opened)
        }
        #expect(!rule.bounds.isEmpty)
        let now = { rules.view.rules.first { $0.key == rule.key } }
        rules.change(rule)
        await phone.type("a bit")
        #expect(phone.app.trouble != nil && phone.app.entry.text == "a bit")
        phone.app.entry.type(rule.value)
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(now()?.changed == nil, "a value waits for its reason")
        #expect(phone.app.entry.question?.field.hasPrefix(rule.key) == true)
        #expect(rules.opened == rule.key, "it stays open while its questions are asked")
        try await phone.restart()
        #expect(phone.app.entry.question?.field.hasPrefix(rule.key) == true, "and is still asked for after a stop")
        await phone.type("the inspector's word")
        let after = try phone.rules()
        let changed = try #require(after.view.rules.first { $0.key == rule.key })
        #expect(changed.changed?.reason == "the inspector's word", "\(String(describing: phone.app.trouble))")
        await after.backToDefault(changed).value
        #expect(after.view.rules.first { $0.key == rule.key }?.changed == nil)
    }

    @Test func aFactCannotBeChanged() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).rules().value
        let rules = try phone.rules()
        let fact = try #require(rules.view.rules.first { $0.fixed })
        rules.change(fact)
        #expect(phone.app.entry.question == nil)
    }

    @Test func aSettingIsOneTapAndChangesTheWordsRoundEveryScreen() async throws {
        let phone = try await Phone.withDemo()
        await phone.app.go(.settings).value
        let language = try #require(try phone.settings().view.settings.first { $0.field == "language" })
        let before = phone.app.words
        phone.app.ask(language)
        phone.app.entry.choose(try #require(language.choices.first { $0.code == "es" }))
        await phone.app.settled()
        #expect(phone.app.words.back != before.back && phone.app.place == .settings)
        phone.app.ask(language)
        phone.app.entry.choose(try #require(language.choices.first { $0.code == "en" }))
        await phone.app.settled()
        #expect(phone.app.words == before)
    }

    @Test func aNameLeavesTheListOfSigners() async throws {
        let phone = try await Phone()
        await phone.app.go(.settings).value
        (try phone.settings()).newSigner()
        await phone.type("Ines")
        await phone.app.go(.settings).value
        #expect(try phone.settings().view.signers.map(\.name) == ["Ines"])
        await (try phone.settings()).drop(try phone.settings().view.signers[0]).value
        await phone.app.go(.settings).value
        #expect(try phone.settings().view.signers.isEmpty && phone.app.remembered.signer == "")
    }
}
