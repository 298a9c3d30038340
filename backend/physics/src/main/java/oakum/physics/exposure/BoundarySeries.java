package oakum.physics.exposure;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.weather.HourlyWeather;
import oakum.physics.weather.SunCourse;
import oakum.physics.weather.WeatherQuantity;
import org.jspecify.annotations.Nullable;

/**
 * What surrounds a wall or roof, hour by hour: weather, orientation and indoor air joined. A series of a whole year goes
 * on for ever with its own first hour; another one ends with its last.
 */
public final class BoundarySeries {
    private static final Source JOINED = Source.proposed("hourly boundary of a wall: without sun in the weather none is"
            + " counted, without cloud the sky is taken as half cloudy");

    private final HourlyWeather weather;
    private final boolean round;
    private final double[] irradianceWPerM2;
    private final double[] skyC;
    private final double[] filmWPerM2K;
    private final double[] equivalentC;
    private final double[] rainKgPerM2H;
    private final double[] leakM3PerSM2;
    private final IndoorHours indoor;
    private final List<Notice> notices;

    private BoundarySeries(Builder builder) {
        weather = builder.weather;
        round = weather.isWholeYear();
        indoor = builder.indoor;
        int n = weather.hours();
        notices = new ArrayList<>(weather.notices());
        irradianceWPerM2 = irradiance(builder);
        skyC = new double[n];
        filmWPerM2K = new double[n];
        equivalentC = new double[n];
        rainKgPerM2H = rain(builder);
        leakM3PerSM2 = new double[n];
        OutdoorFace face = builder.face;
        if (!weather.has(WeatherQuantity.SKY_LONG_WAVE) && !weather.has(WeatherQuantity.CLOUD_FRACTION)) {
            notices.add(Notice.note(
                    "sky-half-cloudy",
                    "",
                    "The weather says nothing of clouds; the sky is taken as half cloudy.",
                    JOINED));
        }
        boolean windy = face.film().needsWind();
        for (int i = 0; i < n; i++) {
            double air = weather.temperatureC(i);
            double wind = windy ? weather.value(WeatherQuantity.WIND_SPEED, i) : 0;
            skyC[i] = OutdoorFace.skyC(weather, i);
            filmWPerM2K[i] = face.film().combinedWPerM2K(wind, air, face.emissivityFraction());
            equivalentC[i] = EquivalentTemperature.equivalentC(
                    air,
                    face.absorptanceFraction() * irradianceWPerM2[i],
                    EquivalentTemperature.skyLossWPerM2(
                            air, skyC[i], face.emissivityFraction(), face.skyViewFraction()),
                    filmWPerM2K[i]);
            leakM3PerSM2[i] = builder.leak == null ? 0 : builder.leak.airflowM3PerSM2(indoor.temperatureC(i), air);
        }
    }

    /** Joins weather, face and indoor air; rain and leaking air can be added. */
    public static Builder of(HourlyWeather weather, OutdoorFace face, IndoorHours indoor) {
        return new Builder(weather, face, indoor);
    }

    /** Joins what is there. */
    public static final class Builder {
        private final HourlyWeather weather;
        private final OutdoorFace face;
        private final IndoorHours indoor;
        private @Nullable RainOnWall rain;
        private @Nullable AirLeak leak;

        private Builder(HourlyWeather weather, OutdoorFace face, IndoorHours indoor) {
            if (indoor.hours() != weather.hours()) {
                throw Refused.of(
                        "indoor",
                        Integer.toString(indoor.hours()),
                        "There are " + indoor.hours() + " hours inside and " + weather.hours() + " outside.",
                        JOINED);
            }
            this.weather = weather;
            this.face = face;
            this.indoor = indoor;
        }

        /** Rain driven against the face; the weather must have precipitation, wind speed and direction. */
        public Builder withRain(RainOnWall method) {
            this.rain = method;
            return this;
        }

        /** Air that leaks in from inside. */
        public Builder withLeak(AirLeak airLeak) {
            this.leak = airLeak;
            return this;
        }

        /**
         * The series.
         *
         * @throws Refused where the weather lacks what the film or the rain needs
         */
        public BoundarySeries done() {
            return new BoundarySeries(this);
        }
    }

    private double[] irradiance(Builder builder) {
        if (!weather.has(WeatherQuantity.GLOBAL_HORIZONTAL)) {
            notices.add(Notice.advice("no-sun", "", "The weather has no sun; none is counted.", JOINED));
            return new double[weather.hours()];
        }
        return builder.face.surface().hourlyWPerM2(weather, SunCourse.over(weather));
    }

    private double[] rain(Builder builder) {
        double[] rain = new double[weather.hours()];
        if (builder.rain == null) {
            return rain;
        }
        for (int i = 0; i < rain.length; i++) {
            rain[i] = builder.rain.kgPerM2H(
                    weather.value(WeatherQuantity.WIND_SPEED, i),
                    weather.value(WeatherQuantity.WIND_DIRECTION, i)
                            - builder.face.surface().facingDeg(),
                    weather.value(WeatherQuantity.PRECIPITATION, i),
                    weather.temperatureC(i));
        }
        return rain;
    }

    /** Hours of the series; those of a whole year repeat. */
    public int hours() {
        return weather.hours();
    }

    /** Whether it goes on with its own first hour. */
    public boolean goesRound() {
        return round;
    }

    /** What was repaired in the weather or assumed here. */
    public List<Notice> notices() {
        return List.copyOf(notices);
    }

    /**
     * One hour.
     *
     * @param hour from 0; beyond the end a whole year repeats and another series stays at its last hour
     */
    public BoundaryHour hour(int hour) {
        int i = round ? hour % hours() : Math.min(hour, hours() - 1);
        return new BoundaryHour(
                weather.temperatureC(i),
                weather.vapourPressurePa(i),
                irradianceWPerM2[i],
                skyC[i],
                filmWPerM2K[i],
                equivalentC[i],
                rainKgPerM2H[i],
                indoor.temperatureC(i),
                indoor.vapourPressurePa(i),
                leakM3PerSM2[i]);
    }
}
