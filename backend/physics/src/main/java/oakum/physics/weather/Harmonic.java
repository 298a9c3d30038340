package oakum.physics.weather;

/**
 * One wave through the year, fitted to twelve monthly means by least squares. Months are taken equally long.
 *
 * @param mean of the year
 * @param amplitude half of what lies between warmest and coldest
 * @param peakMonths where it is highest, in months from the year's begin, 0 to 12
 */
record Harmonic(double mean, double amplitude, double peakMonths) {
    private static final int MONTHS = 12;

    static Harmonic fit(double[] monthly) {
        double sum = 0;
        double cosine = 0;
        double sine = 0;
        for (int i = 0; i < MONTHS; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / MONTHS;
            sum += monthly[i];
            cosine += monthly[i] * Math.cos(angle);
            sine += monthly[i] * Math.sin(angle);
        }
        double a = cosine * 2 / MONTHS;
        double b = sine * 2 / MONTHS;
        double peak = Math.atan2(b, a) * MONTHS / (2 * Math.PI);
        return new Harmonic(sum / MONTHS, Math.hypot(a, b), peak < 0 ? peak + MONTHS : peak);
    }

    /** Value at a time of the year, in months from its begin. */
    double at(double months) {
        return mean + amplitude * Math.cos(2 * Math.PI * (months - peakMonths) / MONTHS);
    }

    /** Root of the mean squared distance from the monthly means. */
    double rmse(double[] monthly) {
        double squares = 0;
        for (int i = 0; i < MONTHS; i++) {
            squares += Math.pow(monthly[i] - at(i + 0.5), 2);
        }
        return Math.sqrt(squares / MONTHS);
    }
}
