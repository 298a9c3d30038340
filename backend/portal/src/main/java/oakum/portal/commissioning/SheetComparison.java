package oakum.portal.commissioning;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import oakum.physics.airtightness.TightnessTest;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Unit;
import oakum.physics.filtration.CleanCurve;
import oakum.physics.filtration.QuadraticFit;
import oakum.portal.calculation.Calculations;
import oakum.portal.commissioning.Outcome.ComputedBy;
import oakum.portal.houserecord.AirPart;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.VolumeBasis;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Compares what was measured with the design. Nothing is stored here. */
@Component
class SheetComparison {
    private static final int CALIBRATION_MONTHS = 12;

    /** 15 km/h: Canadian house-programme depressurisation test procedure (seen). */
    private static final double STRONG_WIND_M_PER_S = 15 / 3.6;

    /** Of the same procedure. */
    private static final double GREATEST_FLUCTUATION_PA = 1;

    /** Of the same procedure, over 5 to 50 Pa. */
    private static final double GAUGE_ACCURACY_PA = 1;

    /** Clean drop against the filter's curve: a firm rule, no published source. */
    private static final double DROP_TOLERANCE_FRACTION = 0.15;

    /** Hood flow against its rating: a firm rule, no published source. */
    private static final double HOOD_TOLERANCE_FRACTION = 0.1;

    private final Calculations calculations;

    SheetComparison(Calculations calculations) {
        this.calculations = calculations;
    }

    /**
     * A tightness test against the target, on both volumes.
     *
     * @throws oakum.physics.calculation.Refused where the readings cannot be a test
     */
    Outcome tightness(HouseDesign design, TightnessSent sent) {
        HouseView house = design.house();
        DesignValue target = design.target(sent.stage(), sent.typedTargetAch50PerH());
        VolumeBasis basis = design.targetVolume(sent.typedTargetVolume());
        Taken taken = sent.taken();
        Answer<TightnessTest.Input, TightnessTest.Output> answer =
                TightnessTest.CALCULATION.calculate(new TightnessTest.Input(
                        sent.standard(),
                        TightnessTest.Fit.ORDINARY,
                        direction(sent.depressurisation()),
                        direction(sent.pressurisation()),
                        taken.weather().indoorC(),
                        taken.weather().outdoorC(),
                        null,
                        null,
                        house.altitudeM(),
                        null,
                        taken.weather().windMPerS(),
                        null,
                        house.netVolumeM3(),
                        house.volumeWithFloorsM3(),
                        house.envelopeAreaM2(),
                        target == null ? null : target.value(),
                        basis == VolumeBasis.NET
                                ? TightnessTest.VolumeBasis.NET
                                : TightnessTest.VolumeBasis.WITH_FLOORS,
                        taken.instrument().flowAccuracyFraction(),
                        taken.instrument().pressureUncertaintyPa(50) / 50,
                        null,
                        sent.roomAirAppliance()));
        TightnessTest.Output out = answer.output();
        double share = out.airflow50UncertaintyM3PerS() / out.airflow50M3PerS();
        List<Compared> values = new ArrayList<>();
        values.add(airChanges(
                "ach50NetPerH", "On net air volume", out.ach50NetPerH(), share, basis == VolumeBasis.NET, target));
        Double withFloors = out.ach50FloorsPerH();
        if (withFloors != null) {
            values.add(airChanges(
                    "ach50FloorsPerH",
                    "On volume with floor depth",
                    withFloors,
                    share,
                    basis == VolumeBasis.WITH_FLOORS,
                    target));
        }
        values.add(Compared.shown(
                "airflow50M3PerS",
                "Flow at 50 Pa",
                Unit.CUBIC_METRE_PER_SECOND,
                out.airflow50M3PerS(),
                out.airflow50UncertaintyM3PerS()));
        Double perArea = out.airflow50PerAreaM3PerSM2();
        if (perArea != null) {
            values.add(Compared.shown(
                    "airflow50PerAreaM3PerSM2",
                    "Flow at 50 Pa per envelope area",
                    Unit.FLOW_PER_AREA,
                    perArea,
                    perArea * share));
        }
        values.add(Compared.shown("exponent", "Exponent", Unit.ONE, out.exponent(), 0));
        List<String> findings = findings(taken, design);
        if (target == null) {
            findings.add("No target is known: the record has none and none was typed.");
        }
        if (sent.depressurisation() == null || sent.pressurisation() == null) {
            findings.add("The test was run in one direction only.");
        }
        answer.notices().stream()
                .filter(notice -> notice.weight() == Notice.Weight.REJECTED)
                .forEach(notice -> findings.add(notice.sentence()));
        return Outcome.of(
                values,
                findings,
                new ComputedBy(
                        answer.calculation().id(),
                        answer.calculation().version(),
                        answer.copyCode(),
                        calculations.toJson(answer.printed())));
    }

