package oakum.portal.calculation;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Caution;
import oakum.physics.calculation.Equation;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.WorkedExample;
import org.jspecify.annotations.Nullable;

/** Writes a declaration as a page of Markdown. */
final class CalculationPage {
    private final StringBuilder page = new StringBuilder();

    private CalculationPage() {}

    static String index(List<Calculation<?, ?>> calculations) {
        CalculationPage index = new CalculationPage();
        index.line("# Calculations");
        index.line("");
        index.line(
                "Written by a test from the declarations; each page gives inputs with their limits, equations, sources,");
        index.line("cautions and worked examples.");
        index.line("");
        index.row("Calculation", "Version", "What it is for");
        index.row("---", "---", "---");
        calculations.forEach(c -> index.row("[" + c.title() + "](" + c.id() + ".md)", c.version(), c.purpose()));
        return index.page.toString();
    }

    static String of(Calculation<?, ?> calculation) {
        CalculationPage page = new CalculationPage();
        page.write(calculation);
        return page.page.toString();
    }

    private void write(Calculation<?, ?> calculation) {
        line("# " + calculation.title());
        line("");
        line(calculation.purpose());
        line("");
        line("`" + calculation.id() + "`, version " + calculation.version() + ". Over HTTP: `POST /api/v1/calculations/"
                + calculation.id() + "`.");
        heading("Cautions");
        for (Caution caution : calculation.cautions()) {
            line("- **" + caution.subject() + ".** " + caution.text());
        }
        heading("Inputs");
        row("Name", "What", "Symbol", "Unit", "Refused outside", "Advised", "Source of the limits");
        row("---", "---", "---", "---", "---", "---", "---");
        inputs("", calculation.inputs());
        heading("Results");
        row("Name", "What", "Symbol", "Unit", "Printed to");
        row("---", "---", "---", "---", "---");
        outputs("", calculation.outputs());
        heading("Equations");
        if (calculation.equations().isEmpty()) {
            line("None: it follows the sources below step by step.");
        }
        for (Equation equation : calculation.equations()) {
            line("(" + equation.number() + ") `" + equation.text() + "`  ");
            line(cited(equation.source()));
            line("");
        }
        heading("Sources");
        calculation.sources().forEach(source -> line("- " + cited(source)));
        heading("What it was tested against");
        line(calculation.validation());
        heading("Worked examples");
        if (calculation.workedExamples().isEmpty()) {
            line("No published example was found.");
        }
        calculation.workedExamples().forEach(example -> example(calculation, example));
    }

    private void example(Calculation<?, ?> calculation, WorkedExample example) {
        line("### " + example.title());
        line("");
        line(example.source() + " (" + example.status() + ").");
        line("");
        row("Input", "Value");
        row("---", "---");
        example.inputs().forEach((pointer, value) -> row("`" + pointer + "`", value));
        line("");
        Map<String, String> computed = computed(calculation, example);
        row("Result", "Expected", "Tolerance", "Computed here");
        row("---", "---", "---", "---");
        for (WorkedExample.Expected expected : example.expected()) {
            row(
                    "`" + expected.pointer() + "`",
                    expected.value(),
                    expected.tolerance(),
                    computed.getOrDefault(expected.pointer(), "absent"));
        }
        line("");
    }

    private static <I extends Record, O extends Record> Map<String, String> computed(
            Calculation<I, O> calculation, WorkedExample example) {
        return Canonical.flatten(calculation
                .calculate(Canonical.read(calculation.inputType(), example.inputs()))
                .output());
    }

    private void inputs(String prefix, List<Field> fields) {
        for (Field field : fields) {
            row(
                    "`" + prefix + field.name() + "`" + (field.optional() ? " (may be left out)" : ""),
                    what(field),
                    field.symbol(),
                    unit(field),
                    limits(field),
                    range(field.advisedMin(), field.advisedMax(), false)
                            + (field.advisedSource().isEmpty() ? "" : ": " + field.advisedSource()),
                    field.limitSource());
            inputs(inside(prefix, field), field.fields());
        }
    }

    private void outputs(String prefix, List<Field> fields) {
        for (Field field : fields) {
            row(
                    "`" + prefix + field.name() + "`",
                    what(field),
                    field.symbol(),
                    unit(field),
                    field.step() > 0 ? Canonical.text(field.step()) : "");
            outputs(inside(prefix, field), field.fields());
        }
    }

    private static String inside(String prefix, Field field) {
        return prefix + field.name() + (field.kind() == Field.Kind.ROWS ? "[]." : ".");
    }

    private static String what(Field field) {
        String choices = field.options().stream()
                .map(o -> "`" + o.id() + "` " + o.label() + (o.source().isEmpty() ? "" : " (" + o.source() + ")"))
                .collect(Collectors.joining("; "));
        return field.label()
                + (field.help().isEmpty() ? "" : ". " + field.help())
                + (choices.isEmpty() ? "" : ". One of: " + choices);
    }

    private static String unit(Field field) {
        Unit unit = field.unit();
        return unit == null ? "" : unit.ucum();
    }

    private static String limits(Field field) {
        return field.kind() == Field.Kind.ROWS
                ? field.minRows() + " to " + field.maxRows() + " rows"
                : range(field.min(), field.max(), field.minExclusive());
    }

    private static String range(@Nullable Double min, @Nullable Double max, boolean minExclusive) {
        if (min != null && max != null) {
            return (minExclusive ? "above " : "") + Canonical.text(min) + " to " + Canonical.text(max);
        }
        if (min != null) {
            return (minExclusive ? "above " : "at least ") + Canonical.text(min);
        }
        return max == null ? "" : "at most " + Canonical.text(max);
    }

    private static String cited(Source source) {
        return source.citation() + " (" + source.status().label() + ").";
    }

    private void heading(String text) {
        if (!page.toString().endsWith("\n\n")) {
            line("");
        }
        line("## " + text);
        line("");
    }

    private void row(String... cells) {
        line(Arrays.stream(cells)
                .map(cell -> cell.replace("|", "\\|").replace("\n", " "))
                .collect(Collectors.joining(" | ", "| ", " |")));
    }

    private void line(String text) {
        page.append(text).append('\n');
    }
}
