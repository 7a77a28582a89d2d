import LapwrightModels
import UIKit

/// Hands something to another program, through the sheet of the system.
final class PhoneShare: Share {
    func text(_ text: String) {
        share(text)
    }

    func file(_ path: String) {
        share(URL(fileURLWithPath: path))
    }

    private func share(_ item: Any) {
        guard let front = UIViewController.front else { return }
        let sheet = UIActivityViewController(activityItems: [item], applicationActivities: nil)
        // On a large screen the sheet needs something to point at.
        sheet.popoverPresentationController?.sourceView = front.view
        front.present(sheet, animated: true, completion: nil)
    }
}
