package oakum.physics.airtightness;

import oakum.physics.numerics.LineFit;
import oakum.physics.numerics.StudentT;

/**
 * A power law through measured flows: a straight line in logarithms, with its 95 % intervals (ASTM E779 annex, from
 * memory).
 *
 * @param line the line through ln Δp and ln Q
 * @param quantile Student's t for 95 % with count − 2 degrees of freedom
 */
record PowerLawFit(LineFit line, double quantile) {
    /**
     * Fits.
     *
     * @param pressurePa induced pressures, above 0, at least three and two different
     * @param airflowM3PerS flows, above 0
     * @param weighted whether each point weighs as its flow squared (CAN/CGSB-149.10, from memory) instead of as one
     */
    static PowerLawFit of(double[] pressurePa, double[] airflowM3PerS, boolean weighted) {
        int count = pressurePa.length;
        double[] x = new double[count];
        double[] y = new double[count];
        double[] weight = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = Math.log(pressurePa[i]);
            y[i] = Math.log(airflowM3PerS[i]);
            weight[i] = weighted ? airflowM3PerS[i] * airflowM3PerS[i] : 1;
        }
        return new PowerLawFit(LineFit.weighted(x, y, weight), StudentT.quantile(0.975, count - 2));
    }

    PowerLaw law() {
        return new PowerLaw(Math.exp(line.intercept()), line.slope());
    }

    /** Half width of the exponent's interval. */
    double exponentInterval() {
        return quantile * line.residualDeviation() / Math.sqrt(line.sxx());
    }

    /** Half width of the interval of ln C. */
    double logCoefficientInterval() {
        return quantile * line.standardErrorAt(0);
    }

    /** Half width of the interval of ln Q at a pressure. */
    double logAirflowInterval(double pressurePa) {
        return quantile * line.standardErrorAt(Math.log(pressurePa));
    }

    double squaredCorrelation() {
        return line.correlation() * line.correlation();
    }
}
