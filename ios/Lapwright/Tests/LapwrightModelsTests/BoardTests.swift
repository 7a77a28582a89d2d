import Foundation
import LapwrightCore
import Testing

@testable import LapwrightModels

extension Phone {
    /// A phone on the demo house with its pole laid out and the boards of its first wall planned.
    static func withBoards() async throws -> Phone {
        let phone = try await Phone.withDemo()
        await (try phone.house()).pole().value
        await (try phone.pole()).layOut().value
        await phone.app.back().value
        await phone.app.go(.wall(wall: try phone.house().view.walls[0].wall)).value
        await (try phone.wall()).planBoards().value
        return phone
    }

    /// The same, with the first board open that is cut round a block of a pipe, a box or the like.
    static func withNotchedBoard() async throws -> Phone {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        for line in wall.view.boards where line.notched {
            await wall.open(line).value
            if !(try phone.board()).view.notches.isEmpty { return phone }
            await phone.app.back().value
        }
        Issue.record("no board has a notch")
        return phone
    }
}

/// The board in hand.
@MainActor struct BoardTests {
    @Test func theTapeIsTakenToEachReadingInTurnAndTheNotchIsThereAtOnce() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let notch = try #require(board.view.notches.first)
        #expect(!notch.taped)
        var asked: [String] = []
        while let question = phone.app.entry.question, asked.count < 12 {
            asked.append(question.field)
            #expect(question.subject == notch.notch || board.view.notches.contains { $0.notch == question.subject })
            await phone.type(try #require(question.reading).text)
            if phone.app.trouble != nil { break }
        }
        #expect(phone.app.trouble == nil)
        #expect(Array(asked.prefix(4)) == ["left", "right", "bottom-left", "top-left"])
        #expect(board.asked == nil)
        let taped = try #require(board.view.notches.first)
        #expect(taped.taped && taped.face != nil && taped.gapLeast != nil)
    }

