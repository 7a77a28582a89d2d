// swift-tools-version:6.0
import PackageDescription

// Sources of the bindings and, on Linux, the library itself: made by `cargo xtask bindings`.
let library = "\(Context.packageDirectory)/Generated/Library"

let package = Package(
    name: "Lapwright",
    platforms: [.macOS(.v14), .iOS(.v17)],
    products: [.library(name: "LapwrightCore", targets: ["LapwrightCore"])],
    targets: [
        .systemLibrary(name: "LapwrightFFI", path: "Generated/LapwrightFFI"),
        .target(
            name: "LapwrightCore",
            dependencies: ["LapwrightFFI"],
            path: "Generated/LapwrightCore",
            linkerSettings: [
                .linkedLibrary("lapwright_ffi"),
                .unsafeFlags(
                    ["-L\(library)", "-Xlinker", "-rpath", "-Xlinker", library, "-Xlinker", "--allow-shlib-undefined"],
                    .when(platforms: [.linux])
                ),
            ]
        ),
        .testTarget(name: "LapwrightCoreTests", dependencies: ["LapwrightCore"]),
    ],
    swiftLanguageModes: [.v6]
)
