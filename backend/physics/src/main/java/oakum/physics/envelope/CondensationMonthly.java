package oakum.physics.envelope;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.HasNotices;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.Iso13788Saturation;
import org.jspecify.annotations.Nullable;

/** Condensation inside an assembly month by month. */
public final class CondensationMonthly {
    private static final double RUN_OFF_KG_PER_M2 = 0.2;
    private static final double WET_CUP_FROM = 0.70;
    private static final double MOST_OUTSIDE_SHARE = 0.2;

    public static final Calculation<Input, Output> CALCULATION = Calculation.declare(
                    "condensation-monthly", "1.0", "Condensation by month", Input.class, Output.class)
            .purpose(
                    "Shows where and when vapour that diffuses through a wall or a roof condenses, and whether it dries"
                            + " again within the year.")
            .equation(
                    "p_sat = 610.5·exp(17.269·θ/(237.3 + θ)), below 0 °C 610.5·exp(21.875·θ/(265.5 + θ))",
                    Citations.SATURATION)
            .equation(
                    "layers in pieces of at most 0.25 m²·K/W; p(s_d) the tightest string below p_sat",
                    Citations.MONTHLY)
            .equation(
                    "g_c = δ_0·((p_in − p_c)/Δs_in − (p_c − p_out)/Δs_out), δ_0 = 2e-10 kg/(m·s·Pa)",
                    Citations.PERMEABILITY)
            .equation(
                    "M_a += g_c·t from the first month that condenses after a dry one; a plane with water stays at p_sat",
                    Citations.MONTHLY)
            .equation("a plane that runs dry splits the month at that moment", Citations.MONTHLY)
            .equation("classes: p_i = p_e + Δp·(1 − θ_e/20), whole at 0 °C, none at 20 °C", Citations.CLASSES)
            .equation("continental: φ_i from 30 (40) % at −10 °C to 60 (70) % at 20 °C", Citations.CONTINENTAL)
            .source(Citations.MONTHLY)
            .source(Citations.SATURATION)
            .source(Citations.CLASSES)
            .source(Citations.CONTINENTAL)
            .source(Citations.RUN_OFF)
            .caution(Cautions.SCREENING)
            .caution(Cautions.MOULD)
            .validation(
                    "No published example was found; walls with one plane that dries and does not, and a roof with three"
                            + " planes at once, computed a second time by independent code. Water is conserved (property test).")
            .by(CondensationMonthly::compute);

    private CondensationMonthly() {}

    /** An assembly and its year. */
    public record Input(
            @Entry(label = "Lies") Placement placement,

            @Entry(label = "Layers, from inside", minRows = 1, maxRows = 30)
            List<LayerRow> layers,

            @Entry(label = "Months, January first", minRows = 12, maxRows = 12)
            List<MonthRow> months,

            @Entry(label = "Indoor humidity") IndoorHumidity indoorHumidity,

            @Entry(label = "Vapour resistances", help = "Left out: dry cup.") @Nullable
            CupValues cupValues,

            @Entry(label = "Month drawn", help = "Left out: the one in which most condenses, or the coldest.") @Nullable
            MonthOfYear drawnMonth) {
        public Input {
            layers = List.copyOf(layers);
            months = List.copyOf(months);
        }
    }

    /** A plane at which water lies at some time. */
    public record Plane(
            @Entry(label = "Short name") String id,
            @Entry(label = "Place") String place,

            @Quantity(label = "Depth from inside", unit = Unit.SMALL_METRE, step = 0.001)
            double depthM,

            @Quantity(label = "Most water", symbol = "M_a", unit = Unit.CONDENSATE, step = 0.0001)
            double mostKgPerM2,

            @Quantity(label = "Water left after the year", unit = Unit.CONDENSATE, step = 0.0001)
            double leftKgPerM2) {}

    /** A month of all planes together. */
    public record Month(
            @Entry(label = "Month") MonthOfYear month,

            @Quantity(label = "Outdoor vapour pressure", symbol = "p_e", unit = Unit.PASCAL, step = 0.1)
            double outdoorPa,

            @Quantity(label = "Indoor vapour pressure", symbol = "p_i", unit = Unit.PASCAL, step = 0.1)
            double indoorPa,

            @Quantity(label = "Condensed", unit = Unit.CONDENSATE, step = 0.0001)
            double condensedKgPerM2,

            @Quantity(label = "Evaporated", unit = Unit.CONDENSATE, step = 0.0001)
            double evaporatedKgPerM2,

            @Quantity(label = "Water at its end", symbol = "M_a", unit = Unit.CONDENSATE, step = 0.0001)
            double storedKgPerM2) {}

