package oakum.portal.weather;

import jakarta.annotation.PostConstruct;
import jakarta.annotation.PreDestroy;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.WeatherShelf;
import oakum.physics.weather.WeatherShelves;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The firm's weather years as calculations look them up; the last used are held, about 0.8 MB each. */
@Component
class Shelf implements WeatherShelf {
    private static final int MOST_HELD = 16;
    private static final Pattern HASH = Pattern.compile(WeatherYear.PREFIX + "[0-9a-f]{64}");

    private final WeatherRows rows;
    private final Map<String, HourlyWeather> held = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, HourlyWeather> eldest) {
            return size() > MOST_HELD;
        }
    };

    Shelf(WeatherRows rows) {
        this.rows = rows;
    }

    @PostConstruct
    void open() {
        WeatherShelves.open(this);
    }

    @PreDestroy
    void close() {
        WeatherShelves.close(this);
    }

    @Override
    public Optional<HourlyWeather> find(String contentHash) {
        if (!HASH.matcher(contentHash).matches()) {
            return Optional.empty();
        }
        @Nullable HourlyWeather known;
        synchronized (held) {
            known = held.get(contentHash);
        }
        if (known != null) {
            return Optional.of(known);
        }
        Optional<HourlyWeather> read = rows.hours(contentHash.substring(WeatherYear.PREFIX.length()));
        read.ifPresent(weather -> {
            synchronized (held) {
                held.put(contentHash, weather);
            }
        });
        return read;
    }
}
