package oakum.portal.simulation;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.hygrothermal.RunResult;
import oakum.physics.hygrothermal.WallMoisture;
import oakum.physics.hygrothermal.WallMoistureInput;
import oakum.physics.hygrothermal.WallTape;
import org.springframework.stereotype.Component;

/** Years of heat and moisture in a wall. */
@Component
class WallMoistureRun extends SimulationKind {
    private static final int DAYS_PER_YEAR = 365;
    private static final int HOURS_PER_DAY = 24;
    /** What a drawing can show; the answer itself is not rounded here. */
    private static final double DRAWN_K = 0.01;

    private static final double DRAWN_FRACTION = 1e-5;
    private static final double DRAWN_PA = 0.1;
    private static final double DRAWN_KG_PER_M3 = 0.001;
    private static final double DRAWN_M = 1e-5;

    WallMoistureRun(SimulationRows rows) {
        super(rows);
    }

    @Override
    public String kind() {
        return WallMoisture.CALCULATION.id();
    }

    /** The first day alone finds everything that a run can refuse. */
    @Override
    void check(Map<String, String> inputs) {
        WallMoisture.run(read(inputs), (hoursDone, hours) -> false);
    }

    @Override
    Simulated simulate(Map<String, String> inputs, Progress progress) {
        WallMoistureInput input = read(inputs);
        WallMoisture.Run run = WallMoisture.run(
                input,
                (hoursDone, hours) -> progress.goOn(
                        (double) hoursDone / hours,
                        "Day " + hoursDone / HOURS_PER_DAY + " of " + hours / HOURS_PER_DAY + "."));
        RunResult.Outcome outcome = run.solved().outcome();
        boolean finished = outcome == RunResult.Outcome.FINISHED;
        return new Simulated(
                finished ? WallMoisture.CALCULATION.answer(input, run.result()) : null,
                run.whyNotFinished(),
                outcome == RunResult.Outcome.CANCELLED,
                tape(run.tape(), !finished),
                run.tape().profiles().stream()
                        .map(profile -> profile(run.tape(), profile))
                        .toList());
    }

    private static WallMoistureInput read(Map<String, String> inputs) {
        return Canonical.read(WallMoistureInput.class, inputs);
    }

    private static Tape tape(WallTape tape, boolean partial) {
        List<RunResult.Profile> profiles = tape.profiles();
        return new Tape(
                tape.layers().stream()
                        .map(layer -> new Tape.TapeLayer(layer.id(), layer.label(), layer.fromM(), layer.thicknessM()))
                        .toList(),
                tape.planes(),
                tape.days().stream().map(day -> day(tape, day)).toList(),
                tape.days().size(),
                profiles.isEmpty() ? null : profiles.get(0).hour() / HOURS_PER_DAY,
                profiles.isEmpty() ? null : profiles.get(profiles.size() - 1).hour() / HOURS_PER_DAY,
                partial);
    }

    private static Tape.TapeDay day(WallTape tape, RunResult.Day day) {
        return new Tape.TapeDay(
                day.day(),
                date(tape, day.day()),
                drawn(day.layerMassPercent(), 0.01, DRAWN_FRACTION),
                drawn(day.layerWorstMassPercent(), 0.01, DRAWN_FRACTION),
                drawn(day.planeTemperatureC(), 1, DRAWN_K),
                drawn(day.planeHumidity(), 1, DRAWN_FRACTION));
    }

    private static Tape.TapeProfile profile(WallTape tape, RunResult.Profile profile) {
        int day = profile.hour() / HOURS_PER_DAY;
        return new Tape.TapeProfile(
                day,
                date(tape, day),
                profile.hour() % HOURS_PER_DAY,
                drawn(profile.depthM(), 1, DRAWN_M),
                drawn(profile.temperatureC(), 1, DRAWN_K),
                drawn(profile.humidity(), 1, DRAWN_FRACTION),
                drawn(profile.vapourPressurePa(), 1, DRAWN_PA),
                drawn(profile.waterKgPerM3(), 1, DRAWN_KG_PER_M3));
    }

    private static LocalDate date(WallTape tape, int day) {
        int dayOfYear = (tape.firstDay().getDayOfYear() - 1 + day) % DAYS_PER_YEAR + 1;
        return LocalDate.ofYearDay(tape.firstDay().getYear(), dayOfYear);
    }

    private static List<Double> drawn(List<Double> values, double factor, double step) {
        return values.stream()
                .map(value -> Canonical.toStep(factor * value, step))
                .toList();
    }
}
