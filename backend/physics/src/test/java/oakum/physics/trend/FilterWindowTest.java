package oakum.physics.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FilterWindowTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);

    /** The invented houses of the demo, each date worked by hand from its load and weekly slope. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "B01, 1.62, 0.030, now, 2026-08-11",
        "B02, 1.41, 0.022, 2026-06-12, 2026-11-18",
        "B03, 1.78, 0.026, now, 2026-07-12",
        "B04, 1.20, 0.019, 2026-09-02, 2027-03-05",
        "B05, 1.55, 0.028, now, 2026-09-03",
        "B06, 1.86, 0.024, now, 2026-06-24",
        "B07, 1.33, 0.021, 2026-07-10, 2026-12-23",
        "B08, 1.70, 0.033, now, 2026-07-17",
        "B09, 1.48, 0.018, 2026-05-22, 2026-12-02",
        "B10, 1.92, 0.040, now, 2026-05-28",
        "B11, 1.09, 0.020, 2026-10-04, 2027-03-28",
    })
    void windows_of_the_filters_in_care(String house, double load, double weekly, String opens, LocalDate due) {
        FilterWindow window = FilterWindow.of(load, weekly / 7, TODAY, FilterRules.USUAL);

        assertThat(window.due()).isEqualTo(due);
        assertThat(window.why()).isEqualTo(FilterWindow.Why.LOAD);
        assertThat(window.open()).isEqualTo(opens.equals("now"));
        assertThat(window.opens()).isEqualTo(opens.equals("now") ? TODAY : LocalDate.parse(opens));
        assertThat(window.latestVisit()).isEqualTo(due.minusDays(7));
    }

    @Test
    void a_load_counts_from_the_day_it_was_read_not_from_the_day_one_looks() {
        assertThat(FilterWindow.of(1.71, 0.080 / 7, LocalDate.of(2026, 5, 12), FilterRules.USUAL)
                        .due())
                .isEqualTo(LocalDate.of(2026, 6, 6));
        assertThat(FilterWindow.of(1.71, 0.080 / 7, TODAY, FilterRules.USUAL).due())
                .isEqualTo(LocalDate.of(2026, 6, 8));
    }

    @Test
    void a_flat_filter_is_due_after_twelve_months_and_not_before() {
        FilterWindow window = FilterWindow.of(1.05, 0, TODAY, FilterRules.USUAL, null, LocalDate.of(2026, 1, 27));

        assertThat(window)
                .isEqualTo(new FilterWindow(
                        LocalDate.of(2027, 1, 20),
                        false,
                        LocalDate.of(2027, 1, 27),
                        LocalDate.of(2027, 1, 20),
                        FilterWindow.Why.LONGEST_TIME));
    }

    @Test
    void a_flat_filter_of_unknown_age_is_never_due() {
        assertThat(FilterWindow.of(1.05, -0.001, TODAY, FilterRules.USUAL))
                .isEqualTo(new FilterWindow(null, false, null, null, null));
    }

    @Test
    void a_small_static_budget_rules_before_the_load_does() {
        FilterWindow window = FilterWindow.of(1.2, 0.1 / 7, TODAY, FilterRules.USUAL, 1.4, null);

        assertThat(window.due()).isEqualTo(TODAY.plusDays(14));
        assertThat(window.why()).isEqualTo(FilterWindow.Why.STATIC_BUDGET);
        assertThat(window.opens()).isEqualTo(TODAY.plusDays(7)).isEqualTo(window.latestVisit());
    }

    @Property
    void never_opens_after_it_is_due_and_a_fuller_filter_is_never_due_later(
            @ForAll @DoubleRange(min = 0.9, max = 2.5) double load,
            @ForAll @DoubleRange(min = 0, max = 0.02) double slope,
            @ForAll @DoubleRange(min = 1.01, max = 3) double usedUp) {
        LocalDate fitted = TODAY.minusMonths(4);
        FilterWindow window = FilterWindow.of(load, slope, TODAY, FilterRules.USUAL, usedUp, fitted);
        FilterWindow fuller = FilterWindow.of(load + 0.1, slope, TODAY, FilterRules.USUAL, usedUp, fitted);

        assertThat(window.opens()).isBeforeOrEqualTo(window.due());
        assertThat(window.latestVisit()).isBetween(window.opens(), window.due());
        assertThat(fuller.due()).isBeforeOrEqualTo(window.due());
        assertThat(window.due()).isBeforeOrEqualTo(fitted.plusMonths(12));
    }
}
