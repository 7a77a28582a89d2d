import LapwrightModels
import UIKit
import UniformTypeIdentifiers

/// Picks a file with the phone's own list of files, which brings a copy of it into our own folder.
final class PhoneFilePicker: NSObject, FilePicker {
    private var closed: CheckedContinuation<Picked, Never>?

    func pick() async -> Picked {
        guard closed == nil, let front = UIViewController.front else { return .unreadable }
        let picker = UIDocumentPickerViewController(forOpeningContentTypes: [.item], asCopy: true)
        picker.delegate = self
        return await withCheckedContinuation { closed in
            self.closed = closed
            front.present(picker, animated: true, completion: nil)
        }
    }

    private func close(_ picked: Picked) {
        closed?.resume(returning: picked)
        closed = nil
    }
}

extension PhoneFilePicker: UIDocumentPickerDelegate {
    func documentPicker(_ picker: UIDocumentPickerViewController, didPickDocumentsAt urls: [URL]) {
        close(urls.first.map { .file($0.path) } ?? .nothing)
    }

    func documentPickerWasCancelled(_ picker: UIDocumentPickerViewController) {
        close(.nothing)
    }
}
