package oakum.physics.checkrow;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestPlan;

/** Prints at the end of a run how many rows of each subject held, of how many there are. */
public final class CheckRowSummary implements TestExecutionListener {
    @Override
    public void testPlanExecutionFinished(TestPlan testPlan) {
        Map<String, int[]> subjects = new LinkedHashMap<>();
        for (String id : expected()) {
            int[] counts = subjects.computeIfAbsent(id.substring(0, id.lastIndexOf('-')), k -> new int[2]);
            counts[1]++;
            if (CheckRow.held().contains(id)) {
                counts[0]++;
            }
        }
        subjects.forEach(
                (subject, n) -> System.out.println("Check rows " + subject + ": " + n[0] + " of " + n[1] + " held"));
    }

    /** The rows that this project must show, one id a line. */
    static List<String> expected() {
        try (var in = CheckRowSummary.class.getResourceAsStream("/oakum/physics/check-rows.txt")) {
            if (in == null) {
                throw new IllegalStateException("check-rows.txt is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(String::strip)
                    .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
