import Foundation
import LapwrightCore
import Observation

/// What is shown, and the way of a tap: one call of the book, whose answer is the whole new view.
///
/// Nothing of the trade is decided here. Every tap gives the task that carries it out; tasks follow each other in the
/// order of the taps, so that a later one sees what an earlier one led to.
@MainActor @Observable
public final class AppModel {
    /// Who holds the phone, and how it speaks.
    public private(set) var remembered: Remembered
    /// The words and the drawn piece of tape that stand round every screen.
    public private(set) var frame: FrameView
    /// Where we are.
    public private(set) var place: Place = .jobs
    /// The screen of that place.
    public private(set) var screen: Screen?
    /// Why the last tap did nothing.
    public private(set) var trouble: Trouble?
    /// What was done last, for some seconds.
    public private(set) var done: Done?
    /// The photo that is looked at, as large as the glass.
    public private(set) var looked: StepPhoto?
    /// Whether the photo before it stands beside it.
    public private(set) var comparing = false
    /// Whether the app was opened where its signer had left off.
    public private(set) var restored = false
    /// The step that was opened for more than its tick, by its code.
    public private(set) var openStep = ""
    /// Whether the phone listens for a length.
    public private(set) var listening = false
    /// Whether the glass is deaf to drops: then nothing that is tapped does anything.
    public private(set) var locked = false
    /// The question that is being answered.
    public let entry = EntryModel()

    @ObservationIgnored public let services: Services
    @ObservationIgnored let bookActor: BookActor
    @ObservationIgnored private var visited: [Place] = []
    @ObservationIgnored private var opened: QuestionKey?
    @ObservationIgnored private var putAway: QuestionKey?
    @ObservationIgnored private var last: Task<Void, Never>?
    @ObservationIgnored private var signing = 0
    @ObservationIgnored private var signedMs: Int64?

    private init(_ bookActor: BookActor, _ services: Services, _ remembered: Remembered, _ frame: FrameView) {
        (self.bookActor, self.services, self.remembered, self.frame) = (bookActor, services, remembered, frame)
    }

    /// Opens where the signer left off.
    public static func open(_ bookActor: BookActor, _ services: Services) async throws -> AppModel {
        let remembered = await bookActor.remembered()
        let frame = try await bookActor.frame(remembered.context(services.clock, services.entropy))
        let app = AppModel(bookActor, services, remembered, frame)
        try await app.open(remembered.place, afterStop: true)
        app.restored = app.place != .jobs
        return app
    }

    /// Whether there is a screen to go back to.
    public var canGoBack: Bool { !visited.isEmpty || place != .jobs }

    /// The words of buttons and headings.
    public var words: Words { frame.words }

    /// Whether the glass can be locked here: where both hands are full and the phone lies open.
    public var lockable: Bool {
        switch place {
        case .board, .penetration: true
        default: false
        }
    }

    /// Opens a step, or closes the one that is open.
    public func open(_ step: StepLine) {
        openStep = openStep == step.code ? "" : step.code
    }

    /// Locks the glass, or unlocks it.
    public func lock(_ locked: Bool) {
        self.locked = locked
    }

    /// Goes to a screen.
    @discardableResult public func go(_ place: Place) -> Task<Void, Never> {
        tap { [self] in try await visit(place) }
    }

    /// Goes back to the screen before, or up to the houses.
    @discardableResult public func back() -> Task<Void, Never> {
        tap { [self] in
            let place = visited.last ?? .jobs
            let view = try await bookActor.go(context(), place)
            _ = visited.popLast()
            present(place, view)
        }
    }

    /// Carries out what was tapped, and shows what it led to.
    @discardableResult public func act(_ action: Action) -> Task<Void, Never> {
        tap { [self] in try await carryOut(action) }
    }

    /// Carries out a tap that signs. What it signs stands in its place at once with the next thing to sign, so for a moment after it
    /// there is no other: the second tap of two in a row is none.
    @discardableResult public func sign(_ action: Action) -> Task<Void, Never> {
        let since = signedMs.map { services.clock.nowMs - $0 }
        guard signing == 0, since.map({ 0..<Self.deadMs ~= $0 }) != true else { return Task {} }
        signing += 1
        let signed = act(action)
        return Task { [self] in
            await signed.value
            signing -= 1
            signedMs = services.clock.nowMs
        }
    }

    /// How long after a tap that signs no other does.
    private static let deadMs: Int64 = 700

    /// How long what was done stands there with its undo.
    public static let seenSeconds: Double = 8