    private static Compared airChanges(
            String name, String label, double value, double share, boolean counts, @Nullable DesignValue target) {
        return counts && target != null
                ? Compared.atMost(name, label, Unit.PER_HOUR, value, value * share, target)
                : Compared.shown(name, label, Unit.PER_HOUR, value, value * share);
    }

    private static TightnessTest.@Nullable Direction direction(TightnessSent.@Nullable TestDirection sent) {
        return sent == null
                ? null
                : new TightnessTest.Direction(
                        sent.baselineBeforePa(),
                        sent.baselineAfterPa(),
                        sent.steps().stream()
                                .map(step -> new TightnessTest.Reading(step.pressurePa(), step.airflowM3PerS()))
                                .toList());
    }

    /** The drop over a clean filter against its curve and the limits. */
    Outcome filterDrop(HouseDesign design, AirPart.Filter filter, FilterDropSent sent) {
        Taken.Instrument instrument = sent.taken().instrument();
        double density = design.densityKgPerM3(sent.taken().weather().indoorC());
        double area = HouseDesign.faceAreaM2(filter);
        List<Compared> values = new ArrayList<>();
        for (FilterDropSent.FlowStep step : sent.flows()) {
            double flow = Readings.mean(step.airflowM3PerS());
            double flowShare =
                    Math.hypot(instrument.flowAccuracyFraction(), Readings.scatter(step.airflowM3PerS()) / flow);
            double drop = Readings.mean(step.dropPa());
            double ofDrop = Math.hypot(instrument.pressureUncertaintyPa(drop), Readings.scatter(step.dropPa()));
            DesignValue expected = design.expectedDrop(filter, step.label(), flow, density);
            CleanCurve curve = HouseDesign.curve(filter);
            if (expected == null || curve == null) {
                values.add(Compared.shown("dropPa", "Drop, " + step.label(), Unit.PASCAL, drop, ofDrop));
            } else {
                // the flow is not known exactly, so neither is the drop that the curve expects at it
                double step1 = curve.dropPa(flow * (1 + flowShare) / area, density);
                double ofExpected = step1 - expected.value();
                values.add(Compared.near(
                        "dropPa",
                        "Drop, " + step.label(),
                        Unit.PASCAL,
                        drop,
                        Math.hypot(ofDrop, ofExpected),
                        expected,
                        DROP_TOLERANCE_FRACTION));
            }
        }
        FilterDropSent.FlowStep highest = highest(sent);
        double flow = Readings.mean(highest.airflowM3PerS());
        double ofFlow = Math.hypot(instrument.flowAccuracyFraction() * flow, Readings.scatter(highest.airflowM3PerS()));
        double drop = Readings.mean(highest.dropPa());
        values.add(Compared.atMost(
                "cleanDropPa",
                "Drop, " + highest.label() + ", against the limit",
                Unit.PASCAL,
                drop,
                Math.hypot(instrument.pressureUncertaintyPa(drop), Readings.scatter(highest.dropPa())),
                design.cleanDropLimit()));
        values.add(Compared.atMost(
                "faceVelocityMPerS",
                "Face velocity, " + highest.label(),
                Unit.METRE_PER_SECOND,
                flow / area,
                ofFlow / area,
                design.faceVelocityLimit()));
        CleanCurve measured = curveOf(sent, area, density);
        values.add(Compared.shown(
                "measuredLinearPaSPerM",
                "Part with velocity, measured",
                Unit.PASCAL_PER_VELOCITY,
                measured.linearPaSPerM(),
                0));
        values.add(Compared.shown(
                "measuredSquarePaS2PerM2",
                "Part with velocity squared, measured",
                Unit.PASCAL_PER_VELOCITY_SQUARED,
                measured.squarePaS2PerM2(),
                0));
        List<String> findings = findings(sent.taken(), design);
        if (HouseDesign.curve(filter) == null) {
            findings.add("The record has no curve of this filter to compare with.");
        }
        return Outcome.of(values, findings, null);
    }

