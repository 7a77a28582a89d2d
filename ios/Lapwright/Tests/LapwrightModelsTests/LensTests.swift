import LapwrightCore
import Testing

@testable import LapwrightModels

/// Drawing nearer: the point between the fingers stays where it is.
struct LensTests {
    @Test func thePointThatIsDrawnNearerStays() {
        var lens = Lens()
        let at = Spot(x: 100, y: 40)
        #expect(lens.under(at) == at)
        lens.draw(nearer: 2, about: at)
        #expect(lens.scale == 2 && lens.under(at) == at)
        // Twice as near, what lay 10 beside it lies 20 beside it.
        #expect(lens.under(Spot(x: 120, y: 40)) == Spot(x: 110, y: 40))
        lens.draw(nearer: 1, about: Spot(x: 0, y: 0), moved: Spot(x: 20, y: -8))
        #expect(lens.under(Spot(x: 120, y: 32)) == at)
    }

    @Test func whatIsTooSmallForAFingerIsBroughtNearerOnce() {
        var lens = Lens()
        let strip = Target(left: 0, top: 100, right: 300, bottom: 107, place: .jobs, spoken: "a board")
        #expect(7 * lens.nearer(for: strip) == 64)
        lens.draw(nearer: lens.nearer(for: strip), about: Spot(x: 10, y: 103))
        #expect(lens.nearer(for: strip) == 1, "large enough by then")
        let block = Target(left: 0, top: 0, right: 64, bottom: 64, place: .jobs, spoken: "a block")
        #expect(Lens().nearer(for: block) == 1)
    }

    @Test func itsOwnSizeIsTheSmallestAndLiesAsItWas() {
        var lens = Lens()
        lens.draw(nearer: 3, about: Spot(x: 30, y: 70))
        lens.draw(nearer: 0.01, about: Spot(x: 300, y: 7))
        #expect(lens == Lens())
        lens.draw(nearer: 1000, about: Spot(x: 0, y: 0))
        #expect(lens.scale == 12)
    }
}
