package oakum.portal;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/** Open data beside the checkout; a test that needs it skips where it is absent. */
public final class OpenData {
    private OpenData() {}

    /** A file of the open data, in the folder that {@code OAKUM_DATA} names or in the one beside the checkout. */
    public static Path file(String name) {
        String folder = System.getProperty("OAKUM_DATA", System.getenv("OAKUM_DATA"));
        Path data = folder == null || folder.isBlank()
                ? repository().resolveSibling("shared").resolve("data")
                : Path.of(folder);
        Path file = data.resolve(name);
        assumeTrue(
                Files.exists(file),
                "Skipped: the open data file " + name + " is not in " + data
                        + "; set OAKUM_DATA to the folder that holds it.");
        return file;
    }

    /** The checkout's own folder. */
    public static Path repository() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("DEVELOPERS.md"))) {
            folder = Objects.requireNonNull(folder.getParent());
        }
        return folder;
    }
}
