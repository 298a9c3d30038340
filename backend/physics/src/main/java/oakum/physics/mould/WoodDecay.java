package oakum.physics.mould;

import org.jspecify.annotations.Nullable;

/**
 * Mass that brown rot takes from pine or spruce sapwood, fed with the climate as it goes by. A fungus has to settle
 * first (activation 0 to 1), and loses its hold over two dry years; mass lost does not come back.
 */
public final class WoodDecay extends HourSteps {
    private static final double LEAST_HUMIDITY_PERCENT = 95;
    private static final double WARMEST_C = 30;
    private static final double HOURS_TO_LOSE_HOLD = 17_520;
    private static final double HOURS_PER_MONTH = 30 * 24;

    private double activation;
    private double massLossPercent;
    private double favourableH;
    private double activeAtH = Double.NaN;

    /**
     * Adds what the wood saw from the last end to this one.
     *
     * @param hoursSinceStart end of the stretch, after the last end; the first stretch begins at 0
     * @param temperatureC mean temperature of the stretch, −100 to 150; the model is for 0 to 30, warmer counts as 30
     * @param relativeHumidityFraction mean relative humidity in the wood's pores, 0 to 2; above 1 counts as 1
     * @throws IllegalArgumentException where time does not go forward or a value is outside its range
     */
    public void add(double hoursSinceStart, double temperatureC, double relativeHumidityFraction) {
        walk(hoursSinceStart, temperatureC, relativeHumidityFraction, "relative humidity");
    }

    @Override
    void step(double startH, double lengthH, double temperatureC, double humidity) {
        double critical = hoursToSettle(temperatureC, humidity);
        if (critical == Double.POSITIVE_INFINITY) {
            activation = Math.max(activation - lengthH / HOURS_TO_LOSE_HOLD, 0);
            return;
        }
        favourableH += lengthH;
        activation = Math.min(activation + lengthH / critical, 1);
        if (activation >= 1) {
            if (Double.isNaN(activeAtH)) {
                activeAtH = startH + lengthH;
            }
            massLossPercent = Math.min(massLossPercent + lengthH * lossPercentPerHour(temperatureC, humidity), 100);
        }
    }

    /**
     * Hours in a climate that stays until decay runs.
     *
     * @return infinity where it never does: at or below 0 °C, up to 95 % relative humidity
     */
    public static double hoursToSettle(double temperatureC, double relativeHumidityFraction) {
        double t = Math.min(temperatureC, WARMEST_C);
        double rh = 100 * Math.min(relativeHumidityFraction, 1);
        if (t <= 0 || rh <= LEAST_HUMIDITY_PERCENT) {
            return Double.POSITIVE_INFINITY;
        }
        double denominator = -42.9 + 0.14 * t + 0.45 * rh;
        double numerator = 2.3 * t + 0.035 * rh - 0.024 * t * rh;
        return denominator > 0 && numerator > 0 ? numerator / denominator * HOURS_PER_MONTH : Double.POSITIVE_INFINITY;
    }

    /** Mass lost per hour once decay runs, % of the dry mass; 0 where it does not run. */
    public static double lossPercentPerHour(double temperatureC, double relativeHumidityFraction) {
        double t = Math.min(temperatureC, WARMEST_C);
        double rh = 100 * Math.min(relativeHumidityFraction, 1);
        if (t <= 0 || rh <= LEAST_HUMIDITY_PERCENT) {
            return 0;
        }
        return Math.max(-5.96e-2 + 1.96e-4 * t + 6.25e-4 * rh, 0);
    }

    /** How far a fungus has settled, 0 to 1; at 1 decay runs. */
    public double activation() {
        return activation;
    }

    /** Mass lost so far, 0 to 1 of the dry mass. */
    public double massLossFraction() {
        return massLossPercent / 100;
    }

    /** Hours in which decay could run or a fungus settle. */
    public double favourableHours() {
        return favourableH;
    }

    /** When decay first ran, hours since the start; null where it did not. */
    public @Nullable Double activeAtHours() {
        return Double.isNaN(activeAtH) ? null : (Double) activeAtH;
    }
}
