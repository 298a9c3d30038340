package oakum.portal.decision;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Field;
import oakum.portal.houserecord.PartKind;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;

/** When a declared arrow fires; the bands are those of the firm's table of dependencies. */
class ArrowTest {
    static final List<Trigger> TRIGGERS =
            DecisionTable.ARROWS.stream().flatMap(a -> a.triggers().stream()).toList();

    private static Arrow arrow(String from, String to) {
        return DecisionTable.into(to).stream()
                .filter(a -> a.from().equals(from))
                .findFirst()
                .orElseThrow();
    }

    private static Approval.Neighbour value(String path, @Nullable String value) {
        return new Approval.Neighbour("A", value == null ? Map.of() : Map.of(path, value));
    }

    @ParameterizedTest
    @CsvSource({
        "D23, D26, air.airHandler.highFlowM3PerS, 0.2, 0.22, false", // exactly 10 % is within
        "D23, D26, air.airHandler.highFlowM3PerS, 0.2, 0.221, true",
        "D23, D26, air.airHandler.highFlowM3PerS, 0.2, 0.1, false", // less air is no matter for the face
        "D23, D25, air.airHandler.highFlowM3PerS, 0.2, 0.18, false",
        "D23, D25, air.airHandler.highFlowM3PerS, 0.2, 0.179, true",
        "D23, D25, air.airHandler.staticLimitPa, 125, 115, false",
        "D23, D25, air.airHandler.staticLimitPa, 125, 114, true",
        "D23, D25, air.airHandler.staticLimitPa, 125, 200, false",
        "D30, D31, air.exhaust[rangeHood].ratedFlowM3PerS, 0.2, 0.2001, true", // any rise
        "D30, D31, air.exhaust[rangeHood].ratedFlowM3PerS, 0.2, 0.18, false",
        "D30, D31, air.exhaust[rangeHood].ratedFlowM3PerS, 0.2, 0.179, true",
        "D01, D23, house.designOutdoorC, -25, -26.9, false",
        "D01, D23, house.designOutdoorC, -25, -27, true", // 2 K and more
        "D01, D20, house.designOutdoorC, -25, -28, true",
        "D01, D20, house.designOutdoorC, -25, -20, false", // only colder hours freeze the core
        "D11, D09, enclosure.assemblies[wall].cladding.jointWidthM, 0, 0.008, true",
        "D11, D09, enclosure.assemblies[wall].cladding.jointWidthM, 0.008, 0, false",
        "house.floorAreaM2, D20, house.floorAreaM2, 144, 151.2, false",
        "house.floorAreaM2, D20, house.floorAreaM2, 144, 151.3, true",
    })
    void an_arrow_fires_only_beyond_its_band(
            String from, String to, String path, String before, String now, boolean fires) {
        Arrow.Move move = arrow(from, to).moved(value(path, before), value(path, now));
        assertThat(move.fires()).isEqualTo(fires);
        assertThat(move.quiet()).hasSize(fires ? 0 : 1);
    }

    @Test
    void the_words_come_from_the_numbers() {
        assertThat(arrow("D23", "D25").trigger()).isEqualTo("flow ±10 %, fall of static > 10 Pa");
        assertThat(arrow("D30", "D31").trigger()).isEqualTo("any rise of flow; fall of flow > 10 %");
        assertThat(arrow("D20", "D29").trigger()).isEqualTo("core, supply ±10 %, exhaust ±10 %");
        assertThat(arrow("D01", "D20").trigger()).isEqualTo("fall of design outdoor temperature by 3 K or more");
        assertThat(arrow("D22", "D31").trigger()).isEqualTo("distance");
        assertThat(arrow("D23", "D25")
                        .moved(
                                value("air.airHandler.highFlowM3PerS", "0.2"),
                                value("air.airHandler.highFlowM3PerS", "0.21"))
                        .quiet())
                .containsExactly("required air flow and available static; flow: within ±10 %");
    }

    @Test
    void another_alternative_and_a_value_that_appears_or_goes_fire_always() {
        String path = "air.airHandler.highFlowM3PerS";
        Arrow arrow = arrow("D23", "D26");
        Approval.Neighbour before = value(path, "0.2");
        assertThat(arrow.moved(before, new Approval.Neighbour("B", before.values()))
                        .fires())
                .isTrue();
        assertThat(arrow.moved(before, value(path, null)).fires()).isTrue();
        assertThat(arrow.moved(value(path, null), before).fires()).isTrue();
        assertThat(arrow.moved(before, before)).isEqualTo(new Arrow.Move(false, List.of()));
    }

    @Test
    void values_that_no_trigger_watches_count_where_words_say_so_or_nothing_is_watched() {
        Map<String, String> before = Map.of("air.ventilation.supplyM3PerS", "0.05", "air.x", "1");
        Map<String, String> now = Map.of("air.ventilation.supplyM3PerS", "0.05", "air.x", "2");
        Approval.Neighbour from = new Approval.Neighbour(null, before);
        Approval.Neighbour to = new Approval.Neighbour(null, now);
        assertThat(arrow("D20", "D29").moved(from, to).fires()).as("core").isTrue();
        assertThat(arrow("D20", "D21").moved(from, to).fires()).as("flow only").isFalse();
        assertThat(arrow("D20", "D21")
                        .moved(value("air.x", "1"), value("air.x", "2"))
                        .fires())
                .as("its flow is not in the record")
                .isTrue();
    }

    @ParameterizedTest
    @FieldSource("TRIGGERS")
    void every_trigger_watches_a_number_of_the_record(Trigger trigger) {
        String[] names = trigger.path().replace("[*]", "").split("\\.");
        List<Field> fields = PartKind.find(names[0]).orElseThrow().fields();
        Field field = null;
        for (int i = 1; i < names.length; i++) {
            String name = names[i];
            field = fields.stream()
                    .filter(f -> f.name().equals(name))
                    .findFirst()
                    .orElseThrow();
            fields = field.fields();
        }
        assertThat(field).isNotNull();
        assertThat(field.unit()).isNotNull();
    }
}