    /// Takes back what was done last, and stays where that can be shown.
    @discardableResult public func undo() -> Task<Void, Never> {
        guard let done else { return Task {} }
        return tap { [self] in
            _ = try await bookActor.act(context(), .doneListKind(action: .undo(job: nil, group: done.group)))
            services.haptics.taken()
            self.done = nil
            try await presentFirst(of: [place] + visited.reversed().filter { $0 != place } + [.jobs])
        }
    }

    /// What was made and is taken back has no place any more: then the screen before it is shown.
    private func presentFirst(of places: [Place]) async throws {
        for place in places {
            guard let view = try? await bookActor.go(context(), place) else { continue }
            return present(place, view)
        }
    }

    /// What was done last was seen for long enough.
    public func forget(_ seen: Done) {
        if done == seen { done = nil }
    }

    /// What there is to mind at a step or a check was read.
    @discardableResult public func read(_ step: String) -> Task<Void, Never> {
        switch place {
        case .board(let board): act(.boardKind(action: .readCautions(board: board, step: step)))
        case .penetration(let hole): act(.penetrationKind(action: .readCautions(penetration: hole, step: step)))
        default: Task {}
        }
    }

    /// Looks at a photo, or puts it away.
    public func look(_ photo: StepPhoto?) {
        guard !locked else { return }
        (looked, comparing) = (photo, false)
    }

    /// Sets the photo before it beside the one that is looked at, or takes it away again.
    public func compare(_ comparing: Bool) {
        guard !locked else { return }
        self.comparing = comparing
    }

    /// Keeps keys that were typed and not yet accepted.
    @discardableResult public func keep(_ action: Action) -> Task<Void, Never> {
        queue { [self] in
            let outcome = try await bookActor.act(context(), action)
            if outcome.place == place { _ = screen?.model.take(outcome.view) }
            stayAwake()
        }
    }

    /// Carries out what makes a file called `name`, and hands the file on under a title.
    @discardableResult public func share(
        _ title: String,
        name: String,
        making: @escaping @MainActor (String) -> Action
    ) -> Task<Void, Never> {
        tap { [self] in
            let path = services.share.place(name)
            let outcome = try await bookActor.act(context(), making(path))
            present(outcome.place, outcome.view)
            services.share.file(path, title: title)
        }
    }

    /// Lets the person pick a file: where the copies are shown it is one to go back to, anywhere else what a colleague handed over.
    @discardableResult public func pickFile() -> Task<Void, Never> {
        guard !locked else { return Task {} }
        return Task { [self] in
            switch await services.files.pick() {
            case .file(let path): await go(place == .backups ? .restore(copy: path) : .takeIn(file: path)).value
            case .nothing: break
            case .unreadable: tell(words.fileUnreadable)
            }
        }
    }

    /// The app goes out of sight: the book keeps a copy of itself. Where that fails, it is said to whoever comes back, and the
    /// next time tries again.
    @discardableResult public func hidden() -> Task<Void, Never> {
        queue { [self] in try await bookActor.keepCopy(nowMs: services.clock.nowMs) }
    }

    /// Whether a length can be said instead of typed.
    public var listens: Bool { services.listening.hears(remembered.language) }

    /// Takes a length from the phone's ear and types it, to be looked at before it is accepted.
    @discardableResult public func listen() -> Task<Void, Never> {
        guard !locked, let asked = entry.question.map(QuestionKey.init) else { return Task {} }
        services.speech.hush()
        (trouble, listening) = (nil, true)
        return Task { [self] in
            let heard = await services.listening.listen(remembered.language)
            listening = false
            switch heard {
            case .words(let text): await type(text, for: asked)
            case .nothing: tell(words.heardNothing)
            case .refused: tell(words.microphoneRefused)
            case .languageNotHere: tell(words.languageNotHere)
            }
        }
    }

    private func type(_ heard: String, for asked: QuestionKey) async {
        await queue { [self] in
            let typed = try await bookActor.heard(context(), heard)
            guard entry.question.map(QuestionKey.init) == asked else { return }
            trouble = nil
            entry.type(typed)
        }.value
    }

    /// Says what the phone itself cannot do or is not allowed to.
    func tell(_ text: String) {
        trouble = Trouble(text)
        services.haptics.refused()
    }

    /// Opens a question by hand.
    public func ask(_ question: Question) {
        guard !locked else { return }
        (opened, putAway, trouble) = (QuestionKey(question), nil, nil)
        follow()
    }

    /// Puts the question that is asked away; what was typed stays kept.
    public func putQuestionAway() {
        guard !locked, let question = entry.question else { return }
        (putAway, opened, trouble) = (QuestionKey(question), nil, nil)
        entry.putAway()
    }

    /// The trouble, or that we are back, was read.
    public func understood() {
        (trouble, restored) = (nil, false)
    }

