package oakum.physics.checkrow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class CheckRowCoverageTest {
    @Test
    void every_row_of_the_reference_sheet_stands_beside_an_assertion() throws IOException {
        StringBuilder tests = new StringBuilder();
        try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith("Test.java")).toList()) {
                tests.append(Files.readString(file));
            }
        }
        List<String> absent = CheckRowSummary.expected().stream()
                .filter(id ->
                        !Pattern.compile("\\b" + id + "\\b").matcher(tests).find())
                .toList();

        assertThat(absent).isEmpty();
    }
}
