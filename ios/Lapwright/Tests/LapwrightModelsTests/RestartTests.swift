import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// A phone that is switched off in the middle of an entry loses no key: it comes back at the same field.
@MainActor struct RestartTests {
    @Test func keysOfAWallAreThereAgainAtTheSameField() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).addWall().value
        await phone.type("North")
        await phone.type("18'")
        let field = try #require(phone.app.entry.question?.field)
        for key in "7' 10 1" { phone.app.entry.press(String(key)) }
        await phone.app.settled()
        let wall = try phone.measure().view.wall
        try await phone.restart()
        #expect(phone.app.restored)
        #expect(try phone.measure().view.wall == wall)
        #expect(phone.app.entry.question?.field == field)
        #expect(phone.app.entry.text == "7' 10 1")
        await phone.type("/2\"")
        #expect(phone.app.trouble == nil)
        let answered = try #require(try phone.measure().view.questions.first { $0.field == field })
        #expect(answered.answer == "94 1/2\"" && answered.draft.isEmpty)
    }

    @Test func everySingleKeyIsKeptByItself() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).addWall().value
        await phone.type("North")
        for (at, key) in "12' 6".enumerated() {
            phone.app.entry.press(String(key))
            await phone.app.settled()
            let other = try Book.open(path: phone.folder.appendingPathComponent("book.lapwright").path, copies: nil)
            let place = phone.app.place
            guard case .measureKind(let view) = try other.view(context: phone.app.context(), place: place) else {
                Issue.record("\(place)")
                return
            }
            #expect(view.questions.contains { $0.draft == String("12' 6".prefix(at + 1)) })
        }
    }

    @Test func aThingInTheMakingIsTakenUpAgain() async throws {
        let phone = try await Phone.withDemo()
        let wall = try phone.house().view.walls[0].wall
        await phone.app.go(.wall(wall: wall)).value
        let before = try phone.wall().view.penetrations.count
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        phone.app.entry.press("2")
        phone.app.entry.press("0")
        await phone.app.settled()
        try await phone.restart()
        #expect(try phone.new().view.what == .samePenetration && phone.app.restored)
        #expect(try phone.new().view.questions.map(\.answer) == ["60", ""])
        #expect(phone.app.entry.question?.field == "from-base" && phone.app.entry.text == "20")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble == nil)
        await phone.app.go(.wall(wall: wall)).value
        #expect(try phone.wall().view.penetrations.count == before + 1)
    }

    @Test func keysOfNewThingsOfAHouseAreThereAgain() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        let things: [(NewThing, String, String)] = [
            (.house, "", "Lot 1"), (.offcut, job, "50 1"), (.mark, job, "Shel"), (.stock, job, "16"),
            (.looseBoard, job, "9"),
        ]
        for (what, parent, keys) in things {
            await phone.app.go(.new(what: what, parent: parent)).value
            let field = try #require(phone.app.entry.question?.field)
            for key in keys { phone.app.entry.press(String(key)) }
            await phone.app.settled()
            try await phone.restart()
            #expect(try phone.new().view.what == what && phone.app.restored)
            #expect(phone.app.entry.question?.field == field && phone.app.entry.text == keys)
        }
    }

    @Test func keysOfAReasonAndOfANameAreThereAgain() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).rules().value
        let rule = try #require(try phone.rules().view.rules.first { !$0.fixed })
        (try phone.rules()).change(rule)
        await phone.type(rule.value)
        let reason = try #require(phone.app.entry.question?.field)
        #expect(rule.asks.map(\.field).firstIndex(of: reason) == 1, "\(reason)")
        for key in "wet si" { phone.app.entry.press(String(key)) }
        await phone.app.settled()
        try await phone.restart()
        #expect(phone.app.entry.question?.field == reason && phone.app.entry.text == "wet si")
        await phone.app.go(.settings).value
        (try phone.settings()).newSigner()
        for key in "Te" { phone.app.entry.press(String(key)) }
        await phone.app.settled()
        try await phone.restart()
        #expect(phone.app.place == .settings && phone.app.entry.text == "Te")
        await phone.type("o")
        #expect(phone.app.remembered.signer == "Teo")
    }

    @Test func whatWasAcceptedLeavesNoKeysBehind() async throws {
        let phone = try await Phone.withDemo()
        let wall = try phone.house().view.walls[0].wall
        await phone.app.go(.wall(wall: wall)).value
        await (try phone.wall()).addSameAsLast().value
        await phone.type("60")
        await phone.type("20")
        await phone.app.go(.wall(wall: wall)).value
        try await phone.restart()
        await (try phone.wall()).addSameAsLast().value
        #expect(try phone.new().questions.allSatisfy { $0.answer.isEmpty && $0.draft.isEmpty })
        #expect(phone.app.entry.text == "")
    }

    @Test func eachSignerComesBackToTheirOwnPlace() async throws {
        let phone = try await Phone.withDemo()
        let house = phone.app.place
        await phone.app.act(.settingsKind(action: .takePhone(signer: "Teo"))).value
        #expect(phone.app.remembered.signer == "Teo" && phone.app.place == .jobs)
        #expect(!phone.app.canGoBack, "Teo was nowhere before")
        await phone.app.go(.doneList(job: nil)).value
        await phone.app.act(.settingsKind(action: .takePhone(signer: "Ines"))).value
        #expect(phone.app.remembered.signer == "Ines" && phone.app.place == house)
        await phone.app.act(.settingsKind(action: .takePhone(signer: "Teo"))).value
        try await phone.restart()
        #expect(phone.app.remembered.signer == "Teo" && phone.app.place == .doneList(job: nil))
    }

    @Test func whoHandsThePhoneOverInSettingsComesBackToTheirWork() async throws {
        let phone = try await Phone.withNotchedBoard()
        let work = phone.app.place
        let signer = phone.app.remembered.signer
        await phone.app.go(.settings).value
        (try phone.settings()).newSigner()
        await phone.type("Teo")
        #expect(phone.app.remembered.signer == "Teo" && phone.app.place == .jobs)
        await phone.app.go(.settings).value
        let back = try #require(try phone.settings().view.signers.first { $0.name == signer })
        await (try phone.settings()).take(back).value
        #expect(phone.app.remembered.signer == signer && phone.app.place == work)
    }

    @Test func languageUnitHandGlovesAndThemeOutliveAStop() async throws {
        let phone = try await Phone.withDemo()
        for (field, text) in [
            ("language", "es"), ("show", "mm"), ("hand", "left"), ("gloves", "yes"), ("theme", "dark"),
        ] {
            await phone.app.act(.settingsKind(action: .answer(field: field, text: text))).value
            #expect(phone.app.trouble == nil)
        }
        try await phone.restart()
        let remembered = phone.app.remembered
        #expect(remembered.language == "es" && remembered.show == "mm" && remembered.hand == "left")
        #expect(remembered.gloves && remembered.theme == "dark")
        #expect(phone.app.words.back != "Back")
    }
}
