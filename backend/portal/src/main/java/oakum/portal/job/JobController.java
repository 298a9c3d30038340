package oakum.portal.job;

import io.swagger.v3.oas.annotations.Operation;
import jakarta.annotation.PreDestroy;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

@RestController
@RequestMapping("/api/v1/houses/{house}/jobs")
class JobController {
    private static final Duration LOOK_EVERY = Duration.ofMillis(400);
    private static final Duration STREAM_AT_MOST = Duration.ofMinutes(30);

    private final Jobs jobs;
    private final JobStore store;
    /** Looks at the jobs that somebody watches; the database knows how far they are, whichever instance runs them. */
    private final ScheduledExecutorService watch = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "job-watch");
        thread.setDaemon(true);
        return thread;
    });

    JobController(Jobs jobs, JobStore store) {
        this.jobs = jobs;
        this.store = store;
    }

    /** The last jobs of a house. */
    record JobList(List<Job> items) {}

    @Operation(summary = "Long work of a house, the newest first")
    @GetMapping
    JobList listJobs(@PathVariable String house) {
        return new JobList(jobs.list(house));
    }

    @Operation(summary = "How far a job is")
    @GetMapping("/{id}")
    Job getJob(@PathVariable String house, @PathVariable UUID id) {
        return jobs.get(house, id);
    }

    @Operation(summary = "Cancel a job")
    @PostMapping("/{id}/cancellation")
    Job cancelJob(@PathVariable String house, @PathVariable UUID id) {
        return jobs.cancel(house, id);
    }

    @Operation(summary = "How far a job is, as it goes: server-sent events named job, until it ends")
    @GetMapping(path = "/{id}/progress", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter watchJob(@PathVariable String house, @PathVariable UUID id) {
        Job first = jobs.get(house, id);
        SseEmitter stream = new SseEmitter(STREAM_AT_MOST.toMillis());
        AtomicReference<@Nullable Job> told = new AtomicReference<>();
        AtomicReference<@Nullable Future<?>> looking = new AtomicReference<>();
        Runnable stop = () -> {
            Future<?> future = looking.get();
            if (future != null) {
                future.cancel(false);
            }
        };
        stream.onCompletion(stop);
        stream.onTimeout(stream::complete);
        stream.onError(e -> stop.run());
        looking.set(watch.scheduleWithFixedDelay(
                () -> tell(stream, told, store.find(id).orElse(first)),
                0,
                LOOK_EVERY.toMillis(),
                TimeUnit.MILLISECONDS));
        return stream;
    }

    private static void tell(SseEmitter stream, AtomicReference<@Nullable Job> told, Job job) {
        try {
            if (!job.equals(told.getAndSet(job))) {
                stream.send(SseEmitter.event().name("job").data(job, MediaType.APPLICATION_JSON));
            }
            if (job.state().ended()) {
                stream.complete();
            }
        } catch (IOException | IllegalStateException gone) {
            // whoever listened has gone; the job goes on without them
            stream.completeWithError(gone);
        }
    }

    @PreDestroy
    void stop() {
        watch.shutdownNow();
    }
}
