package oakum.physics.calculation;

import java.util.List;

/** A calculation that would have no meaning with these inputs; says which field, which value and which range. */
public final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Violation> violations;

    public Refused(List<Violation> violations) {
        super(String.join(" ", violations.stream().map(Violation::sentence).toList()));
        this.violations = List.copyOf(violations);
    }

    public Refused(Violation violation) {
        this(List.of(violation));
    }

    /** A refusal of one field that is not about a single range. */
    public static Refused of(String field, String value, String sentence, Source source) {
        return new Refused(Violation.of(field, value, sentence, source.printed()));
    }

    public List<Violation> violations() {
        return violations;
    }
}
