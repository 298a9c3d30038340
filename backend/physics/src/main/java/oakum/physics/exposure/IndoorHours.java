package oakum.physics.exposure;

import java.time.temporal.ChronoUnit;
import java.util.function.IntToDoubleFunction;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.weather.HourlyWeather;

/** Temperature and vapour pressure inside, hour by hour. */
public final class IndoorHours {
    private static final Source MEASURED = Source.proposed("indoor air by the hour from readings");
    private static final int DAY_H = 24;

    private final double[] temperatureC;
    private final double[] vapourPressurePa;

    IndoorHours(double[] temperatureC, double[] vapourPressurePa) {
        this.temperatureC = temperatureC;
        this.vapourPressurePa = vapourPressurePa;
    }

    /**
     * Measured air, read like weather.
     *
     * @param readings hours of the air inside
     * @param weather hours outside that they go with
     * @throws Refused where readings do not cover every hour of the weather
     */
    public static IndoorHours measured(HourlyWeather readings, HourlyWeather weather) {
        int from = (int) ChronoUnit.HOURS.between(readings.start(), weather.start());
        if (from < 0 || from + weather.hours() > readings.hours()) {
            throw Refused.of(
                    "readings",
                    readings.start().toString(),
                    "Readings inside run from " + readings.start() + " to " + readings.time(readings.hours())
                            + "; the weather from " + weather.start() + " to " + weather.time(weather.hours())
                            + " is not covered.",
                    MEASURED);
        }
        double[] temperature = new double[weather.hours()];
        double[] vapour = new double[weather.hours()];
        for (int i = 0; i < temperature.length; i++) {
            temperature[i] = readings.temperatureC(from + i);
            vapour[i] = readings.vapourPressurePa(from + i);
        }
        return new IndoorHours(temperature, vapour);
    }

    /** Mean of the last 24 hours up to each; a whole year goes round, other weather begins with the hours it has. */
    static double[] dayMean(HourlyWeather weather, IntToDoubleFunction quantity) {
        int n = weather.hours();
        boolean round = weather.isWholeYear();
        double[] mean = new double[n];
        double sum = 0;
        int count = 0;
        if (round) {
            for (int i = n - DAY_H; i < n; i++) {
                sum += quantity.applyAsDouble(i);
                count++;
            }
        }
        for (int i = 0; i < n; i++) {
            sum += quantity.applyAsDouble(i);
            if (count == DAY_H) {
                sum -= quantity.applyAsDouble(Math.floorMod(i - DAY_H, n));
            } else {
                count++;
            }
            mean[i] = sum / count;
        }
        return mean;
    }

    public int hours() {
        return temperatureC.length;
    }

    public double temperatureC(int hour) {
        return temperatureC[hour];
    }

    public double vapourPressurePa(int hour) {
        return vapourPressurePa[hour];
    }
}
