import AVFoundation
import LapwrightModels
import UIKit

/// The camera of the phone. What it takes carries no place: it is written anew from the picture alone.
final class PhoneCamera: NSObject, Camera {
    private var closed: CheckedContinuation<Void, Never>?
    private var path = ""

    func fill(_ path: String) async -> Bool {
        // Refused, its picture would be black.
        guard UIImagePickerController.isSourceTypeAvailable(.camera), await isAllowed(),
            let front = UIViewController.front
        else { return false }
        self.path = path
        let picker = UIImagePickerController()
        picker.sourceType = .camera
        picker.delegate = self
        await withCheckedContinuation { closed in
            self.closed = closed
            front.present(picker, animated: true, completion: nil)
        }
        return true
    }

    /// Whether the camera may be used; the phone asks where nobody has said.
    private func isAllowed() async -> Bool {
        switch AVCaptureDevice.authorizationStatus(for: .video) {
        case .authorized: true
        case .notDetermined: await AVCaptureDevice.requestAccess(for: .video)
        default: false
        }
    }

    private func close(_ picker: UIImagePickerController) {
        picker.dismiss(animated: true, completion: nil)
        closed?.resume()
        closed = nil
    }
}

extension PhoneCamera: UIImagePickerControllerDelegate, UINavigationControllerDelegate {
    func imagePickerController(
        _ picker: UIImagePickerController,
        didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]
    ) {
        let photo = (info[.originalImage] as? UIImage)?.jpegData(compressionQuality: 0.85)
        // A photo that cannot be written is no photo: the book finds the file empty and says so.
        try? photo?.write(to: URL(fileURLWithPath: path))
        close(picker)
    }

    func imagePickerControllerDidCancel(_ picker: UIImagePickerController) {
        close(picker)
    }
}

extension UIViewController {
    /// The one that everything else lies under.
    static var front: UIViewController? {
        let scenes = UIApplication.shared.connectedScenes.compactMap { $0 as? UIWindowScene }
        var front = scenes.flatMap(\.windows).first { $0.isKeyWindow }?.rootViewController
        while let over = front?.presentedViewController { front = over }
        return front
    }
}