    @Test func keysOfAPlannedNotchAreThereAgainAfterAStop() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board().view.board
        let field = try #require(phone.app.entry.question?.field)
        phone.app.entry.press("5")
        phone.app.entry.press("1")
        await phone.app.settled()
        try await phone.restart()
        #expect(phone.app.place == .board(board: board) && phone.app.restored)
        #expect(phone.app.entry.question?.field == field && phone.app.entry.text == "51")
    }

    @Test func theBackIsTheFaceTurnedOver() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let notch = board.view.notches[0]
        let face = try #require(board.marks(notch))
        let picture = board.picture
        board.turn()
        let back = try #require(board.marks(notch))
        #expect(board.side == .back && board.picture != picture)
        let length = try #require(board.view.length).nm
        // Left and right change places: what was read from one end is the rest from the other.
        #expect(face.uprights.map { length - $0.nm }.sorted() == back.uprights.map(\.nm).sorted())
        board.turn()
        #expect(board.marks(notch) == face)
    }

    @Test func everyMarkIsSaidAloud() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        board.sayMarks()
        let said = try #require(phone.device.said.last)
        for mark in try #require(board.view.notches[0].face).uprights { #expect(said.contains(mark.spoken)) }
        #expect(!said.contains("\""), "a sign of a unit is not said")
    }

    @Test func aStepIsOneTapAndCanBeTakenBack() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let step = try #require(board.currentStep)
        phone.book.reset()
        await board.tick(step).value
        #expect(phone.book["act"] == 1)
        #expect(board.steps.first { $0.code == step.code }?.state == .done)
        await board.takeBack(step).value
        #expect(board.steps.first { $0.code == step.code }?.state == .open)
    }

    @Test func aNotchThatNoPlanKnowsNeedsFourReadings() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let before = board.view.notches.count
        await board.addNotch().value
        #expect(try phone.new().questions.count == 4)
        for reading in ["6", "9", "-1 1/2", "4"] { await phone.type(reading) }
        #expect(phone.app.trouble == nil)
        #expect(try phone.board().view.notches.count == before + 1)
    }

    @Test func aSpoiledBoardIsPlannedAgainAndWhatIsLeftIsAnOffcut() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        await (try phone.house()).addLooseBoard().value
        await phone.type("118 1/2")
        let board = try phone.board()
        #expect(!board.isCut)
        while !board.isCut, let step = board.currentStep { await board.tick(step).value }
        #expect(board.isCut)
        await board.spoiled().value
        await phone.type("60")
        #expect(phone.app.trouble == nil)
        #expect(try phone.board().steps.allSatisfy { $0.state == .open } && !(try phone.board().isCut))
        await phone.app.go(.sawList(job: job)).value
        #expect(try phone.sawList().view.offcuts.contains { $0.length.nm == 1_524_000_000 })
    }

    @Test func aLooseBoardIsMadeOnceMoreFromTheHouseAndFromItself() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        #expect(try !phone.house().view.hasLooseBoard)
        await (try phone.house()).addLooseBoard().value
        await phone.type("31")
        let first = try phone.board().view
        await phone.app.go(.house(job: job)).value
        #expect(try phone.house().view.hasLooseBoard)
        await (try phone.house()).createSameBoard().value
        let second = try phone.board().view
        #expect(second.board != first.board && second.length?.nm == first.length?.nm)
        await (try phone.board()).createSame().value
        #expect(try phone.board().view.board != second.board && phone.app.trouble == nil)
    }

    @Test func aLooseBoardBelongsToTheHouse() async throws {
        let phone = try await Phone.withDemo()
        let job = try phone.house().view.job
        await (try phone.house()).addLooseBoard().value
        await phone.type("118 1/2")
        let board = try phone.board()
        #expect(board.view.job == job && board.view.wall.isEmpty && board.view.course == nil)
        let trouble = String(describing: phone.app.trouble)
        #expect(board.view.length?.text == "118 1/2\"", "\(trouble)")
        phone.app.entry.close()
        await phone.app.go(.house(job: job)).value
        await phone.app.back().value
        let wall = try #require(try phone.board().view.walls.first)
        await (try phone.board()).attach(to: wall).value
        #expect(try phone.board().view.wall == wall.wall)
    }
}

/// Drawings come again only where something of them changed.
@MainActor struct PictureTests {
    private let frame = Frame(widthDp: 360, heightDp: 400, answerDp: 44, labelDp: 18, smallDp: 16, leftHand: false)

    @Test func oneRevisionInOneFrameIsFetchedOnce() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        phone.book.reset()
        let face = PictureModel(board.face, app: phone.app)
        await face.fetch(board.view.revision, for: frame)
        await face.fetch(board.view.revision, for: frame)
        #expect(phone.book["drawing"] == 1)
        let strokes = try #require(face.strokes)
        #expect(strokes.count > 5 && face.drawing?.revision == board.view.revision)
        var wider = frame
        wider.widthDp = 500
        await face.fetch(board.view.revision, for: wider)
        #expect(phone.book["drawing"] == 2 && face.drawing?.widthDp == 500)
    }

    @Test func keysDoNotChangeTheRevisionAndAnAnswerDoes() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let revision = board.view.revision
        phone.app.entry.press("5")
        await phone.app.settled()
        #expect(board.view.revision == revision)
        let answered = try #require(phone.app.entry.question?.reading)
        // A quarter of an inch beside what was planned.
        phone.app.entry.type("\(Double(answered.nm + 6_350_000) / 25_400_000)")
        phone.app.entry.accept()
        await phone.app.settled()
        #expect(phone.app.trouble == nil && board.view.revision != revision)
    }

    @Test func theWidthOfEveryTextStaysInTheDrawing() async throws {
        let phone = try await Phone.withNotchedBoard()
        let board = try phone.board()
        let back = PictureModel(.boardBack(board: board.view.board), app: phone.app)
        await back.fetch(board.view.revision, for: frame)
        let drawing = try #require(back.drawing)
        var texts = 0
        for case .text(_, let lettering) in try #require(back.strokes) where lettering.turn == 0 {
            texts += 1
            let left: Float =
                switch lettering.anchor {
                case .start: lettering.at.x
                case .middle: lettering.at.x - lettering.width / 2
                case .end: lettering.at.x - lettering.width
                }
            #expect(left >= -0.5 && left + lettering.width <= drawing.widthDp + 0.5, "\(lettering.text)")
        }
        #expect(texts > 0)
    }

    @Test func whatIsNotThereHasNoPicture() async throws {
        let phone = try await Phone.withDemo()
        let picture = PictureModel(.boardFace(board: "none"), app: phone.app)
        await picture.fetch(1, for: frame)
        #expect(picture.strokes == nil && picture.target(x: 1, y: 1) == nil && phone.app.trouble == nil)
    }
}

