package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the code can say or be told stands in the docs. */
class DocsTest {
    private static final Path SOURCES = Path.of("src", "main");
    private static final List<Pattern> CODES = List.of(
            Pattern.compile("new Problem\\(\\s*[\\w.]+,\\s*\"([a-z-]+)\""),
            Pattern.compile("Problem\\s*\\.(?:conflict|unprocessable)\\(\\s*\"([a-z-]+)\""));
    private static final Pattern SETTING = Pattern.compile("OAKUM_[A-Z_]+");

    @Test
    void every_problem_code_stands_on_the_errors_page() throws IOException {
        Set<String> used = new TreeSet<>(Set.of("malformed-body", "not-allowed", "not-found", "request-refused"));
        CODES.forEach(pattern -> collect(pattern, used));
        assertThat(used).hasSizeGreaterThan(15);
        String page = Files.readString(WrittenByTest.DOCS.resolve("reference/errors.md"));
        assertThat(used).allSatisfy(code -> assertThat(page).contains("| `" + code + "` |"));
    }

    @Test
    void every_setting_stands_on_the_settings_page() throws IOException {
        Set<String> used = new TreeSet<>();
        collect(SETTING, used);
        assertThat(used).contains("OAKUM_DB_URL", "OAKUM_DATA_DIR");
        String page = Files.readString(WrittenByTest.DOCS.resolve("reference/settings.md"));
        // the name of the session cookie is no setting
        used.remove("OAKUM_SESSION");
        assertThat(used).allSatisfy(name -> assertThat(page).contains("| `" + name + "` |"));
    }

    private static void collect(Pattern pattern, Set<String> found) {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            for (Path file :
                    files.filter(f -> f.toString().matches(".*\\.(java|yml)")).toList()) {
                Matcher matcher = pattern.matcher(Files.readString(file));
                while (matcher.find()) {
                    found.add(matcher.group(matcher.groupCount()));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
