package oakum.physics.mould;

import oakum.physics.calculation.Labelled;

/**
 * How easily mould grows on a surface: four sensitivity classes of materials, and wood as the older model describes it.
 * The older model names species and surface; the classes take resawn pine as their measure.
 */
public enum MouldSurface implements Labelled {
    VERY_SENSITIVE("very sensitive: untreated pine sapwood", 1, 2, 1, 7, 2, 80),
    SENSITIVE("sensitive: planed wood, spruce, glued wood boards, paper faces", 0.578, 0.386, 0.3, 6, 1, 80),
    MEDIUM_RESISTANT("medium resistant: concrete, aerated concrete, mineral wool", 0.072, 0.097, 0, 5, 1.5, 85),
    RESISTANT("resistant: glass, metal, smooth foam", 0.033, 0.014, 0, 3, 1, 85),
    RESAWN_PINE("pine sapwood, resawn (model of 1999)", 0, 0),
    KILN_DRIED_PINE("pine sapwood, surface as kiln-dried (model of 1999)", 0, 1),
    RESAWN_SPRUCE("spruce sapwood, resawn (model of 1999)", 1, 0),
    KILN_DRIED_SPRUCE("spruce sapwood, surface as kiln-dried (model of 1999)", 1, 1);

    /** From here on the model grows nothing, as it grows nothing at or below 0 °C. */
    static final double TOO_WARM_C = 50;

    private static final double DAYS_PER_WEEK = 7;

    private final String label;
    private final boolean classed;
    private final double startFactor;
    private final double growthFactor;
    private final double a;
    private final double b;
    private final double c;
    private final double leastCriticalPercent;
    private final int spruce;
    private final int kilnDried;

    /** A sensitivity class. */
    MouldSurface(
            String label,
            double startFactor,
            double growthFactor,
            double a,
            double b,
            double c,
            double leastCriticalPercent) {
        this(label, true, startFactor, growthFactor, a, b, c, leastCriticalPercent, 0, 0);
    }

    /** Wood of the older model. */
    MouldSurface(String label, int spruce, int kilnDried) {
        this(label, false, 1, Double.NaN, 1, 7, 2, 80, spruce, kilnDried);
    }

    MouldSurface(
            String label,
            boolean classed,
            double startFactor,
            double growthFactor,
            double a,
            double b,
            double c,
            double leastCriticalPercent,
            int spruce,
            int kilnDried) {
        this.label = label;
        this.classed = classed;
        this.startFactor = startFactor;
        this.growthFactor = growthFactor;
        this.a = a;
        this.b = b;
        this.c = c;
        this.leastCriticalPercent = leastCriticalPercent;
        this.spruce = spruce;
        this.kilnDried = kilnDried;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return classed ? "sensitivity classes of 2010" : "model of 1999";
    }

    /**
     * The relative humidity from which mould can grow at a temperature.
     *
     * @param temperatureC above 0 to 50; below, nothing grows
     * @return a fraction, 0.8 or 0.85 to 1
     */
    public double criticalHumidityFraction(double temperatureC) {
        return criticalPercent(temperatureC) / 100;
    }

    /**
     * The index that growth approaches in a climate that stays.
     *
     * @param temperatureC above 0 to 50
     * @param relativeHumidityFraction critical humidity to 1; 0 is returned below it
     */
    public double greatestIndex(double temperatureC, double relativeHumidityFraction) {
        double critical = criticalPercent(temperatureC);
        double humidity = 100 * relativeHumidityFraction;
        if (!isFavourable(temperatureC, relativeHumidityFraction)) {
            return 0;
        }
        double x = (critical - humidity) / (critical - 100);
        return Math.max(a + b * x - c * x * x, 0);
    }

    /** Weeks until index 1 on this wood in a climate that stays; for a class, on the pine it is measured against. */
    public double weeksToFirstGrowth(double temperatureC, double relativeHumidityFraction) {
        return Math.exp(-0.68 * Math.log(temperatureC)
                - 13.9 * Math.log(100 * relativeHumidityFraction)
                + 0.14 * spruce
                - 0.33 * kilnDried
                + 66.02);
    }

    /** Weeks until index 3, which the eye sees; otherwise as {@link #weeksToFirstGrowth}. */
    public double weeksToVisibleGrowth(double temperatureC, double relativeHumidityFraction) {
        return Math.exp(-0.74 * Math.log(temperatureC)
                - 12.72 * Math.log(100 * relativeHumidityFraction)
                + 0.06 * spruce
                + 61.50);
    }

    /** Whether mould grows, which it does above 0 and below 50 °C from the critical humidity on. */
    boolean isFavourable(double temperatureC, double relativeHumidityFraction) {
        if (temperatureC <= 0 || temperatureC >= TOO_WARM_C) {
            return false;
        }
        double critical = criticalPercent(temperatureC);
        return critical < 100 && 100 * relativeHumidityFraction >= critical;
    }

    /** Growth of the index in a favourable climate, per day. */
    double growthPerDay(double index, double temperatureC, double relativeHumidityFraction) {
        double toFirst = weeksToFirstGrowth(temperatureC, relativeHumidityFraction);
        double slowing =
                Math.max(1 - Math.exp(2.3 * (index - greatestIndex(temperatureC, relativeHumidityFraction))), 0);
        double factor = startFactor;
        if (index >= 1) {
            factor = classed
                    ? growthFactor
                    : 2 / (weeksToVisibleGrowth(temperatureC, relativeHumidityFraction) / toFirst - 1);
        }
        return factor * slowing / (DAYS_PER_WEEK * toFirst);
    }

    private double criticalPercent(double temperatureC) {
        if (temperatureC > 20) {
            return leastCriticalPercent;
        }
        double cold = ((-0.00267 * temperatureC + 0.160) * temperatureC - 3.13) * temperatureC + 100;
        return Math.max(leastCriticalPercent, cold);
    }
}
