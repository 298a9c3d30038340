package oakum.portal.job;

import org.springframework.stereotype.Component;

/** Work for tests: counts to the number asked for, 20 ms each; "fail" fails, "break" breaks. */
@Component
class CountingKind implements JobKind {
    static final String KIND = "counting";

    @Override
    public String kind() {
        return KIND;
    }

    @Override
    public String run(JobWork work) {
        switch (work.request()) {
            case "\"fail\"" ->
                throw new JobFailed("No step converged in layer plywood, 6 mm deep, on 3 February 04:00.");
            case "\"break\"" -> throw new IllegalStateException("an inner secret");
            default -> {}
        }
        int n = Integer.parseInt(work.request());
        for (int i = 0; i < n && work.goOn((double) i / n, "Counted " + i + "."); i++) {
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return "";
            }
        }
        return "{\"counted\":" + n + "}";
    }
}