    static FilterDropSent.FlowStep highest(FilterDropSent sent) {
        return sent.flows().stream()
                .max(Comparator.comparingDouble(step -> Readings.mean(step.airflowM3PerS())))
                .orElseThrow();
    }

    /** The clean curve through the measured flows, at rated density. */
    static CleanCurve curveOf(FilterDropSent sent, double areaM2, double densityKgPerM3) {
        double[] velocity = sent.flows().stream()
                .mapToDouble(step -> Readings.mean(step.airflowM3PerS()) / areaM2)
                .toArray();
        double[] drop = sent.flows().stream()
                .mapToDouble(step -> Readings.mean(step.dropPa()))
                .toArray();
        QuadraticFit fit = QuadraticFit.through(velocity, drop);
        return new CleanCurve(fit.a(), fit.b() * CleanCurve.RATED_DENSITY_KG_PER_M3 / densityKgPerM3);
    }

    /** House pressure with everything on, with make-up air working and failing. */
    Outcome housePressure(HouseDesign design, HousePressureSent sent) {
        Taken.Instrument instrument = sent.taken().instrument();
        List<Compared> values = new ArrayList<>();
        HousePressureSent.MakeUpWorking working = sent.working();
        Below below = below(sent, working.pressurePa());
        values.add(Compared.atMost(
                "workingPa",
                "From rest, make-up air working",
                Unit.HOUSE_PASCAL,
                below.sizePa(),
                below.uncertaintyPa(),
                design.pressureLimit()));
        DesignValue expected = design.designPressure(sent.typedDesignPressurePa());
        if (expected != null) {
            values.add(Compared.beside(
                    "workingBesideDesignPa",
                    "The same beside the design",
                    Unit.HOUSE_PASCAL,
                    below.sizePa(),
                    below.uncertaintyPa(),
                    expected));
        }
        if (working.damperOpenS() != null) {
            values.add(Compared.atMost(
                    "damperOpenS",
                    "Damper proves open after",
                    Unit.SECOND,
                    working.damperOpenS(),
                    0,
                    design.damperLimit()));
        }
        if (working.deliveredC() != null) {
            values.add(Compared.atLeast(
                    "deliveredC",
                    "Make-up air delivered at",
                    Unit.CELSIUS,
                    working.deliveredC(),
                    0,
                    design.deliveredLimit()));
        }
        hood(values, design, instrument, working);
        List<String> findings = findings(sent.taken(), design);
        failing(values, findings, design, sent, sent.failed(), "failed", "damper held shut");
        failing(values, findings, design, sent, sent.blocked(), "blocked", "intake blocked");
        if (sent.taken().weather().windMPerS() > STRONG_WIND_M_PER_S) {
            findings.add("The wind was stronger than 15 km/h: repeat on a calm day.");
        }
        if (sent.fluctuationPa() > GREATEST_FLUCTUATION_PA) {
            findings.add("The rest pressure swung by more than 1 Pa: repeat on a calm day.");
        }
        if (instrument.pressureAccuracyPa() > GAUGE_ACCURACY_PA) {
            findings.add("The gauge is not within 1 Pa.");
        }
        return Outcome.of(values, findings, null);
    }

