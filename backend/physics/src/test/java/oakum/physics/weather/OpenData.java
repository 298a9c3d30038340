package oakum.physics.weather;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.zip.GZIPInputStream;

/** The open data that tests measure against; kept outside the project, and skipped with a message where absent. */
public final class OpenData {
    private OpenData() {}

    /** The lines of a packed text file. */
    public static List<String> lines(String name) {
        Path file = file(name);
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(new GZIPInputStream(Files.newInputStream(file)), StandardCharsets.UTF_8))) {
            return reader.lines().toList();
        } catch (IOException e) {
            throw new IllegalStateException(file + " cannot be read", e);
        }
    }

    private static Path file(String name) {
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

    /** The folder of the checkout. */
    public static Path repository() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("DEVELOPERS.md"))) {
            folder = Objects.requireNonNull(folder.getParent());
        }
        return folder;
    }
}
