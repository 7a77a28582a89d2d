import Foundation
import Testing

@testable import LapwrightModels

/// The project that only a Mac can build: its files are well-formed, hang together, and ask for nothing that is not used.
struct ProjectTests {
    private static let app = (0..<4)
        .reduce(URL(fileURLWithPath: #filePath)) { url, _ in url.deletingLastPathComponent() }
        .appendingPathComponent("App")

    private func plist(_ path: String) throws -> [String: Any] {
        let data = try Data(contentsOf: Self.app.appendingPathComponent(path))
        let read = try PropertyListSerialization.propertyList(from: data, options: [], format: nil)
        return try #require(read as? [String: Any])
    }

    private func text(_ path: String) throws -> String {
        try String(contentsOf: Self.app.appendingPathComponent(path), encoding: .utf8)
    }

    private func sources() throws -> String {
        let folder = Self.app.appendingPathComponent("Sources")
        let files = try FileManager.default.contentsOfDirectory(atPath: folder.path)
        return try files.sorted().map { try text("Sources/\($0)") }.joined()
    }

    private func objects() throws -> [String: [String: Any]] {
        try #require(try plist("Lapwright.xcodeproj/project.pbxproj")["objects"] as? [String: [String: Any]])
    }

    /// Each permission, and a name that our sources use where it is needed.
    private static let permissions = [
        "NSCameraUsageDescription": "UIImagePickerController",
        "NSMicrophoneUsageDescription": "AVAudioEngine",
        "NSSpeechRecognitionUsageDescription": "SFSpeechRecognizer",
    ]

    @Test func onlyWhatIsUsedIsAskedFor() throws {
        let info = try plist("Info.plist")
        #expect(Set(info.keys.filter { $0.hasSuffix("UsageDescription") }) == Set(Self.permissions.keys))
        for used in Self.permissions.values { #expect(try sources().contains(used)) }
        for used in ["CLLocation", "PHPhotoLibrary", "URLSession", "NWConnection", "AVAudioRecorder"] {
            #expect(try !sources().contains(used), "\(used) needs a permission, or a network")
        }
    }

    @Test func speechIsRecognizedOnThePhoneOnly() throws {
        let ear = try text("Sources/PhoneListening.swift")
        #expect(ear.contains("requiresOnDeviceRecognition = true") && ear.contains("supportsOnDeviceRecognition"))
    }

    @Test func eachPermissionIsAskedInBothLanguages() throws {
        for permission in Self.permissions.keys {
            let english = try plist("Resources/en.lproj/InfoPlist.strings")[permission] as? String
            let spanish = try plist("Resources/es.lproj/InfoPlist.strings")[permission] as? String
            #expect(try plist("Info.plist")[permission] as? String == english)
            #expect(english != nil && spanish != nil && english != spanish)
        }
    }

    @Test func nothingIsTrackedCollectedOrSent() throws {
        let privacy = try plist("Resources/PrivacyInfo.xcprivacy")
        #expect(privacy["NSPrivacyTracking"] as? Bool == false)
        #expect((privacy["NSPrivacyTrackingDomains"] as? [Any])?.isEmpty == true)
        #expect((privacy["NSPrivacyCollectedDataTypes"] as? [Any])?.isEmpty == true)
        let info = try plist("Info.plist")
        #expect(info["NSAppTransportSecurity"] == nil && info["UIBackgroundModes"] == nil)
    }

    @Test func everyObjectThatTheProjectNamesIsThereAndNamed() throws {
        let objects = try objects()
        let root = try #require(try plist("Lapwright.xcodeproj/project.pbxproj")["rootObject"] as? String)
        var named: Set<String> = [root]
        func look(_ value: Any) {
            switch value {
            case let text as String where text.hasPrefix("1A00000000"): named.insert(text)
            case let list as [Any]: list.forEach(look)
            case let fields as [String: Any]: fields.values.forEach(look)
            default: break
            }
        }
        objects.values.forEach(look)
        #expect(named == Set(objects.keys))
        #expect(objects.values.allSatisfy { $0["isa"] is String })
        #expect(objects[root]?["isa"] as? String == "PBXProject")
    }

    @Test func theFoldersAndThePackageOfTheProjectAreThere() throws {
        var found: [String] = []
        for object in try objects().values {
            let synchronized = object["isa"] as? String == "PBXFileSystemSynchronizedRootGroup"
            guard let path = (synchronized ? object["path"] : object["relativePath"]) as? String else { continue }
            found.append(path)
            var isFolder: ObjCBool = false
            let there = FileManager.default.fileExists(
                atPath: Self.app.appendingPathComponent(path).path,
                isDirectory: &isFolder
            )
            #expect(there && isFolder.boolValue, "\(path)")
        }
        #expect(found.sorted() == ["../Lapwright", "Resources", "Sources"])
    }

    @Test func everyConfigurationNamesAnIconAColorAndAPlistThatAreThere() throws {
        let settings = try objects().values.compactMap { $0["buildSettings"] as? [String: Any] }
        let targets = settings.filter { $0["PRODUCT_BUNDLE_IDENTIFIER"] != nil }
        #expect(targets.count == 2)
        for target in targets {
            let icon = try #require(target["ASSETCATALOG_COMPILER_APPICON_NAME"] as? String)
            let color = try #require(target["ASSETCATALOG_COMPILER_GLOBAL_ACCENT_COLOR_NAME"] as? String)
            let launch = try #require(try plist("Info.plist")["UILaunchScreen"] as? [String: String])
            let assets = ["\(icon).appiconset", "\(color).colorset", "\(launch["UIColorName"] ?? "").colorset"]
            for asset in assets {
                let json = try text("Resources/Assets.xcassets/\(asset)/Contents.json")
                #expect(try JSONSerialization.jsonObject(with: Data(json.utf8)) is [String: Any])
            }
            #expect(try !plist(try #require(target["INFOPLIST_FILE"] as? String)).isEmpty)
        }
    }

    @Test func theIconIsOnePictureOfTheWantedSizeWithoutAlpha() throws {
        let set = Self.app.appendingPathComponent("Resources/Assets.xcassets/AppIcon.appiconset")
        let json = try JSONSerialization.jsonObject(with: Data(contentsOf: set.appendingPathComponent("Contents.json")))
        let images = try #require((json as? [String: Any])?["images"] as? [[String: String]])
        #expect(images.count == 1 && images[0]["size"] == "1024x1024")
        let picture = [UInt8](try Data(contentsOf: set.appendingPathComponent(try #require(images[0]["filename"]))))
        // PNG, second edition (W3C, 2003): signature, then the header with width, height, depth and colour type.
        #expect(Array(picture.prefix(8)) == [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A])
        let whole = { (at: Int) in picture[at..<at + 4].reduce(0) { $0 << 8 | Int($1) } }
        #expect(whole(16) == 1024 && whole(20) == 1024)
        #expect(picture[24] == 8 && picture[25] == 2, "eight bits of red, green and blue, and no alpha")
    }

    @Test func theSchemeBuildsTheTargetOfTheProject() throws {
        let scheme = try text("Lapwright.xcodeproj/xcshareddata/xcschemes/Lapwright.xcscheme")
        let target = try #require(try objects().first { $0.value["isa"] as? String == "PBXNativeTarget" })
        #expect(scheme.contains("BlueprintIdentifier = \"\(target.key)\""))
        let name = try #require(target.value["name"] as? String)
        #expect(scheme.contains("BlueprintName = \"\(name)\""))
        #expect(scheme.components(separatedBy: "<").count == scheme.components(separatedBy: ">").count)
    }

    @Test func theFontsOfThePlistAreThoseThatTheProjectCopies() throws {
        let fonts = try #require(try plist("Info.plist")["UIAppFonts"] as? [String])
        let objects = try objects()
        let copied = objects.values.filter { $0["isa"] as? String == "PBXResourcesBuildPhase" }
            .flatMap { $0["files"] as? [String] ?? [] }
            .compactMap { objects[$0]?["fileRef"] as? String }
            .compactMap { objects[$0]?["path"] as? String }
        #expect(Set(fonts).isSubset(of: copied) && fonts.count == 2 && copied.contains("LICENSE.txt"))
    }
}

/// The clock and the chance of the machine.
@MainActor struct SystemTests {
    @Test func theClockRuns() {
        let clock = SystemClock()
        let first = clock.nowMs
        // 2026-01-01 UTC and 2100-01-01 UTC, in milliseconds.
        #expect(first > 1_767_225_600_000 && first < 4_102_444_800_000)
        #expect(clock.nowMs >= first)
        #expect((-14 * 60...14 * 60).contains(clock.utcOffsetMinutes))
    }

    @Test func noTwoRollsAreAlike() {
        let entropy = SystemEntropy()
        let draws = Set((0..<1000).map { _ in entropy.draw() })
        #expect(draws.count == 1000 && draws.allSatisfy { $0.count == 16 })
    }
}
