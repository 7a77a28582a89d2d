import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// A penetration, made weathertight.
@MainActor struct PenetrationTests {
    private func opened(_ what: String = "light") async throws -> Phone {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        for line in wall.view.penetrations {
            await wall.open(line).value
            if try phone.penetration().view.what == what { return phone }
            await phone.app.back().value
        }
        Issue.record("no \(what) on this wall")
        return phone
    }

    @Test func everyStepIsTickedInItsOrderWithOneTapEach() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        #expect(model.steps.count > 4 && !model.view.layers.isEmpty && !model.view.patch.isEmpty)
        var ticked = 0
        while let step = model.currentStep, ticked < 40 {
            phone.book.reset()
            await model.tick(step).value
            #expect(phone.book["act"] == 1)
            guard model.steps.first(where: { $0.code == step.code })?.state == .done else { break }
            ticked += 1
        }
        #expect(ticked == model.steps.count, "\(String(describing: phone.app.trouble))")
    }

    @Test func aStepThatLaterWorkHidesIsLeftOutForAReasonOnly() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let hidden = try #require(model.steps.first { $0.hiddenLater })
        model.leaveOut(hidden)
        #expect(phone.app.entry.question == hidden.asks && hidden.asks != nil)
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble != nil && phone.app.entry.question == hidden.asks, "it is asked on")
        #expect(model.steps.first { $0.code == hidden.code }?.state == .open)
        await phone.type("patched from behind")
        #expect(phone.app.trouble == nil && phone.app.entry.question == nil)
        let left = try #require(model.steps.first { $0.code == hidden.code })
        #expect(left.state == .skipped && left.note == "patched from behind")
    }

    @Test func nobodySignsNothing() async throws {
        let phone = try await opened()
        let place = phone.app.place
        await phone.app.act(.settingsKind(action: .dropSigner(signer: "Ines"))).value
        await phone.app.go(place).value
        let model = try phone.penetration()
        await model.tick(try #require(model.currentStep)).value
        #expect(phone.app.trouble?.field == "signer")
        #expect(model.steps.allSatisfy { $0.state == .open })
    }

    @Test func whoSignedStandsOnTheStep() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        await model.tick(step).value
        let signed = try #require(model.steps.first { $0.code == step.code })
        #expect(signed.signer == "Ines" && signed.atMs != nil)
    }

    /// The shortest file that has the frame of a JPEG: tables, one scan, an end.
    private static let jpeg = Data([
        0xFF, 0xD8, 0xFF, 0xDB, 0, 3, 0, 0xFF, 0xDA, 0, 3, 0, 0x12, 0xFF, 0xD9,
    ])

    @Test func aStepWithAPhotoIsTwoTaps() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        phone.device.photo = Self.jpeg
        await model.takePhoto(step).value
        let taken = try #require(model.currentStep)
        let photo = try #require(taken.photo)
        #expect(taken.code == step.code && photo.place == .here && !photo.signed)
        await model.tick(taken).value
        let signed = try #require(model.steps.first { $0.code == step.code })
        #expect(signed.state == .done && signed.photo?.signed == true)
        #expect(try Data(contentsOf: URL(fileURLWithPath: photo.file)) == Self.jpeg)
    }

    @Test func aCameraThatTookNothingLeavesNothing() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        await model.takePhoto(step).value
        #expect(phone.device.filled.count == 1 && phone.app.trouble == nil)
        #expect(model.currentStep?.photo == nil)
        phone.device.photo = Self.jpeg.prefix(9)
        await model.takePhoto(step).value
        #expect(phone.app.trouble?.field == "photo", "half a photo is told")
    }

    @Test func aPhotoOutlivesAStopWhileTheCameraIsOpen() async throws {
        let phone = try await opened()
        let step = try #require(try phone.penetration().currentStep)
        let hole = try phone.penetration().view.penetration
        await phone.app.act(.penetrationKind(action: .beginPhoto(penetration: hole, step: step.code))).value
        let waiting = try #require(try phone.penetration().currentStep?.photo)
        #expect(waiting.place == .waiting)
        try Self.jpeg.write(to: URL(fileURLWithPath: waiting.file))
        try await phone.restart()
        #expect(try phone.penetration().currentStep?.photo?.place == .here && phone.app.cameBack)
    }

    @Test func theAdvisedBlockIsTakenInOneTap() async throws {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall().view.wall
        // Each height is tried until the block sits badly on its line.
        for height in 30...60 {
            let given = [
                ("what", "hose-bib"), ("width", "1"), ("from-left", "40"), ("from-base", "\(height)"),
                ("mounting", "slip-over"), ("block-width", "6"), ("block-height", "6"), ("hole-from-bottom", "3"),
            ]
            let answers = given.map { Given(field: $0.0, text: $0.1) }
            await phone.app.act(.wallKind(action: .addPenetration(wall: wall, answers: answers))).value
            guard let model = try? phone.penetration(), let advice = model.view.advice else { continue }
            #expect(!advice.gain.isEmpty)
            let advised = [
                "block-width": advice.width, "block-height": advice.height, "hole-from-bottom": advice.holeFromBottom,
            ]
            #expect(advised.keys.allSatisfy { !model.title($0).isEmpty })
            await model.takeAdvice().value
            #expect(phone.app.trouble == nil && model.view.advice == nil)
            for (field, reading) in advised {
                #expect(model.view.questions.first { $0.field == field }?.reading?.nm == reading.nm)
            }
            return
        }
        Issue.record("no height brings advice")
    }
}
