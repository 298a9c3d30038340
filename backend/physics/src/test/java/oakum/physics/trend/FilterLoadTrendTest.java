package oakum.physics.trend;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.filtration.PowerFit;
import oakum.physics.trend.FilterLoadTrend.Input;
import oakum.physics.trend.FilterLoadTrend.Output;
import oakum.physics.trend.FilterLoadTrend.Sample;
import oakum.physics.trend.FilterLoadTrend.Standing;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class FilterLoadTrendTest {
    private static final double CFM = 0.3048 * 0.3048 * 0.3048 / 60;
    private static final LocalDate FITTED = LocalDate.of(2026, 1, 27);

    /** The invented house whose board was sanded on 9 to 11 April; weekly loads from 27 January. */
    private static final double[] SANDED = {
        1.00, 1.01, 1.03, 1.05, 1.07, 1.10, 1.12, 1.15, 1.17, 1.20, 1.23, 1.38, 1.47, 1.55, 1.63, 1.71
    };

    /** Clean drop of a 16 × 25 × 4 in. filter at 450 cfm by the demo's curve, sea level, 20 °C. */
    private static double cleanPa(double flowM3PerS) {
        double v = flowM3PerS / 0.25806;
        return 17 * v + 11 * (101_325 / (287.042 * 293.15)) / 1.2 * v * v;
    }

    private static Sample sample(LocalDate day, double load, double cfm) {
        return new Sample(day.toString(), load * cleanPa(cfm * CFM), cfm * CFM, null);
    }

    private static List<Sample> weekly(double... loads) {
        List<Sample> samples = new ArrayList<>();
        for (int week = 0; week < loads.length; week++) {
            samples.add(sample(FITTED.plusWeeks(week), loads[week], 450));
        }
        return samples;
    }

    private static Input input(LocalDate today, List<Sample> samples, @Nullable Double mark) {
        return new Input(
                FITTED.toString(),
                today.toString(),
                samples,
                0.25806,
                17,
                11,
                mark,
                null,
                450 * CFM,
                125.0,
                62.0,
                0,
                20,
                FilterRules.USUAL);
    }

    private static Output trend(LocalDate today, List<Sample> samples) {
        return FilterLoadTrend.CALCULATION.calculate(input(today, samples, 1.0)).output();
    }

    private static List<String> codes(Output out) {
        return out.notices().stream().map(Notice::code).toList();
    }

    @Test
    void a_filter_that_fills_early_after_sanding() {
        Output out = trend(LocalDate.of(2026, 5, 14), weekly(SANDED));

        assertThat(out.load()).isCloseTo(1.71, within(1e-9));
        assertThat(out.loadDate()).isEqualTo("2026-05-12");
        assertThat(7 * out.recentSlopePerD()).isCloseTo(0.080, within(1e-9));
        assertThat(out.fillingEarly()).isTrue();
        assertThat(out.fillingEarlySinceDate()).isEqualTo("2026-04-21");
        assertThat(out.changeAfterDate()).isEqualTo("2026-04-07");
        assertThat(out.changeByDate()).isEqualTo("2026-04-14");
        assertThat(7 * out.slopeBeforePerD()).isCloseTo(0.024, within(0.0005));
        assertThat(7 * out.slopeSincePerD()).isCloseTo(0.080, within(1e-9));
        assertThat(out.dueDate()).isEqualTo("2026-06-06");
        assertThat(out.dueBecause()).isEqualTo(FilterWindow.Why.LOAD);
        assertThat(out.latestVisitDate()).isEqualTo("2026-05-30");
        assertThat(out.windowOpensDate()).isEqualTo("2026-04-28");
        assertThat(out.standing()).isEqualTo(Standing.WINDOW_OPEN);
        assertThat(out.usedUpLoad()).isCloseTo(2.94, within(0.01));
        assertThat(codes(out)).contains("filling-early");
    }

    @Test
    void the_same_filter_before_the_sanding_fills_quietly() {
        Output out = trend(LocalDate.of(2026, 4, 7), weekly(Arrays.copyOf(SANDED, 11)));

        assertThat(7 * out.lifeSlopePerD()).isCloseTo(0.02375, within(1e-9));
        assertThat(out.fillingEarly()).isFalse();
        assertThat(out.standing()).isEqualTo(Standing.NOT_YET);
    }

    @Property(tries = 40)
    void scatter_alone_never_looks_like_filling_early(
            @ForAll Random random, @ForAll @DoubleRange(min = 0, max = 0.03) double weekly) {
        List<Sample> samples = new ArrayList<>();
        for (int day = 0; day < 150; day++) {
            samples.add(sample(FITTED.plusDays(day), 1 + weekly / 7 * day + 0.01 * random.nextGaussian(), 450));
        }

        assertThat(trend(FITTED.plusDays(150), samples).fillingEarly()).isFalse();
    }

    @Property(tries = 40)
    void a_real_change_is_dated_within_a_week_in_spite_of_scatter(@ForAll Random random) {
        List<Sample> samples = new ArrayList<>();
        for (int day = 0; day < 110; day++) {
            double load = 1 + 0.024 / 7 * day + Math.max(0, day - 73) * (0.080 - 0.024) / 7;
            samples.add(sample(FITTED.plusDays(day), load + 0.01 * random.nextGaussian(), 450));
        }

        Output out = trend(FITTED.plusDays(110), samples);

        assertThat(out.fillingEarly()).isTrue();
        assertThat(LocalDate.parse(out.changeByDate())).isBetween(FITTED.plusDays(73 - 7), FITTED.plusDays(73 + 7));
        assertThat(7 * out.recentSlopePerD()).isCloseTo(0.080, within(0.008));
    }

    @Test
    void a_fan_that_loses_airflow_does_not_look_like_slower_loading() {
        double[] day = {0, 14, 30, 45, 60, 75, 90};
        double[] drop = {30, 32.9, 35.1, 36.1, 40, 42.8, 47.5};
        double[] cfm = {1000, 1015, 1000, 975, 990, 985, 1005};
        List<Sample> measured = new ArrayList<>();
        List<Sample> blind = new ArrayList<>();
        for (int i = 0; i < day.length; i++) {
            String date = FITTED.plusDays((long) day[i]).toString();
            measured.add(new Sample(date, drop[i], cfm[i] * CFM, null));
            blind.add(new Sample(date, drop[i], null, null));
        }
        Input known = new Input(
                FITTED.toString(),
                "2026-04-27",
                measured,
                0.5,
                25,
                7,
                1.0,
                null,
                1000 * CFM,
                null,
                null,
                0,
                20,
                FilterRules.USUAL);
        Input unknown = new Input(
                FITTED.toString(),
                "2026-04-27",
                blind,
                0.5,
                25,
                7,
                1.0,
                1000 * CFM,
                1000 * CFM,
                null,
                null,
                0,
                20,
                FilterRules.USUAL);

        Output normalised = FilterLoadTrend.CALCULATION.calculate(known).output();
        Output raw = FilterLoadTrend.CALCULATION.calculate(unknown).output();

        // the same 1.0 Pa between day 30 and 45 is more than twice as much once the airflow is known
        double risen =
                normalised.loads().get(3).load() - normalised.loads().get(2).load();
        double looks = raw.loads().get(3).load() - raw.loads().get(2).load();
        row("R-FIL-11", "proposed rule of the reference sheet")
                .exactly(risen > 2 * looks, true)
                .exactly(codes(normalised).contains("flow-unknown"), false)
                .exactly(codes(raw).contains("flow-unknown"), true)
                .near(
                        PowerFit.atReference(36.1, 975, 1000, 1.4) - PowerFit.atReference(35.1, 1000, 1000, 1.4),
                        2.3,
                        abs(0.05));
    }

    @Property(tries = 50)
    void load_does_not_depend_on_the_airflow_at_which_it_is_read(
            @ForAll @Size(12) List<@DoubleRange(min = 120, max = 520) Double> cfm) {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < cfm.size(); i++) {
            samples.add(sample(FITTED.plusDays(3L * i), 1 + 0.01 * i, cfm.get(i)));
        }

        Output out = trend(FITTED.plusDays(40), samples);

        for (int i = 0; i < cfm.size(); i++) {
            assertThat(out.loads().get(i).load()).isCloseTo(1 + 0.01 * i, within(1e-9));
        }
    }

    @Test
    void the_clean_mark_is_the_median_of_the_first_seven_good_days() {
        List<Sample> samples = new ArrayList<>();
        double[] first = {1.10, 1.04, 1.05, 3.00, 1.06, 1.05, 1.07};
        samples.add(new Sample(FITTED.toString(), 1, 0.2, true));
        for (int i = 0; i < first.length; i++) {
            samples.add(sample(FITTED.plusDays(i + 1), first[i], 450));
        }
        Collections.shuffle(samples, new Random(7));

        Answer<Input, Output> answer = FilterLoadTrend.CALCULATION.calculate(input(FITTED.plusDays(10), samples, null));

        assertThat(answer.output().cleanMarkUsed()).isCloseTo(1.06, within(1e-9));
        assertThat(answer.rejected()).isFalse();
        assertThat(answer.output().loads()).hasSize(7);
        assertThat(codes(answer.output())).contains("no-slope-yet").doesNotContain("clean-mark-open");
    }

    @Test
    void a_clean_mark_far_from_the_design_curve_is_no_evidence() {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            samples.add(sample(FITTED.plusDays(i), 0.8, 450));
        }

        Answer<Input, Output> answer = FilterLoadTrend.CALCULATION.calculate(input(FITTED.plusDays(10), samples, null));

        assertThat(answer.rejected()).isTrue();
        assertThat(codes(answer.output())).contains("filter-looks-wrong");
        assertThat(FilterLoadTrend.CALCULATION
                        .calculate(input(FITTED.plusDays(10), samples, 1.14))
                        .rejected())
                .isFalse();
    }

    @Test
    void a_filter_suddenly_easy_is_said_once_it_stays_so() {
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            samples.add(sample(FITTED.plusDays(i), i < 25 ? 1.4 : 1.0, 450));
        }

        assertThat(codes(trend(FITTED.plusDays(30), samples))).contains("suddenly-easy");
        samples.set(26, sample(FITTED.plusDays(26), 1.4, 450));
        samples.set(25, sample(FITTED.plusDays(25), 1.4, 450));
        for (int i = 28; i < 30; i++) {
            samples.set(i, sample(FITTED.plusDays(i), 1.4, 450));
        }
        // one day at 1.0 and back again is a reading, not a filter
        assertThat(codes(trend(FITTED.plusDays(30), samples))).doesNotContain("suddenly-easy");
    }

    @Test
    void fewer_than_twenty_readings_make_no_value_of_a_day() {
        List<Double> readings = new ArrayList<>(Collections.nCopies(18, 1.2));
        readings.add(9.0);

        assertThat(LoadSeries.dailyMedian(readings)).isEmpty();
        readings.add(1.2);
        assertThat(LoadSeries.dailyMedian(readings)).hasValue(1.2);
    }

    @Test
    void refuses_what_contradicts_itself_and_names_the_field() {
        assertRefused("samples[1].date", weekly(1.0, 1.1), FITTED.plusDays(3));
        List<Sample> twice = List.of(sample(FITTED, 1, 450), sample(FITTED, 1.1, 450));
        assertRefused("samples[1].date", twice, FITTED.plusDays(3));
        assertRefused("samples[0].date", List.of(new Sample("12.5.2026", 20, 0.2, null)), FITTED.plusDays(3));
        assertRefused("samples[0].flowM3PerS", List.of(new Sample("2026-01-28", 20, null, null)), FITTED.plusDays(3));
        assertRefused("samples", List.of(new Sample("2026-01-28", 20, 0.2, true)), FITTED.plusDays(3));
        assertRefused("todayDate", weekly(1.0), FITTED.minusDays(1));
    }

    private static void assertRefused(String field, List<Sample> samples, LocalDate today) {
        assertThatThrownBy(() -> trend(today, samples))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused ->
                                assertThat(refused.violations().get(0).field()).isEqualTo(field));
    }
}
