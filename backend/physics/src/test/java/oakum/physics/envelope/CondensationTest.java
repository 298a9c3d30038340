package oakum.physics.envelope;

import static oakum.physics.checkrow.CheckRow.abs;
import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class CondensationTest {
    private static final String COMPUTED = "ISO 13788, computed by two independent programs";
    private static final double IP = 0.17611;
    private static final double PERM_SD_M = 2.0e-10 / 5.721e-11;

    private static final double[] OUTDOOR_C = {-10, -8, -2, 5, 12, 17, 20, 19, 14, 8, 1, -7};
    private static final double[] OUTDOOR_RH = {.80, .78, .75, .70, .68, .70, .72, .75, .78, .80, .82, .82};

    /** A synthetic cold climate. */
    private static List<MonthRow> cold() {
        List<MonthRow> months = new ArrayList<>();
        for (int i = 0; i < OUTDOOR_C.length; i++) {
            months.add(new MonthRow(OUTDOOR_C[i], OUTDOOR_RH[i], 20.0, null));
        }
        return months;
    }

    private static CondensationMonthly.Output year(
            Placement placement, @Nullable MonthOfYear drawn, TestLayer... layers) {
        return CondensationMonthly.CALCULATION
                .calculate(new CondensationMonthly.Input(
                        placement,
                        Arrays.stream(layers).map(TestLayer::row).toList(),
                        cold(),
                        IndoorHumidity.CLASS_3,
                        null,
                        drawn))
                .output();
    }

    private static Placement wall(double inside, double outside) {
        return new Placement(AssemblyKind.WALL, null, inside, outside);
    }

    private static TestLayer[] openWall() {
        return new TestLayer[] {
            TestLayer.solid("gypsum", 0.0125, 0.25).sd(0.125),
            TestLayer.solid("wool", 0.14, 0.035).sd(0.14),
            TestLayer.solid("osb", 0.012, 0.13).sd(2.4)
        };
    }

    private static TestLayer[] wallWithMembrane() {
        TestLayer[] open = openWall();
        return new TestLayer[] {open[0], TestLayer.of("membrane", 0).sd(5.0), open[1], open[2]};
    }

    private static double change(CondensationMonthly.Output year, String plane, MonthOfYear month) {
        return planeMonth(year, plane, month).changeKgPerM2();
    }

    private static double stored(CondensationMonthly.Output year, String plane, MonthOfYear month) {
        return planeMonth(year, plane, month).storedKgPerM2();
    }

    private static CondensationMonthly.PlaneMonth planeMonth(
            CondensationMonthly.Output year, String plane, MonthOfYear month) {
        return year.planeMonths().stream()
                .filter(m -> m.plane().equals(plane) && m.month() == month)
                .findFirst()
                .orElseThrow();
    }

    private static CondensationMonthly.Point at(CondensationMonthly.Output year, String place) {
        return year.points().stream()
                .filter(p -> p.place().equals(place))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void one_plane_wets_in_winter_and_dries() {
        CondensationMonthly.Output year = year(wall(0.13, 0.13), MonthOfYear.JANUARY, wallWithMembrane());

        assertThat(year.planes()).extracting(CondensationMonthly.Plane::place).containsExactly("wool / osb");
        assertThat(year.months().get(0).month()).isEqualTo(MonthOfYear.NOVEMBER);
        row("MS-1", COMPUTED)
                .near(year.resistanceM2KPerW(), 4.4023, abs(0.0001))
                .near(year.diffusionThicknessM(), 7.665, abs(0.0001))
                .near(at(year, "outside surface").temperatureC(), -9.114, abs(0.001))
                .near(at(year, "wool / osb").temperatureC(), -8.485, abs(0.001))
                .near(at(year, "membrane / wool").temperatureC(), 18.773, abs(0.001))
                .near(at(year, "inside surface").temperatureC(), 19.114, abs(0.001))
                .near(at(year, "wool / osb").saturationPa(), 296.5, abs(0.1))
                .near(at(year, "wool / osb").vapourPa(), 296.5, abs(0.1))
                .near(at(year, "membrane / wool").vapourPa(), 315.7, abs(0.1))
                .near(at(year, "gypsum / membrane").vapourPa(), 1000.4, abs(0.1))
                .near(change(year, "P1", MonthOfYear.NOVEMBER), 0.0239, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.DECEMBER), 0.0489, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.JANUARY), 0.0535, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.FEBRUARY), 0.0426, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.MARCH), 0.0241, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.APRIL), -0.0373, abs(0.0005))
                .near(change(year, "P1", MonthOfYear.MAY), -0.1251, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.NOVEMBER), 0.0239, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.DECEMBER), 0.0728, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.JANUARY), 0.1263, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.FEBRUARY), 0.1688, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.MARCH), 0.1930, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.APRIL), 0.1557, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.MAY), 0.0306, abs(0.0005))
                .near(stored(year, "P1", MonthOfYear.JUNE), 0, abs(0.0005))
                .exactly(year.verdict(), CondensationVerdict.DRIES);
        assertThat(year.mostIn()).isEqualTo(MonthOfYear.MARCH);
    }

    @Test
    void without_its_membrane_the_same_wall_does_not_dry() {
        CondensationMonthly.Output year = year(wall(0.13, 0.13), null, openWall());
        double[] expected = {
            0.3999, 1.5468, 2.9529, 4.3904, 5.6491, 6.8837, 7.4015, 6.9647, 5.8998, 4.4310, 3.2650, 2.9080
        };

        assertThat(year.months().get(0).month()).isEqualTo(MonthOfYear.OCTOBER);
        for (int i = 0; i < expected.length; i++) {
            row("MS-2", COMPUTED).near(year.months().get(i).storedKgPerM2(), expected[i], abs(0.003));
        }
        row("MS-2", COMPUTED)
                .near(change(year, "P1", MonthOfYear.AUGUST), -1.1661, abs(0.003))
                .near(year.leftKgPerM2(), 2.908, abs(0.003))
                .exactly(year.verdict(), CondensationVerdict.DOES_NOT_DRY);
        assertThat(year.notices())
                .extracting(Notice::code)
                .contains("screening-only", "may-run-off", "outside-tighter-than-a-fifth");
    }

    @Test
    void three_planes_wet_at_once_and_one_dries_within_a_month() {
        CondensationMonthly.Output year = year(
                new Placement(AssemblyKind.ROOF, null, 0.10, 0.04),
                null,
                TestLayer.resistance("gypsum", 0.05).sd(0.1),
                TestLayer.resistance("inner wool", 2.5).sd(0.1),
                TestLayer.solid("inner ply", 0.018, 0.13).sd(3.6),
                TestLayer.resistance("outer wool", 2.5).sd(0.1),
                TestLayer.solid("outer ply", 0.018, 0.13).sd(3.6),
                TestLayer.resistance("membrane", 0.02).sd(50));
        double[][] expected = {
            {.0009, .0030, .0054, .0075, .0095, .0117, .0122, .0102, .0054, 0, 0, 0},
            {.0295, .1083, .1966, .2833, .3627, .4494, .5106, .4870, .4228, .3315, .2554, .2344},
            {0, 0, .1450, .3609, .4854, .4513, 0, 0, 0, 0, 0, 0}
        };
        String[] places = {"outer ply / membrane", "outer wool / outer ply", "inner wool / inner ply"};
        MonthOfYear[] months =
                year.months().stream().map(CondensationMonthly.Month::month).toArray(MonthOfYear[]::new);

        assertThat(months[0]).isEqualTo(MonthOfYear.OCTOBER);
        assertThat(year.planes()).extracting(CondensationMonthly.Plane::place).containsExactlyInAnyOrder(places);
        for (int p = 0; p < places.length; p++) {
            String place = places[p];
            String id = year.planes().stream()
                    .filter(plane -> plane.place().equals(place))
                    .findFirst()
                    .orElseThrow()
                    .id();
            for (int m = 0; m < months.length; m++) {
                row("MS-3", COMPUTED).near(stored(year, id, months[m]), expected[p][m], abs(0.002));
            }
        }
        row("MS-3", COMPUTED)
                .near(year.resistanceM2KPerW(), 5.4869, abs(0.0001))
                .near(year.leftAfterSecondYearKgPerM2(), 0.4687, abs(0.002))
                .exactly(year.verdict(), CondensationVerdict.DOES_NOT_DRY);
    }

    @Test
    void one_winter_against_one_summer() {
        CondensationBlock.Output block = CondensationBlock.CALCULATION
                .calculate(new CondensationBlock.Input(
                        wall(0.25, 0.04),
                        Arrays.stream(openWall()).map(TestLayer::row).toList(),
                        new SteadyClimate(20, 0.5, -10, 0.8),
                        60,
                        new CondensationBlock.Summer(12, 0.7, 90),
                        null,
                        null))
                .output();

        assertThat(block.planes()).hasSize(1);
        row("MS-4", "DIN 4108-3:2001, from memory; computed by two independent programs")
                .near(block.planes().get(0).temperatureC(), -9.104, rel(0.005))
                .near(block.planes().get(0).saturationPa(), 280.8, rel(0.005))
                .near(block.condensedKgPerM2(), 3.441, rel(0.005))
                .near(block.evaporableKgPerM2(), 2.741, rel(0.005))
                .exactly(block.verdict(), Verdict.FAILS);
    }

    private static DewPointOfWall.Output day(
            Placement placement,
            double outdoorRh,
            double indoorC,
            double indoorRh,
            double outdoorC,
            TestLayer... layers) {
        return DewPointOfWall.CALCULATION
                .calculate(new DewPointOfWall.Input(
                        placement,
                        Arrays.stream(layers).map(TestLayer::row).toList(),
                        new SteadyClimate(indoorC, indoorRh, outdoorC, outdoorRh),
                        null,
                        null))
                .output();
    }

    @Test
    void dew_point_profile_in_perms() {
        DewPointOfWall.Output wall = day(
                wall(0.68 * IP, 0.17 * IP),
                0.75,
                (70 - 32) / 1.8,
                0.35,
                (20 - 32) / 1.8,
                TestLayer.resistance("gypsum", 0.45 * IP).sd(PERM_SD_M / 40),
                TestLayer.resistance("batt", 13 * IP).sd(PERM_SD_M / 33),
                TestLayer.resistance("osb", 0.62 * IP).sd(PERM_SD_M / 0.75),
                TestLayer.resistance("felt", 0.06 * IP).sd(PERM_SD_M / 5),
                TestLayer.resistance("siding", 0.80 * IP).sd(PERM_SD_M / 40));
        DewPointOfWall.Face plane = wall.faces().stream()
                .filter(f -> f.place().equals("batt / osb"))
                .findFirst()
                .orElseThrow();

        row("DP-1", "ASHRAE Fundamentals ch. 27, computed by two independent programs")
                .near(wall.resistanceM2KPerW() / IP, 15.78, abs(0.001))
                .near(wall.diffusionThicknessM() / PERM_SD_M, 1.6136, abs(0.0001))
                .near(plane.temperatureC(), -3.76, abs(0.1))
                .near(plane.saturationPa(), 445.8, rel(0.01))
                .near(plane.straightPa(), 854.8, rel(0.01))
                .near(1000 * wall.condensedPerDayKgPerM2(), 37.9, rel(0.01));
        assertThat(plane.vapourPa()).isCloseTo(plane.saturationPa(), within(1e-9));
    }

    @Test
    void indoor_air_that_leaks_condenses_where_too_little_insulation_lies_outside() {
        DewPointOfWall.Output little = leaking(0.6);
        DewPointOfWall.Output more = leaking(2.0);

        row("DP-2", "ASHRAE Fundamentals ch. 27, computed by two independent programs")
                .near(little.leakPlaneC(), -4.533, abs(0.01))
                .near(little.leakHumidityFraction(), 2.24, abs(0.005))
                .near(more.leakPlaneC(), 1.288, abs(0.01))
                .near(more.leakHumidityFraction(), 1.395, abs(0.005));
        assertThat(little.leakVerdict()).isEqualTo(Verdict.FAILS);
        assertThat(little.notices()).extracting(Notice::code).contains("too-little-insulation-outside");
        // with the share that is asked for, the plane lies just at the dew point
        double share = little.neededShareFraction();
        double inside = 0.13 + 0.05 + 3.5;
        double outside = share * inside / (1 - share) - 0.09 - 0.13;
        assertThat(leaking(outside).leakHumidityFraction()).isCloseTo(1, within(1e-9));
    }

    private static DewPointOfWall.Output leaking(double outsideResistance) {
        return day(
                wall(0.13, 0.13),
                0.8,
                20,
                0.4,
                -10,
                TestLayer.resistance("gypsum", 0.05).sd(0.1),
                TestLayer.resistance("wool", 3.5).sd(0.1),
                TestLayer.resistance("osb", 0.09).sd(2),
                TestLayer.resistance("board", outsideResistance).sd(0.1));
    }

    @Test
    void a_wet_layer_is_not_judged_by_its_dry_cup_without_a_word() {
        CondensationMonthly.Output year = year(
                wall(0.13, 0.13),
                null,
                TestLayer.library("gypsum", 0.0125, "gypsum-board"),
                TestLayer.library("wool", 0.14, "mineral-wool-batt"),
                TestLayer.library("plywood", 0.012, "plywood"));

        assertThat(year.notices()).extracting(Notice::code).contains("dry-cup-value-of-a-wet-layer");
    }

    @Test
    void a_wall_that_is_open_to_the_outside_stays_dry() {
        CondensationMonthly.Output year = year(
                wall(0.13, 0.13),
                null,
                TestLayer.of("membrane", 0).sd(20),
                TestLayer.solid("wool", 0.14, 0.035).sd(0.14),
                TestLayer.of("breather", 0).sd(0.05));

        assertThat(year.verdict()).isEqualTo(CondensationVerdict.NONE);
        assertThat(year.planes()).isEmpty();
        assertThat(year.mostKgPerM2()).isZero();
    }

    @Test
    void refuses_a_layer_without_vapour_resistance_and_a_class_beyond_saturation() {
        assertThatThrownBy(() -> year(wall(0.13, 0.13), null, TestLayer.solid("wool", 0.14, 0.035)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("\"wool\"")
                .hasMessageContaining("sdDryM");
        assertThatThrownBy(() -> new MonthRow(-5, 0.8, 0.0, null).indoorVapourPa(IndoorHumidity.CLASS_5, "months[0]"))
                .hasMessageContaining("above saturation");
    }

    @Test
    void the_continental_climate_is_dry_and_cool_in_the_cold() {
        MonthRow deep = new MonthRow(-15, 0.8, null, null);
        MonthRow warm = new MonthRow(25, 0.5, null, null);

        assertThat(deep.indoorTemperatureC(IndoorHumidity.CONTINENTAL_NORMAL)).isEqualTo(20);
        assertThat(warm.indoorTemperatureC(IndoorHumidity.CONTINENTAL_NORMAL)).isEqualTo(25);
        assertThat(IndoorHumidity.CONTINENTAL_NORMAL.continentalFraction(-15)).isEqualTo(0.30);
        assertThat(IndoorHumidity.CONTINENTAL_HIGH.continentalFraction(5)).isCloseTo(0.55, within(1e-12));
        assertThat(IndoorHumidity.CONTINENTAL_NORMAL.continentalFraction(25)).isCloseTo(0.60, within(1e-12));
    }

    @Property(tries = 300)
    void what_condenses_less_what_evaporates_is_what_is_stored(
            @ForAll @DoubleRange(min = 0.05, max = 20) double inside,
            @ForAll @DoubleRange(min = 0.05, max = 20) double middle,
            @ForAll @DoubleRange(min = 0.05, max = 20) double outside,
            @ForAll @DoubleRange(min = 0.02, max = 0.4) double first,
            @ForAll @DoubleRange(min = 0.02, max = 0.4) double second) {
        CondensationMonthly.Output year = year(
                wall(0.13, 0.04),
                null,
                TestLayer.of("inner", 0).sd(inside),
                TestLayer.solid("wool", first, 0.036).sd(first),
                TestLayer.of("middle", 0).sd(middle),
                TestLayer.solid("board", second, 0.036).sd(second),
                TestLayer.of("outer", 0).sd(outside));
        double stored = 0;
        double through = 1e-9;
        for (CondensationMonthly.Month month : year.months()) {
            stored += month.condensedKgPerM2() - month.evaporatedKgPerM2();
            through += month.condensedKgPerM2();
            assertThat(month.storedKgPerM2()).isCloseTo(stored, within(1e-9 * through));
        }
        assertThat(year.leftKgPerM2()).isCloseTo(stored, within(1e-9 * through));
        assertThat(year.points())
                .allSatisfy(p -> assertThat(p.vapourPa())
                        .as(p.place())
                        .isLessThanOrEqualTo(p.place().equals("inside surface") ? 1e9 : p.saturationPa() * (1 + 1e-9)));
    }
}
