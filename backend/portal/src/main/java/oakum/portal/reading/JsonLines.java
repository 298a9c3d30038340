package oakum.portal.reading;

import java.io.IOException;
import java.io.Reader;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads {@code {"sensor":…,"at":…,"value":…}}, one object a line. */
final class JsonLines {
    private static final Set<String> MEMBERS = Set.of("sensor", "at", "value");
    private static final int LONGEST_LINE = 1 << 16;
    private static final int LONGEST_TEXT = 300;

    private final TableForm form;
    private final Map<String, KnownSensor> sensors;
    private final Rows rows;
    private final Taking taking;
    private final JsonMapper json;

    JsonLines(TableForm form, Map<String, KnownSensor> sensors, Rows rows, Clock clock, JsonMapper json) {
        this.form = form;
        this.sensors = sensors;
        this.rows = rows;
        this.taking = new Taking(rows, clock);
        this.json = json;
    }

    /**
     * Reads to the end.
     *
     * @throws Problem 400 for a line that is too long to be one
     */
    void read(Reader body) throws IOException {
        Map<String, TimeText.Order> orders = new HashMap<>();
        StringBuilder text = new StringBuilder();
        char[] buffer = new char[1 << 15];
        long number = 1;
        int read;
        while ((read = body.read(buffer)) >= 0) {
            for (int i = 0; i < read; i++) {
                if (buffer[i] == '\n') {
                    line(number++, text.toString(), orders);
                    text.setLength(0);
                } else if (text.length() < LONGEST_LINE) {
                    text.append(buffer[i]);
                } else {
                    throw new Problem(
                            HttpStatus.BAD_REQUEST,
                            "body-malformed",
                            "Line " + number + " is longer than " + LONGEST_LINE
                                    + " characters; write one object a line.");
                }
            }
        }
        line(number, text.toString(), orders);
    }

    private void line(long number, String text, Map<String, TimeText.Order> orders) throws IOException {
        if (text.isBlank()) {
            return;
        }
        String field = "";
        String value = shortened(text);
        try {
            JsonNode object = object(text);
            for (String name : object.propertyNames()) {
                if (!MEMBERS.contains(name)) {
                    field = name;
                    throw new Unreadable("not a member of a reading; it has sensor, at, value");
                }
            }
            field = "sensor";
            String key = text(object, field);
            value = key;
            KnownSensor sensor = sensors.get(key);
            if (sensor == null) {
                throw new Unreadable("this house has no sensor of that key");
            }
            field = "at";
            value = text(object, field);
            Instant at = form.time().parse(value, orders.computeIfAbsent(key, k -> new TimeText.Order()));
            taking.check(at);
            field = "value";
            JsonNode reading = object.get(field);
            value = reading == null ? "" : reading.toString();
            if (reading == null || !reading.isNumber()) {
                throw new Unreadable("not a JSON number");
            }
            taking.take(number, new TableForm.Target(sensor), at, reading.doubleValue());
        } catch (Unreadable e) {
            rows.refuse(number, field, shortened(value), e.reason(), shortened(text));
        }
    }

    private JsonNode object(String text) throws Unreadable {
        @Nullable JsonNode node;
        try {
            node = json.readTree(text);
        } catch (JacksonException e) {
            throw new Unreadable("not one whole JSON object");
        }
        if (node == null || !node.isObject()) {
            throw new Unreadable("not one whole JSON object");
        }
        return node;
    }

    private static String text(JsonNode object, String member) throws Unreadable {
        JsonNode node = object.get(member);
        if (node == null || !node.isString()) {
            throw new Unreadable("not a JSON text");
        }
        return node.stringValue();
    }

    private static String shortened(String text) {
        return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT) + "…";
    }
}
