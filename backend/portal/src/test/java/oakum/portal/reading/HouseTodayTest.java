package oakum.portal.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import oakum.physics.calculation.Unit;
import oakum.portal.calculation.FieldJson.UnitJson;
import org.junit.jupiter.api.Test;

class HouseTodayTest {
    @Test
    void a_house_within_all_its_rules_is_said_to_be_all_right() {
        assertThat(HouseTodays.sentence(List.of(
                        item("dry", "Sheathing", true), item("warm", "Living", true), item("dry", "Living", true))))
                .isEqualTo("Your house is dry and warm.");
    }

    @Test
    void what_is_outside_its_rule_comes_first() {
        assertThat(HouseTodays.sentence(List.of(item("dry", "Sheathing", false), item("warm", "Living", true))))
                .isEqualTo("One thing wants a look: Sheathing should be at most 20 %.");
    }

    @Test
    void without_readings_nothing_is_claimed() {
        assertThat(HouseTodays.sentence(List.of())).startsWith("No reading came");
    }

    private static HouseToday.Item item(String word, String label, boolean right) {
        return new HouseToday.Item(word, "s", label, UnitJson.of(Unit.FRACTION), 0.1, right, "at most 20 %");
    }
}
