package oakum.portal.houserecord;

import static org.assertj.core.api.Assertions.assertThat;

import oakum.physics.controllayer.Control;
import oakum.physics.controllayer.LayerControl;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;

/** What was kept stays readable when a part learns to say more. */
class KeptPartTest {
    /** An enclosure as it was kept before junctions, holes and claddings could be said. */
    private static final String BEFORE_JUNCTIONS = """
            {"assemblies": [{"id": "wall", "label": "Wall", "kind": "WALL", "areaM2": 155, "layers": [
                {"id": "sheathing", "label": "plywood", "material": "plywood, taped", "thicknessM": 0.012,
                 "conductivityWPerMK": 0.12, "controls": [{"control": "AIR"}], "drawAs": "PANEL"}]}],
             "windows": null,
             "membrane": {"label": "Outer membrane", "sunLimitDays": 90, "permanentSun": false},
             "form": null}
            """;

    @Test
    void an_enclosure_from_before_junctions_reads_with_nothing_said_of_them() {
        EnclosurePart enclosure = (EnclosurePart) StrictReader.kept(
                PartKind.ENCLOSURE, JsonMapper.builder().build().readTree(BEFORE_JUNCTIONS));

        EnclosurePart.Assembly wall = enclosure.assemblies().get(0);
        assertThat(wall.layers().get(0).controls()).containsExactly(LayerControl.first(Control.AIR));
        assertThat(wall.cladding()).isNull();
        assertThat(wall.fasteners()).isEmpty();
        assertThat(enclosure.junctions()).isEmpty();
        assertThat(enclosure.holes()).isEmpty();
        assertThat(enclosure.membrane()).isEqualTo(new EnclosurePart.Membrane("Outer membrane", 90, false, null, null));
    }
}
