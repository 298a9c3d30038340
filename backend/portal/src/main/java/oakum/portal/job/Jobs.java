package oakum.portal.job;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Asking for long work, looking at it, cancelling it. */
@Service
public class Jobs {
    private static final int LISTED = 100;

    private final JobStore store;
    private final ObjectProvider<SchedulerClient> scheduler;
    private final Access access;
    private final Audit audit;
    private final Clock clock;

    Jobs(JobStore store, ObjectProvider<SchedulerClient> scheduler, Access access, Audit audit, Clock clock) {
        this.store = store;
        this.scheduler = scheduler;
        this.access = access;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Asks for work. It is kept and scheduled in one transaction, so that what was acknowledged is done, also after a
     * crash. The module that asks decides who may.
     *
     * @param kind a {@link JobKind}
     * @param request what to do, as JSON text
     */
    @Transactional
    public Job ask(String kind, String house, String title, String request) {
        access.require(Permission.VIEW_HOUSE, house);
        Job job = new Job(
                UUID.randomUUID(),
                kind,
                house,
                title,
                access.caller().displayName(),
                clock.instant(),
                JobState.WAITING,
                0,
                "",
                null,
                null,
                null,
                List.of());
        store.add(job, request);
        // the scheduler compares with the real time, whatever day the portal's own clock shows
        scheduler
                .getObject()
                .schedule(
                        JobTask.TASK.instance(job.id().toString()).scheduledTo(Instant.now()),
                        SchedulerClient.ScheduleOptions.WHEN_EXISTS_DO_NOTHING);
        audit.record("job-asked", house, title + ".", "/api/v1/houses/" + house + "/jobs/" + job.id());
        return seen(job);
    }

    /** The last hundred of a house, the newest first. */
    @Transactional(readOnly = true)
    public List<Job> list(String house) {
        access.require(Permission.VIEW_HOUSE, house);
        return store.list(house, LISTED).stream().map(this::seen).toList();
    }

    /**
     * One job.
     *
     * @throws Problem 404
     */
    @Transactional(readOnly = true)
    public Job get(String house, UUID id) {
        access.require(Permission.VIEW_HOUSE, house);
        return seen(find(house, id));
    }

    /**
     * What came of it, as JSON text.
     *
     * @throws Problem 404, and 409 while there is no result
     */
    @Transactional(readOnly = true)
    public String result(String house, UUID id) {
        Job job = get(house, id);
        return store.result(id)
                .orElseThrow(() -> Problem.conflict(
                        "job-has-no-result",
                        job.failure() == null
                                ? "This work is " + job.state().name().toLowerCase(java.util.Locale.ROOT)
                                        + "; its result comes when it is done."
                                : job.failure()));
    }

    /** What was asked, as JSON text. */
    @Transactional(readOnly = true)
    public String request(String house, UUID id) {
        get(house, id);
        return store.request(id).orElseThrow(() -> Problem.notFound("job", id));
    }

    /**
     * Asks a job to stop.
     *
     * @throws Problem 404, and 409 where it has ended already
     */
    @Transactional
    public Job cancel(String house, UUID id) {
        access.require(Permission.EDIT_PROOF, house);
        Job job = find(house, id);
        if (!store.cancel(id, clock.instant())) {
            throw Problem.conflict("job-has-ended", "This work has ended already.");
        }
        audit.record("job-cancelled", house, job.title() + ".", "/api/v1/houses/" + house + "/jobs/" + id);
        return seen(find(house, id));
    }

    private Job find(String house, UUID id) {
        return store.find(id).filter(j -> j.house().equals(house)).orElseThrow(() -> Problem.notFound("job", id));
    }

    private Job seen(Job job) {
        boolean cancellable = !job.state().ended() && access.may(Permission.EDIT_PROOF, job.house());
        return new Job(
                job.id(),
                job.kind(),
                job.house(),
                job.title(),
                job.askedBy(),
                job.askedAt(),
                job.state(),
                job.doneFraction(),
                job.step(),
                job.startedAt(),
                job.endedAt(),
                job.failure(),
                cancellable ? List.of("cancel") : List.of());
    }
}
