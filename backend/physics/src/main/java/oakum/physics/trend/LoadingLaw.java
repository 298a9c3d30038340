package oakum.physics.trend;

import java.util.Optional;
import oakum.physics.calculation.Labelled;
import oakum.physics.numerics.LineFit;
import oakum.physics.numerics.StudentT;

/**
 * How a filter fills, as a least-squares law over time: a straight line, or an exponential fitted as a straight line
 * through the logarithms (common practice). Better is the one with the smaller sum of squared residuals of the value
 * itself.
 *
 * @param form which law
 * @param line through the values, or through their logarithms
 * @param residualSquares of the values
 * @param lastDay of the readings
 * @param spanDays covered by the readings
 */
public record LoadingLaw(Form form, LineFit line, double residualSquares, double lastDay, double spanDays) {
    /** Shape of the law. */
    public enum Form implements Labelled {
        LINEAR("straight line"),
        EXPONENTIAL("exponential");

        private final String label;

        Form(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /**
     * When a limit is reached.
     *
     * @param day of the fitted law
     * @param earliest lower end of the interval
     * @param latest upper end, infinite where the slope is not certain enough to give one
     * @param guess whether the day lies beyond twice the span of the readings
     */
    public record Crossing(double day, double earliest, double latest, boolean guess) {}

    /**
     * Fits a law.
     *
     * @param day of each reading, at least three different
     * @param value of each, above 0
     */
    public static LoadingLaw of(Form form, double[] day, double[] value) {
        double[] y = value.clone();
        if (form == Form.EXPONENTIAL) {
            for (int i = 0; i < y.length; i++) {
                y[i] = Math.log(y[i]);
            }
        }
        LineFit line = LineFit.ordinary(day, y);
        double squares = 0;
        double first = day[0];
        double last = day[0];
        for (int i = 0; i < day.length; i++) {
            double fitted = form == Form.EXPONENTIAL ? Math.exp(line.at(day[i])) : line.at(day[i]);
            squares += (value[i] - fitted) * (value[i] - fitted);
            first = Math.min(first, day[i]);
            last = Math.max(last, day[i]);
        }
        return new LoadingLaw(form, line, squares, last, last - first);
    }

    /** Whichever law fits better. */
    public static LoadingLaw better(double[] day, double[] value) {
        LoadingLaw linear = of(Form.LINEAR, day, value);
        LoadingLaw exponential = of(Form.EXPONENTIAL, day, value);
        return exponential.residualSquares < linear.residualSquares ? exponential : linear;
    }

    public double at(double day) {
        return form == Form.EXPONENTIAL ? Math.exp(line.at(day)) : line.at(day);
    }

    /**
     * When the law reaches a limit, with the interval in which the confidence band of the line does: the roots of
     * {@code line(t) ± T s √(1/N + (t − t̄)²/S) = limit}.
     *
     * @param limit above 0
     * @param confidence two-sided, above 0 and below 1
     * @return empty where the law does not rise
     */
    public Optional<Crossing> reaches(double limit, double confidence) {
        double slope = line.slope();
        if (!(slope > 0)) {
            return Optional.empty();
        }
        double target = form == Form.EXPONENTIAL ? Math.log(limit) : limit;
        double day = (target - line.intercept()) / slope;
        double half = line.count() > 2
                ? StudentT.quantile((1 + confidence) / 2, line.count() - 2) * line.residualDeviation()
                : 0;
        // u = t − t̄ solves (slope² − half²/S) u² + 2 slope A u + A² − half²/N = 0, A the line at t̄ less the limit
        double offset = line.at(line.meanX()) - target;
        double square = slope * slope - half * half / line.sxx();
        double constant = offset * offset - half * half / line.count();
        double root = Math.sqrt(Math.max(0, slope * slope * offset * offset - square * constant));
        double earliest;
        double latest;
        if (square > 0) {
            earliest = line.meanX() + (-slope * offset - root) / square;
            latest = line.meanX() + (-slope * offset + root) / square;
        } else {
            // too flat for the scatter: at most the early side is bounded
            earliest = offset < 0 ? line.meanX() + constant / (-slope * offset + root) : Double.NEGATIVE_INFINITY;
            latest = Double.POSITIVE_INFINITY;
        }
        return Optional.of(new Crossing(day, earliest, latest, day - (lastDay - spanDays) > 2 * spanDays));
    }
}