    /// Something beside the book went wrong.
    func failed(_ error: any Error) {
        trouble = Trouble(error)
        services.haptics.refused()
    }

    /// Says a text aloud in the language of the screens.
    public func say(_ text: String) {
        services.speech.say(text, language: remembered.language)
    }

    /// Ends when everything that was tapped so far is carried out.
    public func settled() async {
        await last?.value
    }

    func context() -> Context {
        remembered.context(services.clock, services.entropy)
    }
}

extension Remembered {
    /// What a call of the book needs to know: who speaks and how, when, and new chance.
    @MainActor fileprivate func context(_ clock: any Clock, _ entropy: any Entropy) -> Context {
        Context(
            nowMs: clock.nowMs,
            utcOffsetMinutes: clock.utcOffsetMinutes,
            signer: signer,
            language: language,
            show: show,
            division: division,
            entropy: Data(entropy.draw())
        )
    }
}

// What a tap leads to.
extension AppModel {
    /// A tap: locked glass takes none, and what it says takes the place of what was said before.
    func tap(_ work: @escaping @MainActor () async throws -> Void) -> Task<Void, Never> {
        guard !locked else { return Task {} }
        entry.pending += 1
        return queue { [self] in
            defer { entry.pending -= 1 }
            restored = false
            try await work()
            trouble = nil
        }
    }

    /// What was typed is in doubt: its question comes back with the answers to choose from.
    private func doubt() async {
        guard let view = try? await bookActor.view(context(), place) else { return }
        present(place, view)
    }

    /// One after the other.
    private func queue(_ work: @escaping @MainActor () async throws -> Void) -> Task<Void, Never> {
        let before = last
        let task = Task { [self] in
            await before?.value
            do {
                try await work()
            } catch {
                failed(error)
                if trouble?.code == Trouble.inDoubt { await doubt() }
            }
        }
        last = task
        return task
    }

    private func carryOut(_ action: Action) async throws {
        let outcome = try await bookActor.act(context(), action)
        services.haptics.taken()
        done = Done(outcome, of: action)
        if case .settingsKind = action, try await takeSettings() { return }
        let from = place
        present(outcome.place, outcome.view)
        // A colleague's file that was taken in is nowhere to come back to.
        if case .takeInKind = action { return }
        if outcome.place != from { left(from, for: outcome.place) }
        // What was looked at before may be in the book no more.
        if case .restoreKind = action { visited = [] }
    }

    private func visit(_ place: Place) async throws {
        let view = try await bookActor.go(context(), place)
        done = nil
        let from = self.place
        present(place, view)
        if place != from { left(from, for: place) }
    }

    /// A setting may change the words, the unit, or who holds the phone: each signer goes on where they left off.
    private func takeSettings() async throws -> Bool {
        let now = await bookActor.remembered()
        let before = remembered
        remembered.place = now.place
        guard now != remembered else { return false }
        remembered = now
        frame = try await bookActor.frame(context())
        if now.signer != before.signer { visited = [] }
        try await open(now.signer == before.signer ? .settings : now.place, afterStop: false)
        return true
    }

    /// A thing in the making is no place to come back to.
    private func left(_ from: Place, for place: Place) {
        guard case .new = from else { return visited.append(from) }
        if visited.last == place { visited.removeLast() }
    }

    /// A remembered place may name what is no longer there.
    private func open(_ place: Place, afterStop: Bool) async throws {
        if let view = try? await bookActor.view(context(), place) {
            present(place, afterStop ? await withPhotos(place, view) : view)
        } else {
            present(.jobs, try await bookActor.view(context(), .jobs))
        }
    }

    private func present(_ place: Place, _ view: View) {
        entry.close()
        opened = nil
        if place != self.place || screen?.model.take(view) != true {
            if place != self.place { (locked, openStep, looked, comparing) = (false, "", nil, false) }
            (self.place, putAway) = (place, nil)
            screen = Screen(view, app: self)
        }
        follow()
        stayAwake()
    }

    /// Asks what was opened by hand, else what the view asks.
    private func follow() {
        guard let asking = screen?.model as? any Asking else { return }
        let wanted = asking.asked.flatMap { QuestionKey($0) == putAway ? nil : $0 }
        guard let asked = opened?.find(in: asking.questions) ?? wanted else { return }
        entry.ask(
            asked,
            keep: { [weak self] text in self?.keep(asking.keeping(asked, text)) },
            take: { [weak self] text in self?.act(asking.answering(asked, text)) }
        )
    }

    /// Boards and penetrations are read with both hands full.
    private func stayAwake() {
        switch place {
        case .board, .penetration: services.keepAwake.keep()
        default: services.keepAwake.release()
        }
    }
}
