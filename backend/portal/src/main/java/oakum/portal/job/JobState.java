package oakum.portal.job;

/** How it stands with a job. */
public enum JobState {
    WAITING,
    RUNNING,
    DONE,
    FAILED,
    CANCELLED;

    /** Whether nothing more will come of it. */
    public boolean ended() {
        return this == DONE || this == FAILED || this == CANCELLED;
    }
}
