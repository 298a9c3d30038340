package oakum.physics.housepressure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import oakum.physics.airtightness.PowerLaw;
import oakum.physics.calculation.Verdict;

/**
 * One house with its leaks, openings, exhaust devices and make-up units; solves the mass balance of any combination of
 * them. Flows are kept in kg/s; a depressurisation is positive where the house is below outdoors.
 */
final class House {
    /** A combination with what was found for it. */
    record Solved(List<ExhaustDevice> on, Combination combination) {}

    private final HousePressureInput input;
    private final Air air;
    private final PowerLaw envelope;
    private final Map<String, Opening> openings = new LinkedHashMap<>();
    private double greatestErrorKgPerS;

    House(HousePressureInput input) {
        this.input = input;
        this.air = new Air(
                input.flowBasis(),
                input.altitudeM(),
                input.indoorTemperatureC(),
                input.outdoorTemperatureC(),
                input.flowTemperatureC());
        this.envelope = PowerLaw.ofAirflow50(input.q50M3PerS(), input.exponent());
        input.openings().forEach(o -> openings.put(o.id(), o.opening()));
    }

    Air air() {
        return air;
    }

    /** The most mass that any balance solved so far leaves over, kg/s. */
    double greatestErrorKgPerS() {
        return greatestErrorKgPerS;
    }

    /** Every combination of the devices that run only sometimes, the worst house pressure first. */
    List<Solved> combinations() {
        List<ExhaustDevice> sometimes = input.devices().stream()
                .filter(d -> d.running() == Running.SOMETIMES)
                .toList();
        List<Solved> all = new ArrayList<>();
        for (int mask = 0; mask < 1 << sometimes.size(); mask++) {
            int chosen = mask;
            List<ExhaustDevice> on = input.devices().stream()
                    .filter(d -> d.running() == Running.CONTINUOUS || (chosen >> sometimes.indexOf(d) & 1) == 1)
                    .toList();
            all.add(new Solved(on, solve(on)));
        }
        all.sort(Comparator.comparing(
                        Solved::combination,
                        Comparator.comparingDouble(Combination::housePressurePa)
                                .thenComparingDouble(Combination::coupledPressurePa))
                .reversed()
                .thenComparing(s -> s.combination().id()));
        return List.copyOf(all);
    }

    private Combination solve(List<ExhaustDevice> on) {
        double limit = input.limit().workingPa();
        double failedLimit = input.limit().afterFailurePa();
        double fixed = depressurisationPa(on, true, false);
        double coupled = depressurisationPa(on, true, true);
        double failed = depressurisationPa(on, false, false);
        List<ExhaustDevice> left = on.stream().filter(d -> !follows(d)).toList();
        double stopped = depressurisationPa(left, false, false);
        double exhaust = exhaustKgPerS(on, 0, false);
        double makeUp = makeUpKgPerS(on);
        return new Combination(
                on.isEmpty() ? "none" : on.stream().map(ExhaustDevice::id).collect(Collectors.joining("+")),
                on.isEmpty() ? "nothing" : on.stream().map(ExhaustDevice::label).collect(Collectors.joining(", ")),
                exhaust / air.exhaustKgPerM3(),
                makeUp / makeUpKgPerM3(),
                (exhaust - makeUp) / air.countKgPerM3(),
                fixed,
                verdict(on, true, false, limit),
                coupled,
                exhaustKgPerS(on, coupled, true) / air.exhaustKgPerM3(),
                verdict(on, true, true, limit),
                failed,
                depressurisationPa(on, false, true),
                verdict(on, false, false, failedLimit),
                failed <= failedLimit
                        ? InterlockAct.NOTHING
                        : stopped <= failedLimit ? InterlockAct.STOP_FOLLOWED : InterlockAct.NOT_ENOUGH,
                stopped);
    }

    private Verdict verdict(List<ExhaustDevice> on, boolean makeUpWorks, boolean fanCurves, double limitPa) {
        double high = depressurisationPa(on, makeUpWorks, fanCurves, LeakBound.LEAST);
        double low = LeakBound.known(input) ? depressurisationPa(on, makeUpWorks, fanCurves, LeakBound.MOST) : high;
        return Verdict.atMost((high + low) / 2, (high - low) / 2, limitPa);
    }

    /** The same with the envelope as it was entered. */
    double depressurisationPa(List<ExhaustDevice> on, boolean makeUpWorks, boolean fanCurves) {
        return depressurisationPa(on, makeUpWorks, fanCurves, LeakBound.AS_ENTERED);
    }

    /**
     * The depressurisation in Pa that balances the flows.
     *
     * @param on the devices that run
     * @param makeUpWorks whether make-up units and motor dampers do their work
     * @param fanCurves whether fans give way to pressure, or move their rated flow
     * @param envelope which end of the envelope's interval
     */
    double depressurisationPa(List<ExhaustDevice> on, boolean makeUpWorks, boolean fanCurves, LeakBound envelope) {
        double makeUp = makeUpWorks ? makeUpKgPerS(on) : 0;
        DoubleUnaryOperator surplus = dp -> makeUp
                + leakKgPerS(dp, envelope)
                + openingsKgPerS(on, makeUpWorks, dp)
                - exhaustKgPerS(on, dp, fanCurves);
        double found = MassBalance.depressurisationPa(surplus, makeUp + exhaustKgPerS(on, 0, fanCurves));
        greatestErrorKgPerS = Math.max(greatestErrorKgPerS, Math.abs(surplus.applyAsDouble(found)));
        return found;
    }

