import LapwrightCore

/// A field of a screen that takes keys.
struct Field: CustomStringConvertible {
    let place: Place
    let question: Question

    /// What is typed into it.
    var keys: String { question.kind == .textKind ? "Ab" : "7" }

    var description: String { "\(question.field) of \(question.subject) on \(place)" }

    /// Every field that takes keys, of one screen of each kind, and of each thing that can be made.
    static func all(in book: any BookProtocol, _ context: Context) throws -> [Field] {
        try places(in: book, context).flatMap { place in
            var seen: Set<[String]> = []
            return questions(in: try book.view(context: context, place: place))
                // The readings of a hung course are asked on a screen of their own, where they are made.
                .filter { !(place.isPole && $0.subject.isEmpty) && seen.insert([$0.subject, $0.field]).inserted }
                .map { Field(place: place, question: $0) }
        }
    }
}

extension Place {
    fileprivate var isPole: Bool {
        if case .pole = self { true } else { false }
    }
}

/// What can be made, and where.
private let things: [NewThing] = [
    .house, .stock, .wall, .mark, .looseBoard, .baseStep, .stud, .opening, .abutment, .penetration, .samePenetration,
    .notch,
    .offcut, .asBuilt, .spoiled,
]

private func places(in book: any BookProtocol, _ context: Context) throws -> [Place] {
    func seen(_ place: Place) throws -> [Any] { all(in: try book.view(context: context, place: place)) }
    let job = try seen(.jobs).compactMap { ($0 as? JobLine)?.job }[0]
    let walls = try seen(.house(job: job)).compactMap { ($0 as? WallProgress)?.wall }
    let parts = try walls.flatMap { try seen(.wall(wall: $0)) }
    let holes = parts.compactMap { ($0 as? PenetrationLine)?.penetration }
    let boards = parts.compactMap { ($0 as? BoardLine)?.board }
    let notched = try boards.filter { board in
        try seen(.board(board: board)).contains { ($0 as? NotchView)?.questions.isEmpty == false }
    }
    let parents = ["", job, walls[0], notched[0]]
    let making = things.compactMap { thing in
        parents.map { Place.new(what: thing, parent: $0) }.first {
            (try? book.view(context: context, place: $0)) != nil
        }
    }
    return [
        .jobs, .settings, .house(job: job), .pole(job: job), .rules(job: job), .sawList(job: job), .order(job: job),
        .doneList(job: job), .wall(wall: walls[0]), .measure(wall: walls[0]), .board(board: notched[0]),
    ] + holes.map { .penetration(penetration: $0) } + making
}

/// The questions in a view, wherever they stand, that take keys.
private func questions(in view: View) -> [Question] {
    all(in: view).compactMap { $0 as? Question }.filter { $0.kind != .choiceKind }
}

/// A thing and everything inside it.
private func all(in thing: Any) -> [Any] {
    [thing] + Mirror(reflecting: thing).children.flatMap { all(in: $0.value) }
}
