package oakum.physics.calculation;

/**
 * Where a formula, a limit or a value comes from.
 *
 * @param citation the document, with edition and clause or table
 * @param status how well it was seen
 */
public record Source(String citation, Status status) {
    /** How well a source was seen while writing. */
    public enum Status implements Labelled {
        SEEN("seen"),
        FROM_MEMORY("from memory"),
        COMPUTED("computed independently"),
        COMMON_PRACTICE("common practice, no published source"),
        PROPOSED("proposed here, no published source");

        private final String label;

        Status(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    public static Source seen(String citation) {
        return new Source(citation, Status.SEEN);
    }

    public static Source fromMemory(String citation) {
        return new Source(citation, Status.FROM_MEMORY);
    }

    public static Source commonPractice(String what) {
        return new Source(what, Status.COMMON_PRACTICE);
    }

    public static Source proposed(String what) {
        return new Source(what, Status.PROPOSED);
    }

    public String printed() {
        return status == Status.SEEN ? citation : citation + " (" + status.label() + ")";
    }
}
