import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

/// What a tap signs is read first, is signed once, and is undone in one tap.
@MainActor struct SignTests {
    private func atAPenetration() async throws -> (Phone, PenetrationModel) {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        await wall.open(try #require(wall.view.penetrations.first)).value
        return (phone, try phone.penetration())
    }

    @Test func aCautionIsReadBeforeItsStepIsSigned() async throws {
        let (phone, model) = try await atAPenetration()
        while let step = model.currentStep, step.cautionsRead { await model.next(step).value }
        let step = try #require(model.currentStep)
        #expect(!step.cautions.isEmpty && model.cautions == step.cautions)
        await model.next(step).value
        let read = try #require(model.currentStep)
        #expect(read.code == step.code && read.cautionsRead && model.cautions.isEmpty, "read, not signed")
        await model.next(read).value
        #expect(model.currentStep?.code != step.code && phone.app.trouble == nil)
    }

    @Test func theSecondOfTwoTapsInARowSignsNothing() async throws {
        let (phone, model) = try await atAPenetration()
        var done: Int { model.steps.filter { $0.state == .done }.count }
        phone.device.stands = 1_777_999_000_000
        let taps = [model.tick(model.steps[0]), model.tick(model.steps[1])]
        for tap in taps { await tap.value }
        #expect(done == 1, "before the first was answered")
        await model.tick(model.steps[1]).value
        #expect(done == 1, "at once")
        phone.device.stands = 1_777_999_000_699
        await model.tick(model.steps[1]).value
        #expect(done == 1, "too soon")
        phone.device.stands = 1_777_999_000_700
        await model.tick(model.steps[1]).value
        #expect(done == 2, "a tap of its own")
    }

    @Test func whatWasTickedIsUndoneInOneTapAndTheScreenStays() async throws {
        let (phone, model) = try await atAPenetration()
        let (step, place) = (try #require(model.currentStep), phone.app.place)
        await model.tick(step).value
        let done = try #require(phone.app.done)
        #expect(done.said.contains(step.text))
        await phone.app.undo().value
        #expect(phone.app.trouble == nil && phone.app.done == nil && phone.app.place == place)
        #expect(try phone.penetration().currentStep?.code == step.code)
        await (try phone.penetration()).tick(step).value
        phone.app.forget(try #require(phone.app.done))
        #expect(phone.app.done == nil)
    }

    @Test func aPlainBoardIsUpAfterThreeTicks() async throws {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        for line in wall.view.boards {
            await wall.open(line).value
            let board = try phone.board()
            guard board.view.checks.map(\.code) == ["cut", "primed", "up"] else {
                await phone.app.back().value
                continue
            }
            var ticks = 0
            for _ in 0..<20 {
                guard let check = board.currentCheck else { break }
                let before = board.steps.filter { $0.state == .done }.count
                await board.tap(check).value
                if board.steps.filter({ $0.state == .done }).count > before { ticks += 1 }
            }
            #expect(board.view.state == "fixed" && ticks == 3 && phone.app.trouble == nil)
            let next = board.view.nextBoard
            await board.openNext().value
            #expect(phone.app.place == .board(board: next))
            return
        }
        Issue.record("no plain board on this wall")
    }

    @Test func aPhotoIsLookedAtUntilThePlaceIsLeft() async throws {
        let (phone, model) = try await atAPenetration()
        let photo = StepPhoto(photo: "one", place: .here, file: "/nowhere", signed: true)
        phone.app.look(photo)
        #expect(phone.app.looked == photo)
        phone.app.look(nil)
        #expect(phone.app.looked == nil)
        phone.app.look(photo)
        await phone.app.back().value
        #expect(phone.app.looked == nil && model.view.penetration.isEmpty == false)
    }
}
