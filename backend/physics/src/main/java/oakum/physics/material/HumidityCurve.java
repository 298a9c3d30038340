package oakum.physics.material;

import java.util.Arrays;

/**
 * A positive value over the mean relative humidity of both faces: its logarithm runs straight between the points and
 * stays constant outside them (common practice for variable-permeance layers).
 */
public final class HumidityCurve {
    private final double[] humidity;
    private final double[] value;
    private final double[] ln;

    /**
     * @param humidityFraction rising, 0 to 1
     * @param value above 0, as many
     */
    HumidityCurve(double[] humidityFraction, double[] value) {
        this.humidity = humidityFraction;
        this.value = value;
        this.ln = Arrays.stream(value).map(Math::log).toArray();
    }

    /**
     * The value at a mean humidity.
     *
     * @param meanHumidityFraction of both faces
     */
    public double at(double meanHumidityFraction) {
        int last = humidity.length - 1;
        if (meanHumidityFraction <= humidity[0]) {
            return value[0];
        }
        for (int i = 1; i <= last; i++) {
            if (meanHumidityFraction < humidity[i]) {
                double share = (meanHumidityFraction - humidity[i - 1]) / (humidity[i] - humidity[i - 1]);
                return Math.exp(ln[i - 1] + share * (ln[i] - ln[i - 1]));
            }
        }
        return value[last];
    }

    /** The value of the driest point: the dry cup. */
    public double dry() {
        return value[0];
    }

    /** The value of the wettest point. */
    public double wettest() {
        return value[value.length - 1];
    }
}
