// swift-tools-version:6.0
import Foundation
import PackageDescription

// Sources of the bindings and, on Linux, the library itself: made by `cargo xtask bindings`.
let library = "\(Context.packageDirectory)/Generated/Library"

// What a Mac has built for phones: made by `cargo xtask ios`.
let framework = "Generated/LapwrightFFI.xcframework"
let hasFramework = FileManager.default.fileExists(atPath: "\(Context.packageDirectory)/\(framework)")

// Linux has nothing of Apple's. There the screens, and the app's services, are compiled against the names that they use,
// to find what is wrong in ourselves; that proves nothing about Apple's own.
#if os(Linux)
    let stubs: [Target] =
        ["Accessibility", "SwiftUI", "AVFoundation", "UniformTypeIdentifiers"].map {
            .target(name: $0, path: "Tests/Stubs/\($0)")
        }
        + [("Speech", "AVFoundation"), ("UIKit", "UniformTypeIdentifiers")].map { name, other in
            .target(name: name, dependencies: [.target(name: other)], path: "Tests/Stubs/\(name)")
        }
    let screens: [Target.Dependency] = ["LapwrightCore", "LapwrightModels", "Accessibility", "SwiftUI"]
#else
    let stubs: [Target] = []
    let screens: [Target.Dependency] = ["LapwrightCore", "LapwrightModels"]
#endif

let package = Package(
    name: "Lapwright",
    platforms: [.macOS(.v14), .iOS(.v17)],
    products: [.library(name: "Lapwright", targets: ["LapwrightModels", "LapwrightScreens"])],
    targets: [
        hasFramework
            ? .binaryTarget(name: "LapwrightFFI", path: framework)
            : .systemLibrary(name: "LapwrightFFI", path: "Generated/LapwrightFFI"),
        .target(
            name: "LapwrightCore",
            dependencies: ["LapwrightFFI"],
            path: "Generated/LapwrightCore",
            linkerSettings: hasFramework
                ? []
                : [
                    .linkedLibrary("lapwright_ffi"),
                    .unsafeFlags(["-L\(library)", "-Xlinker", "-rpath", "-Xlinker", library]),
                    .unsafeFlags(["-Xlinker", "--allow-shlib-undefined"], .when(platforms: [.linux])),
                ]
        ),
        .target(name: "LapwrightModels", dependencies: ["LapwrightCore"]),
        .target(name: "LapwrightScreens", dependencies: screens),
        .testTarget(name: "LapwrightCoreTests", dependencies: ["LapwrightCore"]),
        .testTarget(name: "LapwrightModelsTests", dependencies: ["LapwrightModels", "Typist"]),
        // A further process, to be killed in the middle of an entry.
        .executableTarget(name: "Typist", dependencies: ["LapwrightModels"], path: "Tests/Typist"),
    ] + stubs,
    swiftLanguageModes: [.v6]
)
