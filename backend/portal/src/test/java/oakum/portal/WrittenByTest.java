package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files of the docs that tests write, so that they cannot be old. */
public final class WrittenByTest {
    /** The folder {@code docs} of the project; tests run in the folder of their module. */
    public static final Path DOCS = Path.of("..", "..", "docs");

    private WrittenByTest() {}

    /** Holds a file against what it should say, or writes it with {@code -Ddocs.write=true}. */
    public static void agrees(Path file, String text) throws IOException {
        if (Boolean.getBoolean("docs.write")) {
            Files.createDirectories(file.getParent());
            Files.writeString(file, text);
        }
        assertThat(Files.exists(file) ? Files.readString(file) : "")
                .as("%s is not what the code says; write it anew with -Ddocs.write=true", file.normalize())
                .isEqualTo(text);
    }
}
