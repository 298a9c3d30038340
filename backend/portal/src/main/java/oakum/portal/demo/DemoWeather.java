package oakum.portal.demo;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import oakum.physics.weather.BundledYears;
import oakum.physics.weather.WeatherQuantity;
import oakum.portal.houserecord.HouseMeasures;
import oakum.portal.weather.NormalsSent;
import oakum.portal.weather.WeatherPlace;
import oakum.portal.weather.WeatherYears;
import org.springframework.stereotype.Component;

/**
 * Weather for the invented places: the climate Cold-A, as much colder or warmer in every month as the place's assumed
 * design temperature asks for.
 */
@Component
class DemoWeather {
    /** Share of the hours that are colder than a design temperature. */
    private static final double COLDER_FRACTION = 0.01;

    private final WeatherYears years;

    DemoWeather(WeatherYears years) {
        this.years = years;
    }

    /** Keeps the year of the house's place and gives its content hash. */
    String yearAt(HouseMeasures house) {
        double shiftK = Math.round(10 * (house.designOutdoorC() - coldHourC())) / 10.0;
        double offsetH = ZoneId.of(house.timeZone())
                        .getRules()
                        .getStandardOffset(Instant.EPOCH)
                        .getTotalSeconds()
                / 3600.0;
        String source = String.format(
                Locale.ROOT,
                "Cold-A, an invented climate, taken %.1f K %s in every month so that one hour in a hundred is colder than"
                        + " the assumed design temperature of %.0f °C; sun, wind, rain and relative humidity as in Cold-A",
                Math.abs(shiftK),
                shiftK < 0 ? "colder" : "warmer",
                house.designOutdoorC());
        return years.keep(new NormalsSent(
                        new WeatherPlace(
                                house.place(), house.latitudeDeg(), house.longitudeDeg(), house.altitudeM(), offsetH),
                        source,
                        "invented for the demo",
                        BundledYears.coldA(shiftK).months()))
                .year()
                .hash();
    }

    private static double coldHourC() {
        double[] temperatures = BundledYears.coldA().values(WeatherQuantity.AIR_TEMPERATURE);
        Arrays.sort(temperatures);
        return temperatures[(int) (COLDER_FRACTION * temperatures.length)];
    }
}