    private static void hood(
            List<Compared> values,
            HouseDesign design,
            Taken.Instrument instrument,
            HousePressureSent.MakeUpWorking working) {
        Double flow = working.hoodM3PerS();
        DesignValue rated = design.hood();
        if (flow != null) {
            double uncertainty = flow * instrument.flowAccuracyFraction();
            values.add(
                    rated == null
                            ? Compared.shown(
                                    "hoodM3PerS",
                                    "Hood, make-up air on",
                                    Unit.CUBIC_METRE_PER_SECOND,
                                    flow,
                                    uncertainty)
                            : Compared.near(
                                    "hoodM3PerS",
                                    "Hood, make-up air on",
                                    Unit.CUBIC_METRE_PER_SECOND,
                                    flow,
                                    uncertainty,
                                    rated,
                                    HOOD_TOLERANCE_FRACTION));
        }
        Double without = working.hoodWithoutMakeUpM3PerS();
        if (without != null) {
            values.add(Compared.shown(
                    "hoodWithoutMakeUpM3PerS",
                    "Hood, make-up air off",
                    Unit.CUBIC_METRE_PER_SECOND,
                    without,
                    without * instrument.flowAccuracyFraction()));
        }
    }

    private static void failing(
            List<Compared> values,
            List<String> findings,
            HouseDesign design,
            HousePressureSent sent,
            HousePressureSent.@Nullable MakeUpFailing failing,
            String name,
            String label) {
        if (failing == null) {
            findings.add("Not tried: " + label + ".");
            return;
        }
        Below below = below(sent, failing.heldPa());
        values.add(Compared.atMost(
                name + "HeldPa",
                "From rest, after the interlock acted, " + label,
                Unit.HOUSE_PASCAL,
                below.sizePa(),
                below.uncertaintyPa(),
                design.failedPressureLimit()));
        Double after = failing.heldAfterS();
        if (after == null) {
            findings.add("The house was not seen back within its limit: " + label + ".");
        } else {
            values.add(Compared.atMost(
                    name + "HeldAfterS",
                    "Back within the limit after, " + label,
                    Unit.SECOND,
                    after,
                    0,
                    design.timeLimit()));
        }
    }

    /** How far the house is from rest; the larger difference of the two rests counts. */
    private record Below(double sizePa, double uncertaintyPa) {}

    private static Below below(HousePressureSent sent, List<Double> pressurePa) {
        double pressure = Readings.mean(pressurePa);
        double fromBefore = Math.abs(pressure - Readings.mean(sent.restBeforePa()));
        double fromAfter = Math.abs(pressure - Readings.mean(sent.restAfterPa()));
        List<Double> rest = fromBefore >= fromAfter ? sent.restBeforePa() : sent.restAfterPa();
        double size = Math.max(fromBefore, fromAfter);
        double scatter = Math.hypot(Readings.scatter(pressurePa), Readings.scatter(rest));
        return new Below(size, Math.hypot(sent.taken().instrument().pressureUncertaintyPa(size), scatter));
    }

    /** What speaks against any measurement. */
    private static List<String> findings(Taken taken, HouseDesign design) {
        List<String> findings = new ArrayList<>();
        LocalDate day =
                LocalDate.ofInstant(taken.takenAt(), ZoneId.of(design.house().timeZone()));
        LocalDate calibrated = taken.instrument().calibratedOn();
        if (calibrated.plusMonths(CALIBRATION_MONTHS).isBefore(day)) {
            findings.add("The calibration of " + calibrated + " is older than 12 months: the reading is kept and not"
                    + " accepted.");
        }
        if (calibrated.isAfter(day)) {
            findings.add("The calibration of " + calibrated + " is later than the measurement.");
        }
        return findings;
    }
}
