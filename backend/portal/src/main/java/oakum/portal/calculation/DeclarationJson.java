package oakum.portal.calculation;

import java.util.List;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Equation;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.WorkedExample;
import tools.jackson.databind.JsonNode;

/** A calculation as it is declared: everything a form, a printed section or a docs page needs. */
public record DeclarationJson(
        String id,
        String version,
        String title,
        String purpose,
        List<FieldJson> inputs,
        List<FieldJson> outputs,
        List<EquationJson> equations,
        List<SourceJson> sources,
        List<CautionJson> cautions,
        String validation,
        List<ExampleJson> workedExamples) {

    /** One printed equation with the number of its place. */
    public record EquationJson(int number, String text, String mathml, SourceJson source) {}

    /** A citation and how well it was seen, in words. */
    public record SourceJson(String citation, String status) {
        static SourceJson of(Source source) {
            return new SourceJson(source.citation(), source.status().label());
        }
    }

    /** What can hurt someone; shown where the number is shown. */
    public record CautionJson(String subject, String text) {
        static CautionJson of(Caution caution) {
            return new CautionJson(caution.subject(), caution.text());
        }
    }

    /** A published or independently computed example, with inputs that can be sent as they are. */
    public record ExampleJson(
            String id, String title, String source, String status, JsonNode inputs, List<ExpectedJson> expected) {}

    /** What must come out, with its tolerance: "rel 1e-4", "abs 0.01" or "exact". */
    public record ExpectedJson(String pointer, String value, String tolerance) {}

    static DeclarationJson of(Calculation<?, ?> calculation) {
        return new DeclarationJson(
                calculation.id(),
                calculation.version(),
                calculation.title(),
                calculation.purpose(),
                FieldJson.of(calculation.inputs()),
                FieldJson.of(calculation.outputs()),
                calculation.equations().stream().map(DeclarationJson::equation).toList(),
                calculation.sources().stream().map(SourceJson::of).toList(),
                calculation.cautions().stream().map(CautionJson::of).toList(),
                calculation.validation(),
                calculation.workedExamples().stream()
                        .map(example -> example(calculation, example))
                        .toList());
    }

    private static EquationJson equation(Equation equation) {
        return new EquationJson(
                equation.number(), equation.text(), equation.mathml(), SourceJson.of(equation.source()));
    }

    static ExampleJson example(Calculation<?, ?> calculation, WorkedExample example) {
        return new ExampleJson(
                example.id(),
                example.title(),
                example.source(),
                example.status(),
                RecordJson.of(Canonical.read(calculation.inputType(), example.inputs())),
                example.expected().stream()
                        .map(e -> new ExpectedJson(e.pointer(), e.value(), e.tolerance()))
                        .toList());
    }
}
