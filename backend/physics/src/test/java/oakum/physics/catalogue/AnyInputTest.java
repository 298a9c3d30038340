package oakum.physics.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.WorkedExample;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever stands inside its limits is answered in finite numbers or refused with a reason, and never breaks. */
class AnyInputTest {
    private static final int TRIES = 100;

    static Stream<Calculation<?, ?>> all() {
        return Catalogue.ALL.stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void random_inputs_within_the_limits_are_answered_or_refused(Calculation<?, ?> calculation) {
        Random random = new Random(calculation.id().hashCode());
        for (int i = 0; i < TRIES; i++) {
            Map<String, String> inputs = new LinkedHashMap<>();
            fill(random, "", calculation.inputs(), inputs);
            answeredOrRefused(calculation, inputs);
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void a_worked_example_with_some_values_changed_is_answered_or_refused(Calculation<?, ?> calculation) {
        Random random = new Random(calculation.id().hashCode());
        for (int i = 0; i < tries(calculation); i++) {
            List<WorkedExample> examples = calculation.workedExamples();
            Map<String, String> inputs = new LinkedHashMap<>(
                    examples.get(random.nextInt(examples.size())).inputs());
            Map<String, String> other = new LinkedHashMap<>();
            fill(random, "", calculation.inputs(), other);
            inputs.replaceAll((pointer, value) -> random.nextInt(8) == 0 ? other.getOrDefault(pointer, value) : value);
            answeredOrRefused(calculation, inputs);
        }
    }

    /** Runs over years take seconds each; what random walls do to the solver is tested beside it. */
    private static int tries(Calculation<?, ?> calculation) {
        return switch (calculation.id()) {
            case "wall-moisture" -> 8;
            case "humidity-ceiling" -> 2;
            default -> TRIES;
        };
    }

    private static void answeredOrRefused(Calculation<?, ?> calculation, Map<String, String> inputs) {
        try {
            Answer<?, ?> answer = CatalogueTest.calculate(calculation, inputs);
            // a number that is not finite has no text, so this fails for it
            Canonical.flatten(answer.output());
            assertThat(answer.copyCode()).hasSize(7);
        } catch (Refused refused) {
            assertThat(refused.violations()).isNotEmpty().allSatisfy(v -> {
                assertThat(v.field()).isNotBlank();
                assertThat(v.sentence()).isNotBlank();
            });
        } catch (RuntimeException e) {
            fail(calculation + " broke on " + inputs, e);
        }
    }

    private static void fill(Random random, String prefix, List<Field> fields, Map<String, String> into) {
        for (Field field : fields) {
            if (field.optional() && random.nextBoolean()) {
                continue;
            }
            String pointer = prefix + field.name();
            switch (field.kind()) {
                case NUMBER -> into.put(pointer, Canonical.text(number(random, field)));
                case INTEGER -> into.put(pointer, Long.toString(Math.round(number(random, field))));
                case CHOICE ->
                    into.put(
                            pointer,
                            field.options()
                                    .get(random.nextInt(field.options().size()))
                                    .id());
                case YES_NO -> into.put(pointer, Boolean.toString(random.nextBoolean()));
                case TEXT -> into.put(pointer, "text " + random.nextInt(10));
                case GROUP -> fill(random, pointer + ".", field.fields(), into);
                case ROWS, NUMBERS -> {
                    int rows = Math.min(field.maxRows(), field.minRows() + random.nextInt(6));
                    for (int i = 0; i < rows; i++) {
                        String row = pointer + "[" + i + "]";
                        if (field.kind() == Field.Kind.ROWS) {
                            fill(random, row + ".", field.fields(), into);
                        } else {
                            into.put(row, Canonical.text(number(random, field)));
                        }
                    }
                }
            }
        }
    }

    private static double number(Random random, Field field) {
        Double least = field.min();
        Double most = field.max();
        double min = least == null ? -1e6 : least;
        double max = most == null ? 1e6 : most;
        double share = switch (random.nextInt(6)) {
            case 0 -> 0;
            case 1 -> 1;
            case 2 -> Math.pow(random.nextDouble(), 8);
            default -> random.nextDouble();
        };
        double value = min + share * (max - min);
        return field.minExclusive() && value <= min ? min + 1e-9 * (max - min) : value;
    }
}