    /** A month of one plane. */
    public record PlaneMonth(
            @Entry(label = "Plane") String plane,
            @Entry(label = "Month") MonthOfYear month,

            @Quantity(label = "Change", symbol = "g_c·t", unit = Unit.CONDENSATE, step = 0.0001)
            double changeKgPerM2,

            @Quantity(label = "Water at its end", symbol = "M_a", unit = Unit.CONDENSATE, step = 0.0001)
            double storedKgPerM2) {}

    /** A point of the drawing, from inside. */
    public record Point(
            @Entry(label = "Place") String place,
            @Entry(label = "Between two layers") boolean face,

            @Quantity(label = "Depth from inside", unit = Unit.SMALL_METRE, step = 0.001)
            double depthM,

            @Quantity(label = "Diffusion thickness from inside", symbol = "s_d", unit = Unit.METRE, step = 0.001)
            double diffusionThicknessM,

            @Quantity(label = "Temperature", symbol = "θ", unit = Unit.CELSIUS, step = 0.01)
            double temperatureC,

            @Quantity(label = "Saturation pressure", symbol = "p_sat", unit = Unit.PASCAL, step = 0.1)
            double saturationPa,

            @Quantity(label = "Vapour pressure", symbol = "p", unit = Unit.PASCAL, step = 0.1)
            double vapourPa) {}

    /** What the year brings. */
    public record Output(
            @Entry(label = "Verdict") CondensationVerdict verdict,

            @Quantity(
                    label = "Most water, all planes",
                    symbol = "M_a",
                    unit = Unit.CONDENSATE,
                    step = 0.001,
                    leading = true)
            double mostKgPerM2,

            @Entry(label = "Month of the most water") @Nullable
            MonthOfYear mostIn,

            @Quantity(label = "Water left after the year", unit = Unit.CONDENSATE, step = 0.001, leading = true)
            double leftKgPerM2,

            @Quantity(label = "Water left after a second year", unit = Unit.CONDENSATE, step = 0.001)
            double leftAfterSecondYearKgPerM2,

            @Quantity(
                    label = "Thermal resistance between the framing",
                    symbol = "R",
                    unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                    step = 0.001)
            double resistanceM2KPerW,

            @Quantity(label = "Diffusion thickness", symbol = "s_d", unit = Unit.METRE, step = 0.001)
            double diffusionThicknessM,

            @Entry(label = "Planes, from inside") List<Plane> planes,

            @Entry(label = "Months, from the first that condenses")
            List<Month> months,

            @Entry(label = "Planes by month") List<PlaneMonth> planeMonths,
            @Entry(label = "Month drawn") MonthOfYear drawnMonth,
            @Entry(label = "Points of the drawing") List<Point> points,
            List<Notice> notices)
            implements HasNotices {}

    private static Output compute(Input in) {
        CupValues cup = in.cupValues() == null ? CupValues.DRY : in.cupValues();
        VapourPath path = new VapourPath(Assembly.of(in.placement(), in.layers()), cup);
        CondensateYear year = new CondensateYear(path, climates(in));
        List<CondensateYear.MonthResult> first = year.run(year.dry());
        List<Double> left = first.get(first.size() - 1).waterKgPerM2();
        List<CondensateYear.MonthResult> second = year.run(left);
        List<Integer> wet = planes(first, path.nodes().size());
        CondensateYear.MonthResult most =
                Collections.max(first, java.util.Comparator.comparingDouble(CondensateYear.MonthResult::storedKgPerM2));
        CondensateYear.MonthResult last = first.get(first.size() - 1);
        CondensationVerdict verdict = wet.isEmpty()
                ? CondensationVerdict.NONE
                : last.storedKgPerM2() > 0 ? CondensationVerdict.DOES_NOT_DRY : CondensationVerdict.DRIES;
        CondensateYear.MonthResult drawn = drawn(in, first);
        List<Notice> notices = new ArrayList<>(path.assembly().notices());
        notices.addAll(findings(in, path, cup, first, wet, most));
        return new Output(
                verdict,
                most.storedKgPerM2(),
                wet.isEmpty() ? null : most.climate().month(),
                last.storedKgPerM2(),
                second.get(second.size() - 1).storedKgPerM2(),
                path.resistanceM2KPerW(),
                path.sdTotalM(),
                IntStream.range(0, wet.size())
                        .mapToObj(k -> plane(path, first, left, wet.get(k), k))
                        .toList(),
                first.stream().map(CondensationMonthly::month).toList(),
                planeMonths(first, wet),
                drawn.climate().month(),
                points(path, drawn),
                notices);
    }

