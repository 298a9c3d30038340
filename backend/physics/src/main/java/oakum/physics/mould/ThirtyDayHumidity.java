package oakum.physics.mould;

import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;

/**
 * The running mean humidity of 30 days at a surface: the older criterion for mould (below 80 % wherever the mean
 * temperature of the same days is 5 to 40 °C, ASHRAE 160-2009) and the one for corrosion of metals (below 80 % at any
 * temperature). Days with a gap are judged once 30 days have gone by without one.
 */
public final class ThirtyDayHumidity extends HourSteps {
    /** The mean humidity that is not allowed to be reached. */
    public static final double LIMIT_FRACTION = 0.8;

    private static final int WINDOW_H = 30 * 24;
    private static final double COLDEST_C = 5;
    private static final double WARMEST_C = 40;

    private final double[] temperature = new double[WINDOW_H];
    private final double[] humidity = new double[WINDOW_H];
    private long hourCount;
    private double filledH;
    private double temperatureOfHour;
    private double humidityOfHour;
    private double temperatureSum;
    private double humiditySum;
    private double greatestJudged = Double.NaN;
    private double greatestJudgedAtH;
    private double greatestAny = Double.NaN;
    private long failedH;

    /**
     * Adds what the surface saw from the last end to this one.
     *
     * @param hoursSinceStart end of the stretch, after the last end; the first stretch begins at 0
     * @param temperatureC mean surface temperature of the stretch, −100 to 150
     * @param relativeHumidityFraction mean relative humidity at the surface, 0 to 2; above 1 counts as 1
     * @throws IllegalArgumentException where time does not go forward or a value is outside its range
     */
    public void add(double hoursSinceStart, double temperatureC, double relativeHumidityFraction) {
        walk(hoursSinceStart, temperatureC, relativeHumidityFraction, "relative humidity");
    }

    @Override
    void step(double startH, double lengthH, double temperatureC, double relativeHumidity) {
        temperatureOfHour += temperatureC * lengthH;
        humidityOfHour += Math.min(relativeHumidity, 1) * lengthH;
        filledH += lengthH;
        double endH = startH + lengthH;
        if (endH == Math.rint(endH)) {
            closeHour(endH);
        }
    }

    @Override
    void skipped(double startH, double endH) {
        hourCount = 0;
        temperatureSum = 0;
        humiditySum = 0;
        beginHour();
    }

    private void beginHour() {
        filledH = 0;
        temperatureOfHour = 0;
        humidityOfHour = 0;
    }

    private void closeHour(double endH) {
        int place = (int) (hourCount % WINDOW_H);
        if (hourCount >= WINDOW_H) {
            temperatureSum -= temperature[place];
            humiditySum -= humidity[place];
        }
        temperature[place] = temperatureOfHour / filledH;
        humidity[place] = humidityOfHour / filledH;
        temperatureSum += temperature[place];
        humiditySum += humidity[place];
        hourCount++;
        beginHour();
        if (hourCount >= WINDOW_H) {
            judge(endH, temperatureSum / WINDOW_H, humiditySum / WINDOW_H);
        }
    }

    private void judge(double endH, double meanC, double meanHumidity) {
        if (!(meanHumidity <= greatestAny)) {
            greatestAny = meanHumidity;
        }
        if (meanC < COLDEST_C || meanC > WARMEST_C) {
            return;
        }
        if (!(meanHumidity <= greatestJudged)) {
            greatestJudged = meanHumidity;
            greatestJudgedAtH = endH;
        }
        // sums that run for years carry their rounding: a hair above the limit is on it
        if (meanHumidity >= LIMIT_FRACTION - 1e-9) {
            failedH++;
        }
    }

    /** The greatest 30-day mean humidity with a mean of 5 to 40 °C, a fraction; null where there was none. */
    public @Nullable Double greatest() {
        return Double.isNaN(greatestJudged) ? null : (Double) greatestJudged;
    }

    /** The end of the 30 days of {@link #greatest}, hours since the start; 0 where there was none. */
    public double greatestAtHours() {
        return greatestJudgedAtH;
    }

    /** The greatest 30-day mean humidity at any temperature, for metals; null before 30 days have gone by. */
    public @Nullable Double greatestAtAnyTemperature() {
        return Double.isNaN(greatestAny) ? null : (Double) greatestAny;
    }

    /** Hours at whose end the criterion was broken. */
    public long failedHours() {
        return failedH;
    }

    /** Fails where broken once; not proven before the first 30 whole days without a gap. */
    public Verdict verdict() {
        if (failedH > 0) {
            return Verdict.FAILS;
        }
        return Double.isNaN(greatestAny) ? Verdict.NOT_PROVEN : Verdict.PASSES;
    }
}
