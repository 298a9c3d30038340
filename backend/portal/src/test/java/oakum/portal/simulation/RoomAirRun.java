package oakum.portal.simulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Limits;
import oakum.physics.catalogue.Catalogue;
import org.springframework.stereotype.Component;

/**
 * A quick calculation as if it took long: 30 days of 10 ms each. At 31 °C it stops on the twelfth day, at 32 °C it has
 * 3,000 days.
 */
@Component
class RoomAirRun extends SimulationKind {
    static final String CALCULATION = "moist-air-state";
    private static final int STOPS_ON = 12;

    RoomAirRun(SimulationRows rows) {
        super(rows);
    }

    @Override
    public String kind() {
        return CALCULATION;
    }

    @Override
    void check(Map<String, String> inputs) {
        Limits.require(Canonical.read(calculation().inputType(), inputs));
    }

    @Override
    Simulated simulate(Map<String, String> inputs, Progress progress) {
        double dryBulbC = Double.parseDouble(inputs.get("dryBulbC"));
        int days = dryBulbC == 32 ? 3000 : 30;
        List<Tape.TapeDay> done = new ArrayList<>();
        List<Tape.TapeProfile> profiles = new ArrayList<>();
        for (int day = 0; day < days; day++) {
            if (dryBulbC == 31 && day == STOPS_ON) {
                return new Simulated(null, "It stopped in the room on day 12.", false, tape(done, true), profiles);
            }
            if (!progress.goOn((double) day / days, "Day " + day + ".")) {
                return new Simulated(null, null, true, tape(done, true), profiles);
            }
            sleep();
            LocalDate date = LocalDate.of(2001, 1, 1).plusDays(day % 365);
            done.add(new Tape.TapeDay(day, date, List.of(0.1), List.of(0.12), List.of(), List.of()));
            profiles.add(new Tape.TapeProfile(
                    day, date, 6, List.of(0.05), List.of(dryBulbC), List.of(0.4), List.of(900.0), List.of(1.0 + day)));
        }
        return new Simulated(answer(calculation(), inputs), null, false, tape(done, false), profiles);
    }

    private static void sleep() {
        try {
            Thread.sleep(10);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static Calculation<?, ?> calculation() {
        return Catalogue.find(CALCULATION).orElseThrow();
    }

    private static <I extends Record, O extends Record> Answer<I, O> answer(
            Calculation<I, O> calculation, Map<String, String> inputs) {
        return calculation.calculate(Canonical.read(calculation.inputType(), inputs));
    }

    private static Tape tape(List<Tape.TapeDay> days, boolean partial) {
        return new Tape(
                List.of(new Tape.TapeLayer("room", "Room", 0, 0.1)),
                List.of(),
                List.copyOf(days),
                days.size(),
                0,
                days.size() - 1,
                partial);
    }
}