    private static List<CondensateYear.Climate> climates(Input in) {
        List<MonthOfYear> names = List.of(MonthOfYear.values());
        List<CondensateYear.Climate> climates = new ArrayList<>();
        for (int i = 0; i < in.months().size(); i++) {
            MonthRow row = in.months().get(i);
            climates.add(new CondensateYear.Climate(
                    names.get(i),
                    row.outdoorC(),
                    row.outdoorVapourPa(),
                    row.indoorTemperatureC(in.indoorHumidity()),
                    row.indoorVapourPa(in.indoorHumidity(), "months[" + i + "]")));
        }
        return climates;
    }

    /** Nodes that hold water at the end of some month or gained some within it, from inside. */
    private static List<Integer> planes(List<CondensateYear.MonthResult> year, int nodes) {
        List<Integer> wet = new ArrayList<>();
        for (int i = nodes - 1; i >= 0; i--) {
            int node = i;
            if (year.stream().anyMatch(m -> m.waterKgPerM2().get(node) > 0)) {
                wet.add(i);
            }
        }
        return wet;
    }

    private static String planeId(int k) {
        return "P" + (k + 1);
    }

    private static Plane plane(
            VapourPath path, List<CondensateYear.MonthResult> year, List<Double> left, int node, int k) {
        double most =
                year.stream().mapToDouble(m -> m.waterKgPerM2().get(node)).max().orElse(0);
        VapourPath.Node at = path.nodes().get(node);
        return new Plane(planeId(k), at.name(), at.depthM(), most, left.get(node));
    }

    private static Month month(CondensateYear.MonthResult m) {
        return new Month(
                m.climate().month(),
                m.climate().outdoorPa(),
                m.climate().indoorPa(),
                m.condensedKgPerM2(),
                m.evaporatedKgPerM2(),
                m.storedKgPerM2());
    }

    private static List<PlaneMonth> planeMonths(List<CondensateYear.MonthResult> year, List<Integer> wet) {
        List<PlaneMonth> rows = new ArrayList<>();
        for (int k = 0; k < wet.size(); k++) {
            for (CondensateYear.MonthResult m : year) {
                rows.add(new PlaneMonth(
                        planeId(k),
                        m.climate().month(),
                        m.changeKgPerM2().get(wet.get(k)),
                        m.waterKgPerM2().get(wet.get(k))));
            }
        }
        return rows;
    }

    private static CondensateYear.MonthResult drawn(Input in, List<CondensateYear.MonthResult> year) {
        if (in.drawnMonth() != null) {
            return year.stream()
                    .filter(m -> m.climate().month() == in.drawnMonth())
                    .findFirst()
                    .orElseThrow();
        }
        CondensateYear.MonthResult most = year.get(0);
        for (CondensateYear.MonthResult m : year) {
            if (m.condensedKgPerM2() > most.condensedKgPerM2()
                    || (m.condensedKgPerM2() == most.condensedKgPerM2()
                            && m.climate().outdoorC() < most.climate().outdoorC())) {
                most = m;
            }
        }
        return most;
    }

    private static List<Point> points(VapourPath path, CondensateYear.MonthResult drawn) {
        double[] temperatures =
                path.temperaturesC(drawn.climate().outdoorC(), drawn.climate().indoorC());
        double[] pressures = drawn.line().pressuresPa();
        List<Point> points = new ArrayList<>();
        for (int i = temperatures.length - 1; i >= 0; i--) {
            VapourPath.Node node = path.nodes().get(i);
            points.add(new Point(
                    node.name(),
                    node.face(),
                    node.depthM(),
                    path.sdTotalM() - node.sdM(),
                    temperatures[i],
                    Iso13788Saturation.pressurePa(temperatures[i]),
                    pressures[i]));
        }
        return points;
    }

