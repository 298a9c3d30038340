package oakum.physics.weather;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;

/**
 * Every shelf of weather that is open in this process. A calculation takes the content hash of its weather as an input
 * and looks the hours up here. The same hash is always the same content, so such a calculation stays a function of its
 * inputs: which shelf holds the hours, and when it was opened, decides only whether they are found. The bundled years are
 * always there.
 */
public final class WeatherShelves {
    private static final Source LOOKED_UP = Source.proposed("weather is looked up by its content");
    private static final List<WeatherShelf> OPEN = new CopyOnWriteArrayList<>();

    private WeatherShelves() {}

    /** Opens a shelf; the bundled years are asked first, then the shelves in the order in which they were opened. */
    public static void open(WeatherShelf shelf) {
        OPEN.add(shelf);
    }

    /** Closes a shelf; one that is not open is passed over. */
    public static void close(WeatherShelf shelf) {
        OPEN.remove(shelf);
    }

    /**
     * The weather of this content.
     *
     * @param contentHash as {@link HourlyWeather#contentHash} gives it
     * @return empty where no open shelf has it
     * @throws IllegalStateException where a shelf answers with other weather than asked for
     */
    public static Optional<HourlyWeather> find(String contentHash) {
        Optional<HourlyWeather> found = Stream.concat(Stream.of(BundledYears.SHELF), OPEN.stream())
                .flatMap(shelf -> shelf.find(contentHash).stream())
                .findFirst();
        found.ifPresent(weather -> {
            if (!weather.contentHash().equals(contentHash)) {
                throw new IllegalStateException(
                        "A shelf gave " + weather.contentHash() + " where " + contentHash + " was asked for.");
            }
        });
        return found;
    }

    /**
     * The same for an input of a calculation.
     *
     * @param field pointer to the input, for the refusal
     * @throws Refused where no open shelf has it
     */
    public static HourlyWeather require(String field, String contentHash) {
        return find(contentHash)
                .orElseThrow(() -> Refused.of(
                        field,
                        contentHash,
                        "No weather of the content " + contentHash
                                + " is kept here; add the weather year first, or choose one that is kept.",
                        LOOKED_UP));
    }
}
