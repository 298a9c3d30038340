package oakum.physics.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import oakum.physics.calculation.Answer;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.WorkedExample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every calculation of the catalogue. */
class CatalogueTest {
    static Stream<Calculation<?, ?>> all() {
        return Catalogue.ALL.stream();
    }

    @Test
    void ids_are_unique_and_kebab_case() {
        List<String> ids = all().map(Calculation::id).toList();

        assertThat(ids).isNotEmpty().doesNotHaveDuplicates().allMatch(id -> id.matches("[a-z0-9]+(-[a-z0-9]+)*"));
    }

    @ParameterizedTest
    @MethodSource("all")
    void says_what_it_is_for_with_equations_sources_and_what_it_was_tested_against(Calculation<?, ?> calculation) {
        assertThat(calculation.version()).matches("\\d+\\.\\d+");
        assertThat(calculation.title()).isNotBlank();
        assertThat(calculation.purpose()).endsWith(".");
        assertThat(calculation.equations()).isNotEmpty().allSatisfy(e -> {
            assertThat(e.text()).isNotBlank();
            assertThat(e.source().citation()).isNotBlank();
        });
        assertThat(calculation.sources()).isNotEmpty();
        assertThat(calculation.cautions()).isNotEmpty();
        assertThat(calculation.validation()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("all")
    void every_quantity_ends_in_its_unit_and_every_limit_has_a_source(Calculation<?, ?> calculation) {
        List<Field> fields = new ArrayList<>();
        collect(calculation.inputs(), fields);
        collect(calculation.outputs(), fields);

        assertThat(fields).allSatisfy(field -> {
            assertThat(field.label()).as(field.name()).isNotBlank();
            Unit unit = field.unit();
            if (unit != null) {
                assertThat(field.name()).as("name ends in its unit").endsWith(unit.nameEnding());
            }
            if (field.min() != null || field.max() != null) {
                assertThat(field.limitSource())
                        .as(field.name() + " limit source")
                        .isNotBlank();
            }
            if (field.advisedMin() != null || field.advisedMax() != null) {
                assertThat(field.advisedSource())
                        .as(field.name() + " advised source")
                        .isNotBlank();
            }
        });
        assertThat(fields)
                .filteredOn(Field::leading)
                .allSatisfy(field -> assertThat(field.step())
                        .as(field.name() + " is leading and has a printed step")
                        .isPositive());
    }

    @ParameterizedTest
    @MethodSource("all")
    void has_a_worked_example_that_comes_out_as_published(Calculation<?, ?> calculation) {
        assertThat(calculation.workedExamples()).isNotEmpty().allSatisfy(example -> {
            assertThat(example.source()).isNotBlank();
            assertThat(example.status()).isNotBlank();
            assertThat(example.expected()).isNotEmpty();
            Map<String, String> output =
                    Canonical.flatten(calculate(calculation, example.inputs()).output());
            for (WorkedExample.Expected expected : example.expected()) {
                assertThat(output).as(example.id()).containsKey(expected.pointer());
                assertThat(expected.agrees(output.get(expected.pointer())))
                        .as(
                                "%s %s: %s expected %s %s",
                                calculation,
                                example.id(),
                                output.get(expected.pointer()),
                                expected.value(),
                                expected.tolerance())
                        .isTrue();
            }
        });
    }

    @ParameterizedTest
    @MethodSource("all")
    void flattening_and_reading_are_inverse(Calculation<?, ?> calculation) {
        for (WorkedExample example : calculation.workedExamples()) {
            Record input = Canonical.read(calculation.inputType(), example.inputs());

            assertThat((Object) Canonical.read(calculation.inputType(), Canonical.flatten(input)))
                    .isEqualTo(input);
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void refuses_beyond_each_limit_and_what_is_not_finite(Calculation<?, ?> calculation) {
        Map<String, String> good = calculation.workedExamples().get(0).inputs();
        Map<String, Field> byPointer = new HashMap<>();
        for (String pointer : good.keySet()) {
            find(calculation.inputs(), pointer).ifPresent(field -> byPointer.put(pointer, field));
        }

        byPointer.forEach((pointer, field) -> {
            if (field.kind() == Field.Kind.NUMBER) {
                refuses(calculation, good, pointer, "NaN");
                refuses(calculation, good, pointer, "Infinity");
                refuses(calculation, good, pointer, "-Infinity");
            }
            Double min = field.min();
            Double max = field.max();
            if (min != null) {
                double below = field.minExclusive() ? min : Math.nextDown(min);
                refuses(
                        calculation,
                        good,
                        pointer,
                        field.kind() == Field.Kind.INTEGER ? "" + (int) (min - 1) : "" + below);
            }
            if (max != null) {
                refuses(
                        calculation,
                        good,
                        pointer,
                        field.kind() == Field.Kind.INTEGER ? "" + (int) (max + 1) : "" + Math.nextUp(max));
            }
        });
    }

    private static void refuses(Calculation<?, ?> calculation, Map<String, String> good, String pointer, String value) {
        Map<String, String> bad = new LinkedHashMap<>(good);
        bad.put(pointer, value);
        assertThatThrownBy(() -> calculate(calculation, bad))
                .as("%s with %s = %s", calculation, pointer, value)
                .isInstanceOf(Refused.class);
    }

    static <I extends Record, O extends Record> Answer<I, O> calculate(
            Calculation<I, O> calculation, Map<String, String> inputs) {
        return calculation.calculate(Canonical.read(calculation.inputType(), inputs));
    }

    private static void collect(List<Field> fields, List<Field> into) {
        for (Field field : fields) {
            into.add(field);
            collect(field.fields(), into);
        }
    }

    private static java.util.Optional<Field> find(List<Field> fields, String pointer) {
        String first = pointer.split("[.\\[]", 2)[0];
        for (Field field : fields) {
            if (field.name().equals(first)) {
                int dot = pointer.indexOf('.');
                return field.fields().isEmpty() || dot < 0
                        ? java.util.Optional.of(field)
                        : find(field.fields(), pointer.substring(dot + 1));
            }
        }
        return java.util.Optional.empty();
    }
}