    private static List<Notice> findings(
            Input in,
            VapourPath path,
            CupValues cup,
            List<CondensateYear.MonthResult> year,
            List<Integer> wet,
            CondensateYear.MonthResult most) {
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.note(
                "screening-only",
                "verdict",
                "Diffusion between the framing only: it cannot judge air leakage, rain, sun, stored or built-in water, nor"
                        + " wood that takes up water before any condenses.",
                Citations.MONTHLY));
        if (most.storedKgPerM2() > RUN_OFF_KG_PER_M2) {
            notices.add(Notice.advice(
                    "may-run-off",
                    "mostKgPerM2",
                    String.format(
                            Locale.ROOT,
                            "At most %.0f g/m² lie in the assembly: above 200 g/m² water may run off a face that does not"
                                    + " take it up.",
                            1000 * most.storedKgPerM2()),
                    Citations.RUN_OFF));
        }
        for (CondensateYear.MonthResult m : year) {
            double[] saturation =
                    path.saturationPa(m.climate().outdoorC(), m.climate().indoorC());
            if (m.climate().indoorPa() > saturation[saturation.length - 1]) {
                notices.add(Notice.advice(
                        "inside-surface-condenses",
                        "months",
                        "In " + m.climate().month().label() + " the inside surface itself is below the dew point of the"
                                + " indoor air.",
                        Citations.MONTHLY));
            }
        }
        if (!wet.isEmpty()) {
            notices.addAll(dryingDirection(path, year, wet));
        }
        if (cup == CupValues.DRY) {
            notices.addAll(wetLayers(in, path, year));
        }
        return notices;
    }

    private static List<Notice> dryingDirection(
            VapourPath path, List<CondensateYear.MonthResult> year, List<Integer> wet) {
        int wettest = Collections.max(
                wet,
                java.util.Comparator.comparingDouble(node -> year.stream()
                        .mapToDouble(m -> m.waterKgPerM2().get(node))
                        .max()
                        .orElse(0)));
        double outside = path.nodes().get(wettest).sdM();
        double inside = path.sdTotalM() - outside;
        if (outside <= MOST_OUTSIDE_SHARE * inside) {
            return List.of();
        }
        return List.of(Notice.advice(
                "outside-tighter-than-a-fifth",
                "planes",
                String.format(
                        Locale.ROOT,
                        "At the wettest plane (%s) vapour meets s_d %.3g m on its way out and %.3g m on its way in: outside it"
                                + " should be at most a fifth.",
                        path.nodes().get(wettest).name(),
                        outside,
                        inside),
                Citations.DRYING));
    }

    /** Layers that are wet in some month although their dry-cup resistance was used. */
    private static List<Notice> wetLayers(Input in, VapourPath path, List<CondensateYear.MonthResult> year) {
        List<Notice> notices = new ArrayList<>();
        List<ThermalLayer> layers = path.assembly().layers();
        for (int i = 0; i < layers.size(); i++) {
            double dry = path.layerSd().get(i);
            double wet = VapourPath.sdM(layers.get(i).row(), i, LayerRow.WET_CUP_HUMIDITY);
            double humidity = 0;
            for (CondensateYear.MonthResult m : year) {
                humidity = Math.max(humidity, meanHumidity(path, m, i));
            }
            if (wet < dry && humidity > WET_CUP_FROM) {
                notices.add(Notice.advice(
                        "dry-cup-value-of-a-wet-layer",
                        Assembly.pointer(i),
                        String.format(
                                Locale.ROOT,
                                "%s reaches a mean humidity of %.0f %%, where its s_d is %.3g m, not the %.3g m of the dry"
                                        + " cup; see what the wet-cup values say.",
                                in.layers().get(i).name(),
                                100 * Math.min(1, humidity),
                                wet,
                                dry),
                        Citations.CUPS));
            }
        }
        return notices;
    }

    private static double meanHumidity(VapourPath path, CondensateYear.MonthResult m, int layer) {
        List<Integer> faces = IntStream.range(0, path.nodes().size())
                .filter(i -> path.nodes().get(i).face())
                .boxed()
                .toList();
        int inner = faces.get(faces.size() - 1 - layer);
        int outer = faces.get(faces.size() - 2 - layer);
        double[] saturation =
                path.saturationPa(m.climate().outdoorC(), m.climate().indoorC());
        double[] pressure = m.line().pressuresPa();
        return (pressure[inner] / saturation[inner] + pressure[outer] / saturation[outer]) / 2;
    }
}
