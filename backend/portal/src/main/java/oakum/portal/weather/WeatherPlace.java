package oakum.portal.weather;

import oakum.physics.weather.Place;

/**
 * Where weather is from.
 *
 * @param latitudeDeg north is positive
 * @param longitudeDeg east is positive
 * @param standardOffsetH hours ahead of UTC, without summer time
 */
public record WeatherPlace(
        String name, double latitudeDeg, double longitudeDeg, double altitudeM, double standardOffsetH) {
    static WeatherPlace of(Place place) {
        return new WeatherPlace(
                place.name(), place.latitudeDeg(), place.longitudeDeg(), place.altitudeM(), place.standardOffsetH());
    }

    Place place() {
        return new Place(name, latitudeDeg, longitudeDeg, altitudeM, standardOffsetH);
    }
}
