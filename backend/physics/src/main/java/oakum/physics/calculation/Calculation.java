package oakum.physics.calculation;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/**
 * A calculation, declared once. Start with {@link #declare}.
 *
 * @param <I> the input record
 * @param <O> the output record
 */
public final class Calculation<I extends Record, O extends Record> {
    private final String id;
    private final String version;
    private final String title;
    private final String purpose;
    private final Class<I> inputType;
    private final Class<O> outputType;
    private final List<Equation> equations;
    private final List<Source> sources;
    private final List<Caution> cautions;
    private final String validation;
    private final Function<I, O> function;

    private Calculation(Declaration<I, O> d, Function<I, O> function) {
        this.id = d.id;
        this.version = d.version;
        this.title = d.title;
        this.purpose = d.purpose;
        this.inputType = d.inputType;
        this.outputType = d.outputType;
        this.equations = List.copyOf(d.equations);
        this.sources = List.copyOf(d.sources);
        List<Caution> all = new ArrayList<>(d.cautions);
        all.add(Caution.MODEL_LIMITS);
        this.cautions = List.copyOf(all);
        this.validation = d.validation;
        this.function = function;
    }

    /**
     * Begins a declaration.
     *
     * @param id kebab case, unique in the catalogue, never reused
     * @param version major.minor; any change of an answer needs another one
     * @param title what the trade calls it
     */
    public static <I extends Record, O extends Record> Declaration<I, O> declare(
            String id, String version, String title, Class<I> inputType, Class<O> outputType) {
        return new Declaration<>(id, version, title, inputType, outputType);
    }

    /**
     * Checks the limits and computes.
     *
     * @throws Refused where an input breaks a limit or the inputs contradict each other
     */
    public Answer<I, O> calculate(I input) {
        Limits.require(input);
        return Answer.of(this, input, function.apply(input));
    }

    /**
     * The answer that an output makes which was computed elsewhere: by a job that followed the same function step by step
     * and told how far it was.
     *
     * @param input checked against its limits before
     * @param output what the function gives for this input
     */
    public Answer<I, O> answer(I input, O output) {
        return Answer.of(this, input, output);
    }

    public String id() {
        return id;
    }

    public String version() {
        return version;
    }

    public String title() {
        return title;
    }

    /** One sentence: what it is for. */
    public String purpose() {
        return purpose;
    }

    public Class<I> inputType() {
        return inputType;
    }

    public Class<O> outputType() {
        return outputType;
    }

    public List<Field> inputs() {
        return Fields.of(inputType);
    }

    public List<Field> outputs() {
        return Fields.of(outputType);
    }

    public List<Equation> equations() {
        return equations;
    }

    public List<Source> sources() {
        return sources;
    }

    public List<Caution> cautions() {
        return cautions;
    }

    /** What outside the project it was tested against; says plainly where no published example was found. */
    public String validation() {
        return validation;
    }

    /** The worked examples beside the calculation; empty where none is published. */
    public List<WorkedExample> workedExamples() {
        return WorkedExample.of(inputType, id);
    }

    @Override
    public String toString() {
        return id + " " + version;
    }

    /** A declaration being written; ends with {@link #by}. */
    public static final class Declaration<I extends Record, O extends Record> {
        private final String id;
        private final String version;
        private final String title;
        private final Class<I> inputType;
        private final Class<O> outputType;
        private final List<Equation> equations = new ArrayList<>();
        private final List<Source> sources = new ArrayList<>();
        private final List<Caution> cautions = new ArrayList<>();
        private String purpose = "";
        private String validation = "";

        private Declaration(String id, String version, String title, Class<I> inputType, Class<O> outputType) {
            this.id = id;
            this.version = version;
            this.title = title;
            this.inputType = inputType;
            this.outputType = outputType;
        }

        public Declaration<I, O> purpose(String sentence) {
            this.purpose = sentence;
            return this;
        }

        /** Adds the next equation; equations are numbered in the order in which they are added. */
        public Declaration<I, O> equation(String text, Source source) {
            equations.add(Equation.of(equations.size() + 1, text, source));
            return this;
        }

        public Declaration<I, O> source(Source source) {
            sources.add(source);
            return this;
        }

        public Declaration<I, O> caution(Caution caution) {
            cautions.add(caution);
            return this;
        }

        public Declaration<I, O> validation(String sentence) {
            this.validation = sentence;
            return this;
        }

        public Calculation<I, O> by(Function<I, O> function) {
            return new Calculation<>(this, Objects.requireNonNull(function));
        }
    }
}
