package oakum.physics.exposure;

import static oakum.physics.moistair.MoistAir.ZERO_C_IN_K;

import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.moistair.MoistAir;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.SkyTemperature;
import oakum.physics.weather.TiltedSurface;
import oakum.physics.weather.WeatherQuantity;

/**
 * The outside of a wall or roof.
 *
 * @param surface where it faces
 * @param absorptanceFraction share of the sun that it takes up, 0 to 1: 0.3 to 0.4 light, 0.7 to 0.85 dark
 * @param emissivityFraction for long-wave radiation, 0 to 1; 0.9 for most faces
 * @param skyViewFraction how much of what it sees is open sky, 0 to 1; see {@link #openSkyView}
 * @param film coefficient of heat transfer
 */
public record OutdoorFace(
        TiltedSurface surface,
        double absorptanceFraction,
        double emissivityFraction,
        double skyViewFraction,
        Film film) {
    private static final Source RANGES = Source.proposed("a share lies between 0 and 1, by definition");

    /** Refuses shares outside 0 to 1. */
    public OutdoorFace {
        share("absorptanceFraction", absorptanceFraction);
        share("emissivityFraction", emissivityFraction);
        share("skyViewFraction", skyViewFraction);
    }

    private static void share(String field, double value) {
        if (!(value >= 0 && value <= 1)) {
            throw Refused.of(field, Double.toString(value), field + " = " + value + " is outside 0 to 1.", RANGES);
        }
    }

    /** How the outer film is counted. */
    public sealed interface Film {
        /**
         * Combined coefficient, W/(m² K).
         *
         * @param windMPerS of the weather; not asked for where the film is constant
         */
        double combinedWPerM2K(double windMPerS, double airTemperatureC, double emissivityFraction);

        boolean needsWind();
    }

    /**
     * The same at all times.
     *
     * @param filmWPerM2K 17 to 25 for open air
     */
    public record ConstantFilm(double filmWPerM2K) implements Film {
        @Override
        public double combinedWPerM2K(double windMPerS, double airTemperatureC, double emissivityFraction) {
            return filmWPerM2K;
        }

        @Override
        public boolean needsWind() {
            return false;
        }
    }

    /**
     * Convection with the wind, 4 + 4 v (ISO 6946, from memory), and radiation at air temperature.
     *
     * @param windFraction wind at the face over wind of the weather, 0 to 1
     */
    public record WindFilm(double windFraction) implements Film {
        @Override
        public double combinedWPerM2K(double windMPerS, double airTemperatureC, double emissivityFraction) {
            double kelvin = airTemperatureC + ZERO_C_IN_K;
            double radiative = 4 * emissivityFraction * SkyTemperature.STEFAN_BOLTZMANN * kelvin * kelvin * kelvin;
            return 4 + 4 * windFraction * windMPerS + radiative;
        }

        @Override
        public boolean needsWind() {
            return true;
        }
    }

    /** What a face with nothing in front sees of the sky: half for a wall, all for a level roof. */
    public static double openSkyView(double tiltDeg) {
        return (1 + Math.cos(Math.toRadians(tiltDeg))) / 2;
    }

    /** Sky temperature of an hour: measured long-wave, else from dew point and cloud, else from dew point half cloudy. */
    static double skyC(HourlyWeather weather, int hour) {
        if (weather.has(WeatherQuantity.SKY_LONG_WAVE)) {
            return SkyTemperature.ofLongWaveC(weather.value(WeatherQuantity.SKY_LONG_WAVE, hour));
        }
        double dewPointC = MoistAir.dewPointC(Math.max(1, weather.vapourPressurePa(hour)), BelowFreezing.OVER_WATER);
        double cloud =
                weather.has(WeatherQuantity.CLOUD_FRACTION) ? weather.value(WeatherQuantity.CLOUD_FRACTION, hour) : 0.5;
        return SkyTemperature.ofEmissivityC(SkyTemperature.emissivity(dewPointC, cloud), weather.temperatureC(hour));
    }
}
