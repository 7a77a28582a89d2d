import LapwrightModels
import UIKit

/// Hands something to another program, through the sheet of the system.
final class PhoneShare: Share {
    private let out = FileManager.default.temporaryDirectory.appendingPathComponent("Out")

    func place(_ name: String) -> String {
        // What was handed on before has been taken by now.
        try? FileManager.default.removeItem(at: out)
        try? FileManager.default.createDirectory(at: out, withIntermediateDirectories: true)
        return out.appendingPathComponent(name).path
    }

    func file(_ path: String, title: String) {
        share(URL(fileURLWithPath: path), title)
    }

    func text(_ text: String, title: String) {
        share(text, title)
    }

    private func share(_ item: Any, _ title: String) {
        guard let front = UIViewController.front else { return }
        let sheet = UIActivityViewController(
            activityItems: [Titled(item, title)],
            applicationActivities: nil
        )
        // On a large screen the sheet needs something to point at.
        sheet.popoverPresentationController?.sourceView = front.view
        front.present(sheet, animated: true, completion: nil)
    }
}

/// What is handed on, with the title that a program like the mail asks for.
private final class Titled: NSObject, UIActivityItemSource {
    private let item: Any
    private let title: String

    init(_ item: Any, _ title: String) {
        (self.item, self.title) = (item, title)
    }

    func activityViewControllerPlaceholderItem(_ sheet: UIActivityViewController) -> Any { item }

    func activityViewController(
        _ sheet: UIActivityViewController,
        itemForActivityType type: UIActivity.ActivityType?
    ) -> Any? { item }

    func activityViewController(
        _ sheet: UIActivityViewController,
        subjectForActivityType type: UIActivity.ActivityType?
    ) -> String { title }
}
