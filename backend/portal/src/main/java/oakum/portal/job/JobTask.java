package oakum.portal.job;

import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import oakum.portal.people.AsPortal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Runs a job on the instance that claimed it. */
@Configuration(proxyBeanMethods = false)
class JobTask {
    static final TaskDescriptor<Void> TASK = TaskDescriptor.of("job");
    /** A job that takes the portal down with it is not tried for ever. */
    static final int MOST_ATTEMPTS = 3;
    /** How often the database hears how far a job is. */
    private static final long TELL_EVERY_NS = Duration.ofMillis(300).toNanos();

    private static final Logger LOG = LoggerFactory.getLogger(JobTask.class);

    private final JobStore store;
    private final List<JobKind> kinds;
    private final Clock clock;

    JobTask(JobStore store, List<JobKind> kinds, Clock clock) {
        this.store = store;
        this.kinds = kinds;
        this.clock = clock;
    }

    @Bean
    OneTimeTask<Void> runJob() {
        return Tasks.oneTime(TASK)
                .onFailure(new FailureHandler.OnFailureRetryLater<>(Duration.ofSeconds(5)))
                .onDeadExecutionRevive()
                .execute((instance, context) -> run(UUID.fromString(instance.getId()), context));
    }

    private void run(UUID id, ExecutionContext context) {
        Optional<JobStore.Begun> begun = store.begin(id, clock.instant());
        if (begun.isEmpty()) {
            store.end(id, JobState.CANCELLED, null, null, clock.instant());
            return;
        }
        if (begun.get().attempts() > MOST_ATTEMPTS) {
            fail(
                    id,
                    "This work was begun " + MOST_ATTEMPTS + " times and each time the portal stopped before its end.");
            return;
        }
        Running running = new Running(id, begun.get(), context);
        try {
            String result = AsPortal.call(() -> kind(begun.get().kind()).run(running));
            if (running.goingDown()) {
                putBack(id);
            } else if (running.stopped) {
                store.end(id, JobState.CANCELLED, null, null, clock.instant());
            } else {
                store.end(id, JobState.DONE, null, result, clock.instant());
            }
        } catch (JobFailed e) {
            fail(id, String.valueOf(e.getMessage()));
        } catch (RuntimeException e) {
            if (running.goingDown()) {
                putBack(id);
            }
            LOG.error("job {} of kind {} broke off", id, begun.get().kind(), e);
            fail(id, "The computation broke off by a fault of the portal; the server's log says more.");
        }
    }

    /** The next instance that comes up goes on with it. */
    private void putBack(UUID id) {
        store.waitAgain(id);
        throw new IllegalStateException("going down; the job is put back");
    }

    private void fail(UUID id, String sentence) {
        store.end(id, JobState.FAILED, sentence, null, clock.instant());
    }

    private JobKind kind(String kind) {
        return kinds.stream()
                .filter(k -> k.kind().equals(kind))
                .findFirst()
                .orElseThrow(() -> new JobFailed("This portal no longer does work of the kind " + kind + "."));
    }

    private final class Running implements JobWork {
        private final UUID id;
        private final JobStore.Begun begun;
        private final ExecutionContext context;
        private long toldAtNs = System.nanoTime() - TELL_EVERY_NS;
        private boolean stopped;

        Running(UUID id, JobStore.Begun begun, ExecutionContext context) {
            this.id = id;
            this.begun = begun;
            this.context = context;
        }

        @Override
        public UUID id() {
            return id;
        }

        @Override
        public String house() {
            return begun.house();
        }

        @Override
        public String request() {
            return begun.request();
        }

        @Override
        public synchronized boolean goOn(double fraction, String step) {
            if (stopped || goingDown()) {
                return false;
            }
            long now = System.nanoTime();
            if (now - toldAtNs >= TELL_EVERY_NS) {
                toldAtNs = now;
                stopped = !store.goOn(id, fraction, step);
            }
            return !stopped;
        }

        boolean goingDown() {
            return context.getSchedulerState().isShuttingDown();
        }
    }
}
