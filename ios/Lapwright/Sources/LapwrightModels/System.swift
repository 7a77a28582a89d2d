import Foundation

/// The clock of the machine.
public final class SystemClock: Clock {
    public init() {}

    public var nowMs: Int64 { Int64((Date().timeIntervalSince1970 * 1000).rounded()) }

    public var utcOffsetMinutes: Int32 { Int32(TimeZone.current.secondsFromGMT() / 60) }
}

/// The chance of the machine.
public final class SystemEntropy: Entropy {
    public init() {}

    public func draw() -> [UInt8] {
        (0..<16).map { _ in UInt8.random(in: .min ... .max) }
    }
}
