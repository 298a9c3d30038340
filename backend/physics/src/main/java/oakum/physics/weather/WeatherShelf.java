package oakum.physics.weather;

import java.util.Optional;

/** Where weather is kept under what it contains. */
public interface WeatherShelf {
    /**
     * The weather of this content.
     *
     * @param contentHash as {@link HourlyWeather#contentHash} gives it
     * @return empty where it is not kept here
     */
    Optional<HourlyWeather> find(String contentHash);
}
