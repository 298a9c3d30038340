package oakum.portal.job;

/** Long work came to no result, for a reason that a person can act on. */
public final class JobFailed extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /**
     * Says why.
     *
     * @param sentence whole, with where and when
     */
    public JobFailed(String sentence) {
        super(sentence);
    }
}
