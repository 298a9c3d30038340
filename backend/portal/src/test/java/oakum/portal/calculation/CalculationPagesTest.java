package oakum.portal.calculation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import oakum.physics.calculation.Calculation;
import oakum.physics.catalogue.Catalogue;
import oakum.portal.WrittenByTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages of the calculations in the docs are written from their declarations. */
class CalculationPagesTest {
    private static final Path FOLDER = WrittenByTest.DOCS.resolve("reference/calculations");

    static List<Calculation<?, ?>> all() {
        return Catalogue.ALL;
    }

    @ParameterizedTest
    @MethodSource("all")
    void a_page_says_what_its_calculation_declares(Calculation<?, ?> calculation) throws IOException {
        WrittenByTest.agrees(FOLDER.resolve(calculation.id() + ".md"), CalculationPage.of(calculation));
    }

    @Test
    void the_index_names_every_page_and_no_page_is_left_over() throws IOException {
        WrittenByTest.agrees(FOLDER.resolve("README.md"), CalculationPage.index(Catalogue.ALL));
        Set<String> pages = Catalogue.ALL.stream().map(c -> c.id() + ".md").collect(Collectors.toSet());
        pages.add("README.md");
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertThat(files.map(file -> file.getFileName().toString())).containsExactlyInAnyOrderElementsOf(pages);
        }
    }
}
