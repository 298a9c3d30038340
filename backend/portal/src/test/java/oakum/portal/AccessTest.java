package oakum.portal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.request;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import oakum.portal.houserecord.HouseFixtures;
import oakum.portal.houserecord.Houses;
import oakum.portal.people.Role;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.AbstractMockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.MockMultipartHttpServletRequestBuilder;
import org.springframework.test.web.servlet.request.RequestPostProcessor;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Walks every operation of the OpenAPI document with every role, with nobody, and with a stranger to the house. */
@PortalTest
class AccessTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final String HOUSE = "/api/v1/houses/{house}";
    private static final Map<Character, Role> LETTERS = Map.of(
            'P', Role.PRINCIPAL,
            'D', Role.DESIGNER,
            'S', Role.SITE_LEAD,
            'M', Role.MECHANICAL_CONTRACTOR,
            'F', Role.OFFICE_MANAGER,
            'W', Role.OWNER,
            'C', Role.CONSULTANT);

    @Autowired
    MockMvc http;

    @Autowired
    Houses houses;

    private JsonNode document;
    private String house;
    private String elsewhere;

    /** One operation of the document. */
    private record Operation(String method, String path, JsonNode declared) {
        @Override
        public String toString() {
            return method + " " + path;
        }
    }

    /** One line of the table; {@code roles} is null where only signing in is asked for. */
    private record Line(String method, String path, boolean open, Set<Role> roles) {
        boolean fits(Operation operation) {
            boolean below =
                    path.endsWith("/**") && (operation.path() + "/").startsWith(path.substring(0, path.length() - 2));
            return (below || operation.path().equals(path))
                    && (method.equals("*") || method.equals(operation.method()));
        }
    }

    @BeforeEach
    void twoHouses() throws Exception {
        document = JSON.readTree(
                http.perform(get("/api/v1/openapi")).andReturn().getResponse().getContentAsString(UTF_8));
        house = HouseFixtures.house(houses);
        elsewhere = HouseFixtures.house(houses);
    }

    @Test
    void every_role_gets_what_the_table_says_and_nobody_gets_anything() throws Exception {
        List<Line> table = table();
        SoftAssertions all = new SoftAssertions();
        Set<String> unsettled = new TreeSet<>();
        for (Operation operation : operations()) {
            Line line = table.stream()
                    .filter(l -> l.fits(operation))
                    .max(Comparator.<Line>comparingInt(l -> l.path().length())
                            .thenComparing(l -> !l.method().equals("*")))
                    .orElse(null);
            all.assertThat(line).as("%s needs a line in access.txt", operation).isNotNull();
            if (line == null) {
                continue;
            }
            MockHttpServletResponse anonymous = send(operation, SignedIn.nobody());
            all.assertThat(signedOut(anonymous))
                    .as("%s without signing in: %s", operation, anonymous.getStatus())
                    .isNotEqualTo(line.open());
            if (line.roles() == null) {
                unsettled.add(operation.toString());
            }
            for (Role role : Role.values()) {
                MockHttpServletResponse answer = send(operation, as(role, house));
                int status = answer.getStatus();
                String body = answer.getContentAsString(UTF_8);
                all.assertThat(status)
                        .as("%s as %s: %s", operation, role.label(), body)
                        .isLessThan(500);
                if (line.roles() != null) {
                    boolean refused = status == 403 || signedOut(answer);
                    all.assertThat(refused)
                            .as("%s as %s: %s %s", operation, role.label(), status, body)
                            .isNotEqualTo(line.open() || line.roles().contains(role));
                }
            }
        }
        all.assertAll();
        System.out.println(unsettled.size() + " operations with no more than signed-in in access.txt: " + unsettled);
    }

    @Test
    void a_house_that_is_not_shared_is_not_there() throws Exception {
        SoftAssertions all = new SoftAssertions();
        for (Operation operation : operations()) {
            if (!operation.path().startsWith(HOUSE)) {
                continue;
            }
            for (Role role : List.of(Role.OWNER, Role.CONSULTANT, Role.SITE_LEAD)) {
                MockHttpServletResponse answer = send(operation, SignedIn.as(role, elsewhere));
                all.assertThat(answer.getStatus())
                        .as("%s as %s of another house: %s", operation, role.label(), answer.getContentAsString(UTF_8))
                        .isEqualTo(404);
            }
        }
        all.assertAll();
    }

    private static RequestPostProcessor as(Role role, String house) {
        boolean perHouse = role == Role.OWNER || role == Role.CONSULTANT;
        return perHouse ? SignedIn.as(role, house) : SignedIn.as(role);
    }

    private static boolean signedOut(MockHttpServletResponse answer) throws IOException {
        return answer.getStatus() == 401 && answer.getContentAsString(UTF_8).contains("signed-out");
    }

    private List<Operation> operations() {
        List<Operation> found = new ArrayList<>();
        document.get("paths")
                .forEachEntry((path, methods) -> methods.forEachEntry((method, declared) -> {
                    if (declared.has("responses")) {
                        found.add(new Operation(method.toUpperCase(Locale.ROOT), path, declared));
                    }
                }));
        assertThat(found).hasSizeGreaterThan(10);
        return found;
    }

    private MockHttpServletResponse send(Operation operation, RequestPostProcessor who) throws Exception {
        String path = operation.path().replace("{house}", house);
        List<String> queries = new ArrayList<>();
        JsonNode parameters = operation.declared().path("parameters");
        for (JsonNode parameter : parameters) {
            String name = parameter.get("name").asString();
            JsonNode sample = sample(parameter.path("schema"));
            String value = sample.isContainer() ? "x1" : sample.asString();
            if (parameter.get("in").asString().equals("path")) {
                path = path.replace("{" + name + "}", name.equals("part") ? "air" : value);
            } else if (parameter.get("in").asString().equals("query")
                    && parameter.path("required").asBoolean(false)) {
                queries.add(name + "=" + value);
            }
        }
        URI uri = URI.create(path + (queries.isEmpty() ? "" : "?" + String.join("&", queries)));
        return http.perform(withBody(operation, uri)
                        .header("If-Match", "\"0\"")
                        .with(r -> {
                            r.setRemoteAddr("192.0.2.99");
                            return r;
                        })
                        .with(who))
                .andReturn()
                .getResponse();
    }

    private AbstractMockHttpServletRequestBuilder<?> withBody(Operation operation, URI uri) {
        HttpMethod method = HttpMethod.valueOf(operation.method());
        JsonNode content = operation.declared().at("/requestBody/content");
        JsonNode form = content.path("multipart/form-data").path("schema");
        if (!form.isMissingNode()) {
            MockMultipartHttpServletRequestBuilder request = multipart(method, uri);
            form.path("properties").forEachEntry((name, schema) -> {
                if (schema.path("format").asString("").equals("binary")) {
                    request.file(new MockMultipartFile(name, "x.jpg", "image/jpeg", new byte[] {1}));
                } else {
                    request.param(name, sample(schema).asString());
                }
            });
            return request;
        }
        MockHttpServletRequestBuilder request = request(method, uri);
        content.properties().stream().findFirst().ifPresent(type -> {
            boolean json = type.getKey().startsWith("application/json");
            JsonNode example = type.getValue().get("example");
            JsonNode body = example == null ? sample(type.getValue().path("schema")) : example;
            request.contentType(MediaType.parseMediaType(json ? "application/json" : type.getKey()))
                    .content(json ? body.toString() : "x");
        });
        return request;
    }

    /** The least that a schema takes. */
    private JsonNode sample(JsonNode schema) {
        if (schema.has("$ref")) {
            return sample(document.at(schema.get("$ref").asString().substring(1)));
        }
        for (String several : List.of("oneOf", "anyOf", "allOf")) {
            if (schema.has(several)) {
                return sample(schema.get(several).get(0));
            }
        }
        if (schema.has("enum")) {
            return schema.get("enum").get(0);
        }
        JsonNode type = schema.path("type");
        return switch (type.isArray() ? type.get(0).asString() : type.asString("object")) {
            case "string" ->
                JSON.getNodeFactory().stringNode(text(schema.path("format").asString("")));
            case "integer" ->
                JSON.getNodeFactory().numberNode(schema.path("minimum").asInt(1));
            case "number" ->
                JSON.getNodeFactory()
                        .numberNode(
                                schema.has("exclusiveMinimum")
                                        ? schema.get("exclusiveMinimum").asDouble() + 1
                                        : schema.path("minimum").asDouble(1));
            case "boolean" -> JSON.getNodeFactory().booleanNode(false);
            case "array" -> {
                ArrayNode array = JSON.createArrayNode();
                for (int i = 0; i < schema.path("minItems").asInt(0); i++) {
                    array.add(sample(schema.get("items")));
                }
                yield array;
            }
            default -> {
                ObjectNode object = JSON.createObjectNode();
                for (JsonNode name : schema.path("required")) {
                    object.set(name.asString(), sample(schema.get("properties").get(name.asString())));
                }
                yield object;
            }
        };
    }

    private static String text(String format) {
        return switch (format) {
            case "uuid" -> "00000000-0000-0000-0000-00000000abcd";
            case "date" -> "2026-05-14";
            case "date-time" -> "2026-05-14T12:00:00Z";
            default -> "x1";
        };
    }

    private static List<Line> table() throws IOException {
        List<Line> lines = new ArrayList<>();
        try (InputStream in = Objects.requireNonNull(AccessTest.class.getResourceAsStream("access.txt"))) {
            for (String line : new String(in.readAllBytes(), UTF_8).split("\n")) {
                if (!line.isBlank() && !line.startsWith("#")) {
                    String[] words = line.strip().split(" +");
                    lines.add(new Line(words[0], words[1], words[2].equals("open"), roles(words[2])));
                }
            }
        }
        return lines;
    }

    private static Set<Role> roles(String word) {
        return switch (word) {
            case "signed-in" -> null;
            case "open", "everybody" -> EnumSet.allOf(Role.class);
            case "nobody" -> EnumSet.noneOf(Role.class);
            default -> {
                Set<Role> roles = EnumSet.noneOf(Role.class);
                word.chars().forEach(letter -> roles.add(Objects.requireNonNull(LETTERS.get((char) letter), word)));
                yield roles;
            }
        };
    }
}
