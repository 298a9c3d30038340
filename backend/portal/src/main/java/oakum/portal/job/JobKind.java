package oakum.portal.job;

/** What does one kind of long work; a bean of the module that asks for it. */
public interface JobKind {
    /** Kebab case, never reused. */
    String kind();

    /**
     * Does the work as the portal itself; whoever asked was checked when it was asked for. May be run again from the
     * start after a crash, so it keeps nothing but what it returns.
     *
     * @return the result as JSON text
     * @throws JobFailed where there is no result; its sentence is shown
     */
    String run(JobWork work);
}
