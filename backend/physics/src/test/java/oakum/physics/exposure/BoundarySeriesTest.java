package oakum.physics.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.Place;
import oakum.physics.weather.SkyModel;
import oakum.physics.weather.TiltedSurface;
import oakum.physics.weather.WeatherQuantity;
import org.junit.jupiter.api.Test;

class BoundarySeriesTest {
    private static final Place PLACE = new Place("Somewhere cold", 45, -90, 200, -6);
    private static final int YEAR = HourlyWeather.HOURS_OF_YEAR;

    /** Cold nights, warm days, a westerly with rain, and a clear sky with sun from eight to four. */
    private static HourlyWeather weather(int hours, WeatherQuantity... without) {
        Map<WeatherQuantity, double[]> values = new EnumMap<>(WeatherQuantity.class);
        for (WeatherQuantity quantity : List.of(
                WeatherQuantity.AIR_TEMPERATURE,
                WeatherQuantity.VAPOUR_PRESSURE,
                WeatherQuantity.GLOBAL_HORIZONTAL,
                WeatherQuantity.DIRECT_NORMAL,
                WeatherQuantity.DIFFUSE_HORIZONTAL,
                WeatherQuantity.CLOUD_FRACTION,
                WeatherQuantity.WIND_SPEED,
                WeatherQuantity.WIND_DIRECTION,
                WeatherQuantity.PRECIPITATION)) {
            double[] hourly = new double[hours];
            for (int i = 0; i < hours; i++) {
                boolean day = i % 24 >= 8 && i % 24 < 16;
                hourly[i] = switch (quantity) {
                    case AIR_TEMPERATURE -> day ? 10 : 0;
                    case VAPOUR_PRESSURE -> 500;
                    case GLOBAL_HORIZONTAL -> day ? 300 : 0;
                    case DIRECT_NORMAL -> day ? 500 : 0;
                    case DIFFUSE_HORIZONTAL -> day ? 80 : 0;
                    case WIND_SPEED -> 4;
                    case WIND_DIRECTION -> 270;
                    case PRECIPITATION -> day ? 1 : 0;
                    default -> 0;
                };
            }
            values.put(quantity, hourly);
        }
        Arrays.asList(without).forEach(values::remove);
        return new HourlyWeather(PLACE, "made up", LocalDateTime.of(2001, 1, 1, 0, 0), values, List.of());
    }

    private static OutdoorFace wall(double facingDeg) {
        return new OutdoorFace(
                new TiltedSurface(90, facingDeg, 0.2, SkyModel.BRIGHT_SUN_AND_HORIZON),
                0.7,
                0.9,
                OutdoorFace.openSkyView(90),
                new OutdoorFace.ConstantFilm(17));
    }

    private static IndoorHours inside(HourlyWeather weather) {
        return new IndoorClimate.Constant(20, 0.4).over(weather);
    }

    private static BoundarySeries.Builder facing(double facingDeg) {
        HourlyWeather weather = weather(YEAR);
        return BoundarySeries.of(weather, wall(facingDeg), inside(weather));
    }

    @Test
    void a_south_wall_is_warmed_more_than_a_north_wall_and_the_night_sky_cools_both() {
        BoundarySeries south = facing(180).done();
        BoundarySeries north = facing(0).done();

        assertThat(south.hour(12).equivalentTemperatureC())
                .isGreaterThan(north.hour(12).equivalentTemperatureC() + 5);
        assertThat(north.hour(2).equivalentTemperatureC()).isBetween(-3.0, -0.5);
        assertThat(north.hour(2).irradianceWPerM2()).isZero();
        assertThat(south.hour(12).indoorVapourPressurePa())
                .isCloseTo(0.4 * Iso13788Saturation.pressurePa(20), within(1e-9));
    }

    @Test
    void rain_reaches_the_wall_that_the_wind_blows_at() {
        RainOnWall method = new AshraeRain(1, 0.5);

        assertThat(facing(270).withRain(method).done().hour(12).rainKgPerM2H()).isCloseTo(0.4, within(1e-12));
        assertThat(facing(90).withRain(method).done().hour(12).rainKgPerM2H()).isZero();
        assertThat(facing(270).done().hour(12).rainKgPerM2H()).isZero();
    }

    @Test
    void air_leaks_out_of_a_warm_house() {
        BoundarySeries leaking =
                facing(0).withLeak(new AirLeak(AirLeak.Tightness.ONE, 5)).done();

        assertThat(leaking.hour(0).leakM3PerSM2())
                .isGreaterThan(leaking.hour(12).leakM3PerSM2());
        assertThat(facing(0).done().hour(0).leakM3PerSM2()).isZero();
    }

    @Test
    void a_whole_year_goes_round_and_another_series_stays_at_its_end() {
        BoundarySeries year = facing(180).done();
        HourlyWeather few = weather(100);
        BoundarySeries days = BoundarySeries.of(few, wall(180), inside(few)).done();

        assertThat(year.hour(YEAR + 12)).isEqualTo(year.hour(12));
        assertThat(days.goesRound()).isFalse();
        assertThat(days.hour(100)).isEqualTo(days.hour(99));
    }

    @Test
    void what_the_weather_does_not_say_is_told_or_refused() {
        HourlyWeather dark = weather(
                48,
                WeatherQuantity.GLOBAL_HORIZONTAL,
                WeatherQuantity.DIRECT_NORMAL,
                WeatherQuantity.DIFFUSE_HORIZONTAL,
                WeatherQuantity.CLOUD_FRACTION,
                WeatherQuantity.WIND_DIRECTION);

        assertThat(BoundarySeries.of(dark, wall(0), inside(dark)).done().notices())
                .extracting(Notice::code)
                .contains("no-sun", "sky-half-cloudy");
        assertThatThrownBy(() -> BoundarySeries.of(dark, wall(0), inside(dark))
                        .withRain(new AshraeRain(1, 1))
                        .done())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("wind direction");
        assertThatThrownBy(() -> BoundarySeries.of(dark, wall(0), inside(weather(24))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("24 hours inside and 48 outside");
        assertThatThrownBy(() -> new OutdoorFace(
                        new TiltedSurface(90, 0, 0.2, SkyModel.BRIGHT_SUN_AND_HORIZON),
                        1.2,
                        0.9,
                        0.5,
                        new OutdoorFace.ConstantFilm(17)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("absorptanceFraction = 1.2");
    }

    @Test
    void the_indoor_class_follows_the_mean_of_the_last_day() {
        HourlyWeather weather = weather(YEAR);
        IndoorHours inside = new IndoorClimate.Classed(HumidityClass.DWELLING, 20).over(weather);
        double dayMeanC = 8 * 10.0 / 24;

        for (int hour : new int[] {0, 5, 12, YEAR - 1}) {
            assertThat(inside.vapourPressurePa(hour))
                    .isCloseTo(500 + HumidityClass.DWELLING.excessPa(dayMeanC), within(1e-6));
        }
    }
}
