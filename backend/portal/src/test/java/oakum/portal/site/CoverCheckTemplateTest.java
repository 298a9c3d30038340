package oakum.portal.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import oakum.portal.people.Role;
import org.junit.jupiter.api.Test;

class CoverCheckTemplateTest {
    @Test
    void five_checks_stand_in_building_order() {
        assertThat(CoverCheckTemplate.ALL.keySet()).containsExactly("C4", "C8", "C9", "C10", "C11");
    }

    @Test
    void every_row_says_what_to_see_and_what_goes_wrong_in_whole_sentences_and_names_its_source() {
        CoverCheckTemplate.ALL
                .values()
                .forEach(template -> assertThat(template.rows()).isNotEmpty().allSatisfy(row -> {
                    assertThat(row.lookAt()).endsWith("?");
                    assertThat(row.acceptWhen()).endsWith(".");
                    assertThat(row.because()).endsWith(".");
                    assertThat(row.source()).isNotBlank();
                    assertThat(row.seenBy()).isNotEmpty();
                    assertThat(row.signedBy()).isIn(Role.SITE_LEAD, Role.PRINCIPAL);
                }));
    }

    @Test
    void ids_are_unique_within_a_check() {
        CoverCheckTemplate.ALL
                .values()
                .forEach(template ->
                        assertThat(template.rows().stream().map(CheckRow::id)).doesNotHaveDuplicates());
    }

    @Test
    void every_number_has_a_limit_that_can_be_read() {
        CoverCheckTemplate.ALL.values().stream()
                .flatMap(template -> template.rows().stream())
                .map(CheckRow::number)
                .filter(number -> number != null)
                .forEach(number -> {
                    assertThat(number.min() == null && number.max() == null).isFalse();
                    if (number.min() != null) {
                        assertThat(number.min()).isBetween(number.lowest(), number.highest());
                    }
                    if (number.max() != null) {
                        assertThat(number.max()).isBetween(number.lowest(), number.highest());
                    }
                });
    }

    @Test
    void a_moisture_reading_over_the_limit_is_not_right_whatever_key_was_pressed() {
        CheckRow row = CoverCheckTemplate.ALL.get("C9").rows().get(0);
        assertThat(row.judged(RowAnswer.RIGHT, 0.194)).isEqualTo(RowAnswer.NOT_RIGHT);
        assertThat(row.judged(RowAnswer.RIGHT, 0.18)).isEqualTo(RowAnswer.RIGHT);
        assertThat(row.judged(RowAnswer.NOT_RIGHT, 0.12)).isEqualTo(RowAnswer.NOT_RIGHT);
    }

    @Test
    void the_north_east_corner_is_read_at_its_height() {
        List<String> places = CoverCheckTemplate.ALL.get("C9").rows().stream()
                .filter(row -> row.templateRow().equals("9-01"))
                .map(CheckRow::place)
                .toList();
        assertThat(places).contains("north-east corner high").hasSize(9);
    }
}
