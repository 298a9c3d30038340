package oakum.physics.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Refused;
import org.junit.jupiter.api.Test;

class OwnMaterialTest {
    private static Map<String, String> sheet() {
        Map<String, String> sheet = new LinkedHashMap<>();
        sheet.put("id", "hemp-board");
        sheet.put("label", "Hemp board");
        sheet.put("densityKgPerM3", "90");
        sheet.put("conductivityWPerMK", "0.041");
        sheet.put("source", "data sheet of March 2026");
        sheet.put("status", "SEEN");
        return sheet;
    }

    private static OwnMaterial own(String... changes) {
        Map<String, String> sheet = sheet();
        for (int i = 0; i < changes.length; i += 2) {
            sheet.put(changes[i], changes[i + 1]);
        }
        return OwnMaterial.of(Canonical.read(MaterialInput.class, sheet));
    }

    @Test
    void its_id_carries_its_content() {
        // SHA-256 of the six lines pointer=value, by the checksum program of the operating system
        assertThat(own().material().id()).isEqualTo("own-hemp-board@d9914cd1");
        assertThat(own("id", "own-hemp-board").material().id())
                .isEqualTo(own().material().id());
        assertThat(own("conductivityWPerMK", "0.0410").material().id())
                .isEqualTo(own().material().id());
        assertThat(own("conductivityWPerMK", "0.042").material().id())
                .startsWith("own-hemp-board@")
                .isNotEqualTo(own().material().id());
        assertThat(own("source", "data sheet of April 2026").material().id())
                .isNotEqualTo(own().material().id());
        assertThat(own().name()).isEqualTo("hemp-board");
    }

    @Test
    void it_is_found_while_its_shelf_is_open() {
        Material hemp = own().material();
        MaterialShelf shelf = id -> Optional.of(hemp).filter(kept -> kept.id().equals(id));

        MaterialShelves.open(shelf);
        try {
            assertThat(MaterialLibrary.require("layers[0].materialId", hemp.id()))
                    .isSameAs(hemp);
            assertThat(MaterialLibrary.find("own-hemp-board@00000000")).isEmpty();
            assertThat(MaterialLibrary.find("plywood")).isPresent();
        } finally {
            MaterialShelves.close(shelf);
        }

        assertThatThrownBy(() -> MaterialLibrary.require("layers[0].materialId", hemp.id()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("layers[0].materialId");
    }

    @Test
    void a_shelf_that_answers_with_other_values_is_found_out() {
        String asked = own().material().id();
        Map<String, String> forged = sheet();
        forged.put("id", asked);
        forged.put("conductivityWPerMK", "0.02");
        MaterialShelf liar = id -> Optional.of(Material.of(Canonical.read(MaterialInput.class, forged)));

        MaterialShelves.open(liar);
        try {
            assertThatThrownBy(() -> MaterialLibrary.find(asked))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining(asked);
        } finally {
            MaterialShelves.close(liar);
        }
    }

    @Test
    void it_needs_a_short_name_a_source_and_something_that_is_known() {
        assertThatThrownBy(() -> own("id", "Hemp board!", "source", " "))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Short name (id) = \"Hemp board!\"")
                .hasMessageContaining("(source) must not be empty");
        assertThatThrownBy(() -> own("id", "x".repeat(48))).hasMessageContaining("1 to 47");
        Map<String, String> nothing = sheet();
        nothing.remove("densityKgPerM3");
        nothing.remove("conductivityWPerMK");
        assertThatThrownBy(() -> OwnMaterial.of(Canonical.read(MaterialInput.class, nothing)))
                .hasMessageContaining("Material \"Hemp board\": give at least one property");
    }

    @Test
    void the_longest_id_fits_a_layer() {
        assertThat(own("id", "x".repeat(47)).material().id()).hasSize(60);
    }
}