    /** The make-up air, as it was entered, that holds a limit in every combination; m³/s. */
    double makeUpNeededM3PerS(List<Solved> combinations, double limitPa, boolean fanCurves) {
        double mass = 0;
        for (Solved solved : combinations) {
            double gap = exhaustKgPerS(solved.on(), limitPa, fanCurves)
                    - leakKgPerS(limitPa, LeakBound.AS_ENTERED)
                    - openingsKgPerS(solved.on(), true, limitPa);
            mass = Math.max(mass, gap);
        }
        return mass / makeUpKgPerM3();
    }

    /** What may leave at a depressurisation without any make-up air, as exhaust flow; m³/s. */
    double exhaustBorneM3PerS(double limitPa) {
        return (leakKgPerS(limitPa, LeakBound.AS_ENTERED) + openingsKgPerS(List.of(), false, limitPa))
                / air.exhaustKgPerM3();
    }

    /** What one device moves at a depressurisation; m³/s as entered. */
    double movedM3PerS(ExhaustDevice device, double depressurisationPa) {
        return fan(device).airflowM3PerS(depressurisationPa, air.fanPressureFactor());
    }

    /** Mass flow of a make-up unit at its airflow; kg/s. */
    double massFlowKgPerS(MakeUpUnit unit) {
        return unit.airflowM3PerS() * enteredKgPerM3(unit);
    }

    /** The temperature that a unit should deliver; it cannot cool. */
    double wantedC(MakeUpUnit unit) {
        return Math.max(unit.supplyTemperatureC(), input.outdoorTemperatureC());
    }

    /** Mass of what the devices that a unit follows move at their rated flow; kg/s. */
    double followedKgPerS(MakeUpUnit unit) {
        return input.devices().stream()
                        .filter(d -> unit.id().equals(d.makeUp()))
                        .mapToDouble(ExhaustDevice::airflowM3PerS)
                        .sum()
                * air.exhaustKgPerM3();
    }

    private static Fan fan(ExhaustDevice device) {
        Double drop = device.ductDropPa();
        return new Fan(device.airflowM3PerS(), device.shutOffPa(), drop == null ? 0 : drop);
    }

    private static boolean follows(ExhaustDevice device) {
        String makeUp = device.makeUp();
        return makeUp != null && !makeUp.isEmpty();
    }

    private double enteredKgPerM3(MakeUpUnit unit) {
        return air.enteredKgPerM3(
                unit.fanPlace() == FanPlace.BEFORE_HEATER ? input.outdoorTemperatureC() : wantedC(unit));
    }

    /** The density at which make-up air is summed: that of the first unit, else that of all sums. */
    private double makeUpKgPerM3() {
        return input.makeUpUnits().isEmpty()
                ? air.countKgPerM3()
                : enteredKgPerM3(input.makeUpUnits().get(0));
    }

    private double exhaustKgPerS(List<ExhaustDevice> on, double depressurisationPa, boolean fanCurves) {
        double sum = 0;
        for (ExhaustDevice device : on) {
            sum += fanCurves ? movedM3PerS(device, depressurisationPa) : device.airflowM3PerS();
        }
        Ventilator ventilator = input.ventilator();
        if (ventilator != null) {
            // surplus supply is not counted: it can stop while the exhaust runs on
            sum += Math.max(0, ventilator.netExhaustM3PerS());
        }
        return sum * air.exhaustKgPerM3();
    }

    private double makeUpKgPerS(List<ExhaustDevice> on) {
        return input.makeUpUnits().stream()
                .filter(unit -> started(unit.id(), on))
                .mapToDouble(this::massFlowKgPerS)
                .sum();
    }

    private static boolean started(String makeUp, List<ExhaustDevice> on) {
        return on.stream().anyMatch(d -> makeUp.equals(d.makeUp()));
    }

    private double leakKgPerS(double depressurisationPa, LeakBound bound) {
        boolean inwards = depressurisationPa >= 0;
        return envelope.airflowM3PerS(depressurisationPa)
                * bound.factor(input, depressurisationPa)
                * air.leakFactor(inwards, envelope.exponent())
                * air.leakKgPerM3(inwards);
    }

    private double openingsKgPerS(List<ExhaustDevice> on, boolean makeUpWorks, double depressurisationPa) {
        boolean inwards = depressurisationPa >= 0;
        double sum = 0;
        for (PassiveOpening opening : input.openings()) {
            boolean open = !opening.motorDamper() || (makeUpWorks && started(opening.id(), on));
            Opening hole = openings.get(opening.id());
            if (open && hole != null) {
                sum += hole.airflowM3PerS(depressurisationPa, air.leakKgPerM3(inwards), air.leakViscosityPaS(inwards));
            }
        }
        return sum * air.leakKgPerM3(inwards);
    }
}
