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
        let asks = try #require(hidden.asks.last)
        phone.app.ask(asks)
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble != nil && phone.app.entry.question == asks, "it is asked on")
        #expect(model.steps.first { $0.code == hidden.code }?.state == .open)
        await phone.type("patched from behind")
        #expect(phone.app.trouble == nil && phone.app.entry.question == nil)
        let left = try #require(model.steps.first { $0.code == hidden.code })
        #expect(left.state == .skipped && left.note == "patched from behind")
    }

    @Test func aNoteSignsItsStepWhichStaysOpenedUntilThePlaceIsLeft() async throws {
        let phone = try await opened()
        let step = try #require(try phone.penetration().currentStep)
        phone.app.open(step)
        phone.app.ask(try #require(step.asks.dropLast().last))
        await phone.type("seen by Lea")
        let signed = try #require(try phone.penetration().steps.first { $0.code == step.code })
        #expect(signed.state == .done && signed.said.contains("seen by Lea") && signed.said.contains("Ines"))
        #expect(phone.app.openStep == step.code)
        phone.app.open(step)
        #expect(phone.app.openStep.isEmpty)
        phone.app.open(step)
        await phone.app.back().value
        #expect(phone.app.openStep.isEmpty)
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

    /// The same with an application segment (JPEG, ITU-T T.81, B.2.4.6), where a camera writes the place.
    private static let jpegWithPlace = Data([0xFF, 0xD8, 0xFF, 0xE1, 0, 8] + Array("Exif00".utf8)) + jpeg.dropFirst(2)

    @Test func aStepWithAPhotoIsTwoTaps() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        phone.device.photo = Self.jpeg
        await phone.app.takePhoto(step).value
        let taken = try #require(model.currentStep)
        let photo = try #require(taken.photo)
        #expect(taken.code == step.code && photo.place == .here && !photo.signed)
        await model.tick(taken).value
        let signed = try #require(model.steps.first { $0.code == step.code })
        #expect(signed.state == .done && signed.photo?.signed == true)
        #expect(try Data(contentsOf: URL(fileURLWithPath: photo.file)) == Self.jpeg)
    }

    @Test func aPhotoStandsBesideTheOneBeforeIt() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let codes = [try #require(model.steps.first).code, try #require(model.steps.last).code]
        // The same photo twice would be one.
        for (code, scan) in zip(codes, [0x12, 0x13] as [UInt8]) {
            phone.device.photo = Self.jpeg.dropLast(3) + [scan, 0xFF, 0xD9]
            await phone.app.takePhoto(try #require(model.steps.first { $0.code == code })).value
        }
        #expect(phone.app.lookedSteps.isEmpty)
        phone.app.look(model.steps.first?.photo)
        #expect(phone.app.lookedSteps.map(\.code) == [codes[0]], "there is none before the first")
        phone.app.look(model.steps.last?.photo)
        #expect(phone.app.lookedSteps.map(\.code) == codes && !phone.app.comparing)
        phone.app.compare(true)
        #expect(phone.app.comparing)
        phone.app.look(nil)
        #expect(!phone.app.comparing && phone.app.lookedSteps.isEmpty)
    }

    @Test func aCameraThatTookNothingLeavesNothing() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        await phone.app.takePhoto(step).value
        #expect(phone.device.filled.count == 1 && phone.app.trouble == nil)
        #expect(model.currentStep?.photo == nil)
        phone.device.photo = Self.jpeg.prefix(9)
        await phone.app.takePhoto(step).value
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
        #expect(try phone.penetration().currentStep?.photo?.place == .here && phone.app.restored)
    }

    @Test func theNextActionTicksItsStepWithThePhotoThatWasTaken() async throws {
        let phone = try await opened()
        phone.device.photo = Self.jpeg
        let step = try #require(try phone.penetration().currentStep)
        await phone.app.takePhoto(step).value
        // What the frame's next action does.
        await (try phone.penetration()).tick(try #require(try phone.penetration().currentStep)).value
        let ticked = try #require(try phone.penetration().steps.first { $0.code == step.code })
        #expect(ticked.state == .done && ticked.photo?.signed == true)
    }

    @Test func theCameraStandsBesideAStepUntilItsPhotoIsThere() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let asked = try #require(model.steps.first { $0.photoAsked })
        #expect(model.wantsPhoto(asked) && model.steps.allSatisfy { $0.photoAsked || !model.wantsPhoto($0) })
        phone.device.photo = Self.jpeg
        await phone.app.takePhoto(asked).value
        let taken = try #require(model.steps.first { $0.code == asked.code })
        #expect(!model.wantsPhoto(taken) && taken.photoHere != nil)
    }

    @Test func aPhotoOfABoardGoesIntoItsTickToo() async throws {
        let phone = try await Phone.withNotchedBoard()
        phone.app.putQuestionAway()
        phone.device.photo = Self.jpeg
        let board = try phone.board()
        let step = try #require(board.currentStep)
        await phone.app.takePhoto(step).value
        #expect(phone.app.trouble == nil && board.currentStep?.photoHere?.signed == false)
        await board.tick(try #require(board.currentStep)).value
        #expect(board.steps.first { $0.code == step.code }?.photo?.signed == true)
    }

    @Test func aPhotoIsHandedOnUnderItsStepWithoutThePlaceWhereItWasTaken() async throws {
        let phone = try await opened()
        let model = try phone.penetration()
        let step = try #require(model.currentStep)
        phone.device.photo = Self.jpegWithPlace
        await phone.app.takePhoto(step).value
        let photo = try #require(model.currentStep?.photoHere)
        phone.book.reset()
        await phone.app.sharePhoto(photo, title: step.text).value
        #expect(phone.book.calls == ["exportPhoto"] && phone.app.trouble == nil)
        let (title, path) = try #require(phone.device.shared.last)
        let shared = try Data(contentsOf: URL(fileURLWithPath: path))
        #expect(title == step.text && shared == Self.jpeg, "the application segment is gone, the picture is the same")
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