/// Every other drawing of the demo house can be put on the canvas.
@MainActor struct DrawnScreensTests {
    private let frame = Frame(widthDp: 360, heightDp: 420, answerDp: 44, labelDp: 18, smallDp: 16, leftHand: false)

    private func drawn(
        _ subject: Subject,
        _ revision: Int64,
        on phone: Phone
    ) async throws -> (strokes: Int, picture: PictureModel, drawing: Drawing) {
        let picture = PictureModel(subject, app: phone.app)
        await picture.fetch(revision, for: frame)
        let drawing = try #require(picture.drawing)
        #expect(drawing.revision == revision && drawing.heightDp <= 420.5 && !drawing.spoken.isEmpty)
        return (try #require(picture.strokes).count, picture, drawing)
    }

    @Test func aTapOnTheElevationLeadsToTheBoardOrThePenetrationThere() async throws {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        let elevation = Subject.elevation(wall: wall.view.wall)
        let (strokes, picture, drawing) = try await drawn(elevation, wall.view.revision, on: phone)
        #expect(strokes > wall.view.boards.count)
        let places = drawing.targets.map(\.place)
        for board in wall.view.boards { #expect(places.contains(.board(board: board.board))) }
        for hole in wall.view.penetrations {
            #expect(places.contains(.penetration(penetration: hole.penetration)))
        }
        let target = try #require(drawing.targets.last)
        let middle = ((target.left + target.right) / 2, (target.top + target.bottom) / 2)
        let hit = try #require(picture.target(x: middle.0, y: middle.1))
        #expect(hit.left <= middle.0 && middle.0 <= hit.right)
        #expect(picture.target(x: -5, y: -5) == nil)
        await phone.app.go(hit.place).value
        #expect(phone.app.place == hit.place && phone.app.trouble == nil)
    }

    @Test func thePoleIsDrawnAsAStick() async throws {
        let phone = try await Phone.withDemo()
        await (try phone.house()).pole().value
        let pole = try phone.pole()
        let (strokes, _, _) = try await drawn(.poleStick(job: pole.view.job), pole.view.revision, on: phone)
        #expect(strokes > pole.view.lines.count)
    }

    @Test func theBlockOfAPenetrationIsDrawn() async throws {
        let phone = try await Phone.withBoards()
        let wall = try phone.wall()
        await wall.open(wall.view.penetrations[0]).value
        let view = try phone.penetration().view
        #expect(!view.block.isEmpty)
        let (strokes, _, block) = try await drawn(.blockSplit(penetration: view.penetration), view.revision, on: phone)
        #expect(strokes > 3)
        let seen = Subject.layersFront(penetration: view.penetration, layer: "")
        let (front, _, _) = try await drawn(seen, view.revision, on: phone)
        let section = Subject.layersSection(penetration: view.penetration, layer: "block")
        let (lines, _, layers) = try await drawn(section, view.revision, on: phone)
        #expect(front > 3 && lines > 3 && layers.bytes != block.bytes)
    }
}
