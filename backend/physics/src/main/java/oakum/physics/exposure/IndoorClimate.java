package oakum.physics.exposure;

import java.util.Arrays;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.weather.HourlyWeather;

/** The air inside, from the air outside. The mean of the last 24 hours outside is what counts, not the moment. */
public interface IndoorClimate {
    /**
     * Temperature inside, °C.
     *
     * @param outdoorDayMeanC mean of the last 24 hours
     */
    double temperatureC(double outdoorDayMeanC);

    /**
     * Vapour pressure inside, Pa.
     *
     * @param outdoorDayMeanC mean of the last 24 hours
     * @param outdoorVapourPressurePa mean of the last 24 hours
     */
    double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa);

    /**
     * The air inside in each hour of a weather.
     *
     * @return temperature °C and vapour pressure Pa, as {@link IndoorHours}
     */
    default IndoorHours over(HourlyWeather weather) {
        double[] meanC = IndoorHours.dayMean(weather, weather::temperatureC);
        double[] meanPa = IndoorHours.dayMean(weather, weather::vapourPressurePa);
        double[] temperature = Arrays.stream(meanC).map(this::temperatureC).toArray();
        double[] vapour = new double[meanC.length];
        for (int i = 0; i < vapour.length; i++) {
            // air cannot hold more than it can at its temperature
            vapour[i] = Math.min(vapourPressurePa(meanC[i], meanPa[i]), Iso13788Saturation.pressurePa(temperature[i]));
        }
        return new IndoorHours(temperature, vapour);
    }

    /**
     * The same all year.
     *
     * @param indoorTemperatureC −20 to 60
     * @param relativeHumidityFraction 0 to 1
     */
    record Constant(double indoorTemperatureC, double relativeHumidityFraction) implements IndoorClimate {
        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return indoorTemperatureC;
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return relativeHumidityFraction * Iso13788Saturation.pressurePa(indoorTemperatureC);
        }
    }

    /**
     * A humidity class of ISO 13788.
     *
     * @param indoorTemperatureC of the air inside
     */
    record Classed(HumidityClass humidityClass, double indoorTemperatureC) implements IndoorClimate {
        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return indoorTemperatureC;
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return outdoorVapourPressurePa + humidityClass.excessPa(outdoorDayMeanC);
        }
    }

    /** The humidity of EN 15026 Annex C, which follows the outdoor temperature alone. */
    enum Continental implements IndoorClimate, Labelled {
        NORMAL("normal moisture load", 0.30, 0.60),
        HIGH("high moisture load", 0.40, 0.70);

        static final Source SOURCE = Source.fromMemory("EN 15026:2007 Annex C, internal boundary conditions");
        private static final double COLD_C = -10;
        private static final double WARM_C = 20;

        private final String label;
        private final double coldFraction;
        private final double warmFraction;

        Continental(String label, double coldFraction, double warmFraction) {
            this.label = label;
            this.coldFraction = coldFraction;
            this.warmFraction = warmFraction;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return SOURCE.printed();
        }

        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return 20 + 5 * Math.max(0, Math.min(1, (outdoorDayMeanC - 10) / 10));
        }

        double relativeHumidity(double outdoorDayMeanC) {
            double share = Math.max(0, Math.min(1, (outdoorDayMeanC - COLD_C) / (WARM_C - COLD_C)));
            return coldFraction + share * (warmFraction - coldFraction);
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return relativeHumidity(outdoorDayMeanC) * Iso13788Saturation.pressurePa(temperatureC(outdoorDayMeanC));
        }
    }

    /**
     * The design temperature and the simplified humidity of ASHRAE 160, section 4.2.
     *
     * @param cooled whether the house is cooled in summer
     */
    record AshraeSimplified(boolean cooled) implements IndoorClimate {
        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return AshraeIndoor.temperatureC(outdoorDayMeanC, cooled);
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return AshraeIndoor.simplifiedHumidity(outdoorDayMeanC)
                    * Iso13788Saturation.pressurePa(temperatureC(outdoorDayMeanC));
        }
    }

    /**
     * The intermediate method of ASHRAE 160, section 4.3.2: what people give off against the air that is changed.
     *
     * @param cooled whether the house is cooled in summer
     * @param moistureKgPerS see {@link AshraeIndoor#generationKgPerS}
     * @param airflowM3PerS fresh air: volume times air change; above 0
     */
    record AshraeIntermediate(boolean cooled, double moistureKgPerS, double airflowM3PerS) implements IndoorClimate {
        @Override
        public double temperatureC(double outdoorDayMeanC) {
            return AshraeIndoor.temperatureC(outdoorDayMeanC, cooled);
        }

        @Override
        public double vapourPressurePa(double outdoorDayMeanC, double outdoorVapourPressurePa) {
            return outdoorVapourPressurePa + AshraeIndoor.excessPa(moistureKgPerS, airflowM3PerS);
        }
    }
}
