import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** Undoes Android's packing: the classes of all archives into one folder, the resources of each into one of its own. */
class Unpack {
    public static void main(String[] folders) throws IOException {
        Path packed = Path.of(folders[0]), classes = Path.of(folders[1]), resources = Path.of(folders[2]);
        try (var archives = Files.newDirectoryStream(packed, "*.aar")) {
            for (Path archive : archives) {
                String name = archive.getFileName().toString().replace(".aar", "");
                try (var parts = new ZipInputStream(Files.newInputStream(archive))) {
                    for (ZipEntry part; (part = parts.getNextEntry()) != null; ) {
                        if (part.getName().equals("classes.jar")) all(new ZipInputStream(parts), classes);
                        if (part.getName().startsWith("res/")) put(part, parts, resources.resolve(name));
                    }
                }
            }
        }
    }

    private static void all(ZipInputStream parts, Path into) throws IOException {
        for (ZipEntry part; (part = parts.getNextEntry()) != null; ) put(part, parts, into);
    }

    private static void put(ZipEntry part, InputStream from, Path into) throws IOException {
        if (part.isDirectory()) return;
        Path file = into.resolve(part.getName());
        Files.createDirectories(file.getParent());
        Files.copy(from, file, StandardCopyOption.REPLACE_EXISTING);
    }
}
