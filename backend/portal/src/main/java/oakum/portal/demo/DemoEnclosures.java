package oakum.portal.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Objects;
import oakum.portal.houserecord.EnclosurePart;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * The enclosures of the demo houses, written as a person would send them. Conductivities and vapour resistances are
 * plausible values from memory; details and holes are invented.
 */
@Component
class DemoEnclosures {
    private final JsonMapper json;

    DemoEnclosures(JsonMapper json) {
        this.json = json;
    }

    /** The enclosure of H1, H2 or H3. */
    EnclosurePart of(String houseId) {
        String name = "enclosure-" + houseId.toLowerCase(Locale.ROOT) + ".json";
        try (InputStream in = Objects.requireNonNull(DemoEnclosures.class.getResourceAsStream(name), name)) {
            return json.readValue(in, EnclosurePart.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
