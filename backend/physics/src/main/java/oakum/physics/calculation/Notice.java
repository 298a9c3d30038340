package oakum.physics.calculation;

/**
 * Something a calculation says beside its numbers.
 *
 * @param code stable, in kebab case
 * @param weight how much it matters
 * @param field pointer to the input or output concerned; empty where it concerns the whole
 * @param sentence the whole sentence, with numbers and units
 * @param source where the rule comes from
 */
public record Notice(String code, Weight weight, String field, String sentence, Source source) {
    /** How much a notice matters. */
    public enum Weight implements Labelled {
        NOTE("note"),
        ADVICE("advice"),
        /** The result must not be used as evidence. */
        REJECTED("rejected");

        private final String label;

        Weight(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    public static Notice note(String code, String field, String sentence, Source source) {
        return new Notice(code, Weight.NOTE, field, sentence, source);
    }

    public static Notice advice(String code, String field, String sentence, Source source) {
        return new Notice(code, Weight.ADVICE, field, sentence, source);
    }

    public static Notice rejected(String code, String field, String sentence, Source source) {
        return new Notice(code, Weight.REJECTED, field, sentence, source);
    }
}
