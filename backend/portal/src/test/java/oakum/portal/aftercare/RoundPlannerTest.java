package oakum.portal.aftercare;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import oakum.physics.trend.FilterRules;
import oakum.physics.trend.FilterWindow;
import oakum.portal.aftercare.RoundPlanner.Anchor;
import oakum.portal.aftercare.RoundPlanner.Other;
import oakum.portal.aftercare.RoundPlanner.Plan;
import oakum.portal.aftercare.RoundPlanner.Wanted;
import org.junit.jupiter.api.Test;

class RoundPlannerTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);
    private static final Map<String, DayOfWeek> USUAL =
            Map.of("valley", DayOfWeek.WEDNESDAY, "coast", DayOfWeek.WEDNESDAY, "north", DayOfWeek.TUESDAY);

    /** The firm's twelve filters on 14 May 2026: filter load and its growth in a week (the invented scenario). */
    private static final List<Wanted> TWELVE = List.of(
            wanted("H3", "coast", 1.71, 0.080),
            wanted("B01", "coast", 1.62, 0.030),
            wanted("B02", "coast", 1.41, 0.022),
            wanted("B03", "coast", 1.78, 0.026),
            wanted("B04", "coast", 1.20, 0.019),
            wanted("B05", "north", 1.55, 0.028),
            wanted("B06", "north", 1.86, 0.024),
            wanted("B07", "north", 1.33, 0.021),
            wanted("B08", "north", 1.70, 0.033),
            wanted("B09", "valley", 1.48, 0.018),
            wanted("B10", "valley", 1.92, 0.040),
            wanted("B11", "valley", 1.09, 0.020));

    private static final Anchor CLADDING = new Anchor("north", LocalDate.of(2026, 6, 9), "cladding of H2", null);
    private static final Anchor SECOND_YEAR = new Anchor("coast", LocalDate.of(2026, 7, 20), "24 months", "H3");

    @Test
    void twelve_windows_make_three_rounds_and_one_with_the_visit_in_july() {
        List<Plan> plans = RoundPlanner.plan(
                TODAY,
                TWELVE,
                List.of(CLADDING, SECOND_YEAR),
                List.of(new Other("H3", "24 months", SECOND_YEAR.day())),
                USUAL);
        assertThat(plans.stream().map(RoundPlannerTest::shown))
                .containsExactly(
                        "valley WEDNESDAY 2026-05-20 [B10, B09]",
                        "coast WEDNESDAY 2026-05-27 [H3, B03, B01]",
                        "north TUESDAY 2026-06-09 [B06, B08, B05]",
                        "coast MONDAY 2026-07-20 [B02]");
        assertThat(plans.get(0).remarks()).containsExactly("B09 filter comes 2 days before its window opens.");
        assertThat(plans.get(2).anchors()).containsExactly(CLADDING);
        assertThat(plans.get(3).anchors()).containsExactly(SECOND_YEAR);
    }

    @Test
    void without_somebody_there_the_north_is_visited_on_the_last_usual_day() {
        assertThat(RoundPlanner.plan(TODAY, TWELVE, List.of(), List.of(), USUAL).stream()
                        .map(RoundPlannerTest::shown))
                .containsExactly(
                        "valley WEDNESDAY 2026-05-20 [B10, B09]",
                        "coast WEDNESDAY 2026-05-27 [H3, B03, B01]",
                        "north TUESDAY 2026-06-16 [B06, B08, B05]");
    }

    @Test
    void what_else_is_due_within_four_weeks_at_a_house_of_the_round_joins() {
        List<Other> others = List.of(
                new Other("H3", "30 days", LocalDate.of(2026, 6, 24)),
                new Other("B03", "11 months", LocalDate.of(2026, 6, 25)),
                new Other("B04", "24 months", LocalDate.of(2026, 5, 27)));
        List<Plan> plans = RoundPlanner.plan(TODAY, TWELVE, List.of(), others, USUAL);
        assertThat(plans.get(1).others()).containsExactly(others.get(0));
    }

    @Test
    void an_overdue_filter_is_in_the_next_round_and_said_to_be_late() {
        Wanted late = new Wanted("B10", "filter", "valley", TODAY.minusDays(90), TODAY.minusDays(3));
        List<Plan> plans = RoundPlanner.plan(TODAY, List.of(late), List.of(), List.of(), USUAL);
        assertThat(plans).hasSize(1);
        assertThat(plans.get(0).day()).isEqualTo(TODAY.plusDays(1));
        assertThat(plans.get(0).remarks()).anyMatch(r -> r.contains("is late: its latest day was 2026-05-11"));
    }

    @Property(tries = 500)
    void every_filter_due_within_the_horizon_is_in_exactly_one_round(
            @ForAll("filters") List<Wanted> filters, @ForAll("anchors") List<Anchor> anchors) {
        List<Wanted> planned = new ArrayList<>();
        RoundPlanner.plan(TODAY, filters, anchors, List.of(), USUAL).forEach(p -> planned.addAll(p.filters()));
        assertThat(planned).doesNotHaveDuplicates();
        assertThat(planned)
                .containsAll(filters.stream()
                        .filter(f -> !f.latest().isAfter(TODAY.plusDays(RoundPlanner.HORIZON_DAYS)))
                        .toList());
    }

    @Property(tries = 500)
    void no_round_is_after_a_latest_day_unless_there_is_no_working_day_left_and_then_that_is_said(
            @ForAll("filters") List<Wanted> filters, @ForAll("anchors") List<Anchor> anchors) {
        for (Plan plan : RoundPlanner.plan(TODAY, filters, anchors, List.of(), USUAL)) {
            for (Wanted filter : plan.filters()) {
                if (filter.latest().isBefore(plan.day())) {
                    // Friday 15 May is the first working day that is left
                    assertThat(filter.latest()).isBefore(LocalDate.of(2026, 5, 15));
                    assertThat(plan.remarks()).anyMatch(r -> r.startsWith(filter.house() + " filter is late"));
                }
            }
            assertThat(plan.day()).isAfterOrEqualTo(TODAY);
        }
    }

    @Property(tries = 200)
    void a_plan_does_not_depend_on_the_order_of_the_filters(@ForAll("filters") List<Wanted> filters) {
        List<Wanted> reversed = new ArrayList<>(filters);
        java.util.Collections.reverse(reversed);
        assertThat(RoundPlanner.plan(TODAY, reversed, List.of(), List.of(), USUAL))
                .isEqualTo(RoundPlanner.plan(TODAY, filters, List.of(), List.of(), USUAL));
    }

    @Provide
    Arbitrary<List<Wanted>> filters() {
        Arbitrary<Wanted> one = Combinators.combine(
                        Arbitraries.integers().between(1, 40),
                        Arbitraries.of("valley", "coast", "north"),
                        Arbitraries.integers().between(-100, 150),
                        Arbitraries.integers().between(0, 200))
                .as((house, place, opens, open) ->
                        new Wanted("B" + house, "filter", place, TODAY.plusDays(opens), TODAY.plusDays(opens + open)));
        return one.list().ofMaxSize(25).uniqueElements(Wanted::house);
    }

    @Provide
    Arbitrary<List<Anchor>> anchors() {
        return Combinators.combine(
                        Arbitraries.of("valley", "coast", "north"),
                        Arbitraries.integers().between(-5, 100))
                .as((place, day) -> new Anchor(place, TODAY.plusDays(day), "there anyway", null))
                .list()
                .ofMaxSize(4);
    }

    private static Wanted wanted(String house, String place, double load, double slopePerWeek) {
        FilterWindow window = FilterWindow.of(load, slopePerWeek / 7, TODAY, FilterRules.USUAL);
        return new Wanted(house, "filter", place, window.opens(), window.latestVisit());
    }

    private static String shown(Plan plan) {
        return plan.place() + " " + plan.day().getDayOfWeek() + " " + plan.day() + " "
                + plan.filters().stream().map(Wanted::house).toList();
    }
}
