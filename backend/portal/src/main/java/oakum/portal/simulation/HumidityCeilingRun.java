package oakum.portal.simulation;

import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import oakum.physics.calculation.Canonical;
import oakum.physics.hygrothermal.HumidityCeiling;
import oakum.physics.hygrothermal.HumidityCeilingResult;
import oakum.physics.hygrothermal.WallMoisture;
import oakum.physics.hygrothermal.WallMoistureInput;
import org.springframework.stereotype.Component;

/** The indoor humidity that a wall stands, found by several runs of years. */
@Component
class HumidityCeilingRun extends SimulationKind {
    private static final Tape NO_TAPE = new Tape(List.of(), List.of(), List.of(), 0, null, null, false);

    HumidityCeilingRun(SimulationRows rows) {
        super(rows);
    }

    @Override
    public String kind() {
        return HumidityCeiling.CALCULATION.id();
    }

    /** The first day of one run finds everything that the others can refuse. */
    @Override
    void check(Map<String, String> inputs) {
        WallMoisture.run(read(inputs), (hoursDone, hours) -> false);
    }

    @Override
    Simulated simulate(Map<String, String> inputs, Progress progress) {
        WallMoistureInput input = read(inputs);
        AtomicBoolean cancelled = new AtomicBoolean();
        HumidityCeilingResult result = HumidityCeiling.compute(input, (hoursDone, hours) -> {
            boolean on = progress.goOn((double) hoursDone / hours, "Runs of the wall, one after the other.");
            cancelled.compareAndSet(false, !on);
            return on;
        });
        return new Simulated(
                cancelled.get() ? null : HumidityCeiling.CALCULATION.answer(input, result),
                null,
                cancelled.get(),
                NO_TAPE,
                List.of());
    }

    private static WallMoistureInput read(Map<String, String> inputs) {
        return Canonical.read(WallMoistureInput.class, inputs);
    }
}
