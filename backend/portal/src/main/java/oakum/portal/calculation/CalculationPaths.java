package oakum.portal.calculation;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.RequestBody;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import oakum.physics.calculation.Calculation;
import oakum.physics.calculation.Field;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes one path for each calculation into the OpenAPI document, with schemas made from its declaration. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class CalculationPaths implements OpenApiCustomizer {
    private final Calculations calculations;
    private final JsonMapper json;

    CalculationPaths(Calculations calculations, JsonMapper json) {
        this.calculations = calculations;
        this.json = json;
    }

    @Override
    public void customise(OpenAPI document) {
        for (Calculation<?, ?> calculation : calculations.all()) {
            String name = Arrays.stream(calculation.id().split("-"))
                    .map(word -> Character.toUpperCase(word.charAt(0)) + word.substring(1))
                    .collect(Collectors.joining());
            document.getComponents()
                    .addSchemas(name + "Inputs", object(calculation.inputs()))
                    .addSchemas(name + "Outputs", object(calculation.outputs()))
                    .addSchemas(name + "Answer", answer(name));
            document.getPaths()
                    .addPathItem(
                            "/api/v1/calculations/" + calculation.id(),
                            new PathItem().post(operation(calculation, name)));
        }
    }

    private Operation operation(Calculation<?, ?> calculation, String name) {
        MediaType request = new MediaType().schema(reference(name + "Inputs"));
        calculation.workedExamples().stream()
                .findFirst()
                .ifPresent(example -> request.setExample(json.convertValue(
                        DeclarationJson.example(calculation, example).inputs(), Map.class)));
        return new Operation()
                .operationId("calculate" + name)
                .addTagsItem("calculation-controller")
                .summary(calculation.title())
                .description(calculation.purpose()
                        + calculation.cautions().stream()
                                .map(c -> "\n\n" + c.subject() + ": " + c.text())
                                .collect(Collectors.joining()))
                .requestBody(new RequestBody()
                        .required(true)
                        .content(new Content().addMediaType("application/json", request)))
                .responses(new ApiResponses()
                        .addApiResponse(
                                "200",
                                new ApiResponse()
                                        .description("The answer; nothing is stored.")
                                        .content(new Content()
                                                .addMediaType(
                                                        "application/json",
                                                        new MediaType().schema(reference(name + "Answer"))))));
    }

    private static Schema<?> answer(String name) {
        Schema<?> answer = new JsonSchema().typesItem("object");
        answer.addProperty("calculation", reference("NamedJson"));
        answer.addProperty("inputs", reference(name + "Inputs"));
        answer.addProperty("output", reference(name + "Outputs"));
        answer.addProperty("printed", reference(name + "Outputs"));
        answer.addProperty("notices", list(reference("NoticeJson")));
        answer.addProperty("cautions", list(reference("CautionJson")));
        answer.addProperty("rejected", new JsonSchema().typesItem("boolean"));
        answer.addProperty("copyCode", new JsonSchema().typesItem("string"));
        answer.setRequired(
                List.of("calculation", "inputs", "output", "printed", "notices", "cautions", "rejected", "copyCode"));
        return answer;
    }

    private static Schema<?> reference(String name) {
        return new JsonSchema().$ref("#/components/schemas/" + name);
    }

    @SuppressWarnings("unchecked") // the library's own subclass is raw
    private static Schema<?> list(Schema<?> items) {
        return new JsonSchema().typesItem("array").items(items);
    }

    private static Schema<?> object(List<Field> fields) {
        Schema<?> object = new JsonSchema().typesItem("object");
        for (Field field : fields) {
            object.addProperty(field.name(), schema(field));
            if (!field.optional()) {
                object.addRequiredItem(field.name());
            }
        }
        object.setAdditionalProperties(false);
        return object;
    }

    private static Schema<?> schema(Field field) {
        Schema<?> schema = switch (field.kind()) {
            case NUMBER -> number(field, "number");
            case INTEGER -> number(field, "integer");
            case NUMBERS -> list(number(field, "number"));
            case CHOICE -> choice(field);
            case YES_NO -> new JsonSchema().typesItem("boolean");
            case TEXT -> new JsonSchema().typesItem("string").maxLength(field.maxLength());
            case GROUP -> object(field.fields());
            case ROWS -> list(object(field.fields())).minItems(field.minRows()).maxItems(field.maxRows());
        };
        schema.setTitle(field.label());
        if (!field.help().isEmpty()) {
            schema.setDescription(field.help());
        }
        extend(schema, "x-symbol", field.symbol());
        return schema;
    }

    private static Schema<?> number(Field field, String type) {
        Schema<?> schema = new JsonSchema().typesItem(type);
        Double min = field.min();
        if (min != null && field.minExclusive()) {
            schema.setExclusiveMinimumValue(BigDecimal.valueOf(min));
        } else {
            schema.setMinimum(decimal(min));
        }
        schema.setMaximum(decimal(field.max()));
        Unit unit = field.unit();
        if (unit != null) {
            Map<String, Object> shown = new LinkedHashMap<>();
            shown.put("ucum", unit.ucum());
            shown.put("si", unit.si().symbol());
            shown.put("ip", unit.ip().symbol());
            schema.addExtension("x-unit", shown);
        }
        extend(schema, "x-limit-source", field.limitSource());
        extend(schema, "x-advised-source", field.advisedSource());
        extend(schema, "x-advised-minimum", field.advisedMin());
        extend(schema, "x-advised-maximum", field.advisedMax());
        if (field.step() > 0) {
            schema.addExtension("x-step", field.step());
        }
        return schema;
    }

    private static Schema<?> choice(Field field) {
        Schema<String> schema = new Schema<>();
        schema.addType("string");
        schema.setEnum(field.options().stream().map(Field.Option::id).toList());
        Map<String, String> labels = new LinkedHashMap<>();
        field.options().forEach(option -> labels.put(option.id(), option.label()));
        schema.addExtension("x-labels", labels);
        return schema;
    }

    private static void extend(Schema<?> schema, String name, @Nullable Object value) {
        if (value != null && !value.equals("")) {
            schema.addExtension(name, value);
        }
    }

    private static @Nullable BigDecimal decimal(@Nullable Double value) {
        return value == null ? null : BigDecimal.valueOf(value);
    }
}
