package oakum.portal.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

/** A membrane of 90 days, unrolled on the south face on 16 March 2026, looked at on 14 May; counted by the calendar. */
class ExposureTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);
    private static final Exposure SOUTH = new Exposure(LocalDate.of(2026, 3, 16), 90, LocalDate.of(2026, 6, 8), null);

    @Test
    void counts_the_days_since_it_was_unrolled() {
        assertThat(SOUTH.daysUsed(TODAY)).isEqualTo(59);
    }

    @Test
    void leaves_six_days_when_cladding_starts_on_day_84() {
        assertThat(SOUTH.plannedDay()).isEqualTo(84);
        assertThat(SOUTH.daysToSpare(TODAY)).isEqualTo(6);
        assertThat(SOUTH.lastDay()).isEqualTo(LocalDate.of(2026, 6, 14));
        assertThat(SOUTH.sentence(TODAY))
                .isEqualTo("59 of 90 days used; covered as planned on day 84: 6 days to spare.");
    }

    @Test
    void is_short_of_the_fourteen_days_that_the_firm_asks_for() {
        assertThat(SOUTH.state(TODAY)).isEqualTo(Exposure.State.SHORT);
        assertThat(SOUTH.plannedFor(LocalDate.of(2026, 5, 31)).state(TODAY)).isEqualTo(Exposure.State.WITHIN);
        assertThat(SOUTH.plannedFor(LocalDate.of(2026, 6, 1)).state(TODAY)).isEqualTo(Exposure.State.SHORT);
    }

    @Test
    void is_over_by_one_when_cladding_slips_by_a_week() {
        Exposure slipped = SOUTH.plannedFor(LocalDate.of(2026, 6, 15));
        assertThat(slipped.daysToSpare(TODAY)).isEqualTo(-1);
        assertThat(slipped.state(TODAY)).isEqualTo(Exposure.State.OVER);
        assertThat(slipped.sentence(TODAY)).endsWith("day 91: over by 1 day.");
    }

    @Test
    void may_be_covered_on_its_last_day_and_not_on_the_next() {
        assertThat(SOUTH.plannedFor(LocalDate.of(2026, 6, 14)).state(TODAY)).isEqualTo(Exposure.State.SHORT);
        assertThat(SOUTH.plannedFor(LocalDate.of(2026, 6, 15)).state(TODAY)).isEqualTo(Exposure.State.OVER);
    }

    @Test
    void a_planned_day_that_passed_uncovered_gives_no_days_back() {
        LocalDate july = LocalDate.of(2026, 7, 1);
        assertThat(SOUTH.daysToSpare(july)).isEqualTo(-17);
        assertThat(SOUTH.state(july)).isEqualTo(Exposure.State.OVER);
    }

    @Test
    void stops_counting_when_it_is_covered() {
        Exposure covered = new Exposure(SOUTH.startedOn(), 90, SOUTH.plannedOn(), LocalDate.of(2026, 5, 10));
        assertThat(covered.daysUsed(TODAY)).isEqualTo(55);
        assertThat(covered.state(LocalDate.of(2027, 1, 1))).isEqualTo(Exposure.State.COVERED);
    }

    @Test
    void tells_at_three_quarters_of_its_limit() {
        assertThat(SOUTH.tellOn()).isEqualTo(SOUTH.startedOn().plusDays(68));
    }
}
