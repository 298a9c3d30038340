package oakum.portal.http;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import io.swagger.v3.oas.models.servers.Server;
import java.util.List;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;

/** What holds for every operation of the OpenAPI document: how to sign in, and what a refusal looks like. */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
class OpenApiFrame implements OpenApiCustomizer {
    private static final String REFERENCE = "#/components/schemas/Problem";

    OpenApiFrame() {
        // a tree of JSON is an object to the reader, not a class with forty properties
        SpringDocUtils.getConfig().replaceWithSchema(JsonNode.class, new JsonSchema().typesItem("object"));
    }

    @Override
    public void customise(OpenAPI document) {
        document.info(
                new Info()
                        .title("Oakum")
                        .version("1")
                        .description(
                                "One record per house, from design through warranty. Numbers are SI and say their unit in"
                                        + " their name; instants are UTC. Every refusal is problem JSON (RFC 9457) with a stable code."));
        document.servers(List.of(new Server().url("/")));
        document.getComponents()
                .addSchemas("Problem", problem())
                .addSchemas("ProblemError", error())
                .addSecuritySchemes(
                        "session",
                        new SecurityScheme()
                                .type(SecurityScheme.Type.APIKEY)
                                .in(SecurityScheme.In.COOKIE)
                                .name("OAKUM_SESSION")
                                .description("From POST /api/v1/session; changes also need the header X-XSRF-TOKEN with"
                                        + " the value of the cookie XSRF-TOKEN."))
                .addSecuritySchemes(
                        "token",
                        new SecurityScheme()
                                .type(SecurityScheme.Type.HTTP)
                                .scheme("bearer")
                                .description("A token made under /api/v1/tokens; begins with oak_."));
        document.security(
                List.of(new SecurityRequirement().addList("session"), new SecurityRequirement().addList("token")));
        document.getPaths().values().stream()
                .flatMap(path -> path.readOperations().stream())
                .forEach(OpenApiFrame::refusals);
    }

    private static void refusals(Operation operation) {
        operation
                .getResponses()
                .addApiResponse(
                        "default",
                        new ApiResponse()
                                .description("A refusal; the code says which.")
                                .content(new Content()
                                        .addMediaType(
                                                "application/problem+json",
                                                new MediaType().schema(new JsonSchema().$ref(REFERENCE)))));
    }

    @SuppressWarnings("unchecked") // the library's own subclass is raw
    private static Schema<?> problem() {
        Schema<?> problem = new JsonSchema().typesItem("object");
        for (String name : List.of("type", "title", "detail", "code")) {
            problem.addProperty(name, new JsonSchema().typesItem("string"));
        }
        problem.addProperty("status", new JsonSchema().typesItem("integer"));
        problem.addProperty(
                "field",
                new JsonSchema()
                        .typesItem("string")
                        .description("The field concerned, such as exhaust[0].flowM3PerS."));
        problem.addProperty(
                "errors",
                new JsonSchema().typesItem("array").items(new JsonSchema().$ref("#/components/schemas/ProblemError")));
        problem.setRequired(List.of("type", "title", "status", "detail", "code"));
        return problem;
    }

    private static Schema<?> error() {
        Schema<?> error = new JsonSchema().typesItem("object");
        for (String name : List.of("field", "detail", "value", "unit", "source")) {
            error.addProperty(name, new JsonSchema().typesItem("string"));
        }
        for (String name : List.of("min", "max")) {
            error.addProperty(name, new JsonSchema().typesItem("number").typesItem("null"));
        }
        error.setRequired(List.of("field", "detail"));
        return error;
    }
}
