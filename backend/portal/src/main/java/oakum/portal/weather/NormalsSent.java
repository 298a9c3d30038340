package oakum.portal.weather;

import java.util.List;
import oakum.physics.weather.SyntheticYear;
import org.jspecify.annotations.Nullable;

/**
 * Monthly normals from which a synthetic year is made.
 *
 * @param source where they are from
 * @param attribution the licence and whom to name, or null
 * @param months twelve, January first
 */
public record NormalsSent(
        WeatherPlace place, String source, @Nullable String attribution, List<SyntheticYear.Month> months) {}
