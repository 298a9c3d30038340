package oakum.physics.weather;

import java.time.YearMonth;

/**
 * A smooth daily course through the year that keeps each monthly mean: one wave, and a periodic curve through what the
 * wave misses, whose nodes are moved until every month comes out as given.
 */
final class YearCurve {
    static final int DAYS = 365;
    private static final int MONTHS = 12;
    private static final int MOST_ROUNDS = 200;
    private static final double CLOSE_ENOUGH = 1e-6;
    private static final int[] FIRST_DAY = new int[MONTHS + 1];

    static {
        for (int m = 0; m < MONTHS; m++) {
            FIRST_DAY[m + 1] =
                    FIRST_DAY[m] + YearMonth.of(HourlyWeather.ANY_YEAR, m + 1).lengthOfMonth();
        }
    }

    private YearCurve() {}

    /** Month of a day, both from 0. */
    static int month(int day) {
        int month = 0;
        while (day >= FIRST_DAY[month + 1]) {
            month++;
        }
        return month;
    }

    static int daysOf(int month) {
        return FIRST_DAY[month + 1] - FIRST_DAY[month];
    }

    /**
     * Daily values whose monthly means are as given.
     *
     * @param monthly twelve of them
     */
    static double[] through(double[] monthly) {
        Harmonic wave = Harmonic.fit(monthly);
        double[] nodes = new double[MONTHS];
        double[] daily = daily(wave, nodes);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double worst = 0;
            for (int m = 0; m < MONTHS; m++) {
                double misses = monthly[m] - mean(daily, m);
                nodes[m] += misses;
                worst = Math.max(worst, Math.abs(misses));
            }
            if (worst < CLOSE_ENOUGH) {
                return daily;
            }
            daily = daily(wave, nodes);
        }
        throw new IllegalStateException("no curve keeps these monthly means");
    }

    static double mean(double[] daily, int month) {
        double sum = 0;
        for (int day = FIRST_DAY[month]; day < FIRST_DAY[month + 1]; day++) {
            sum += daily[day];
        }
        return sum / daysOf(month);
    }

    private static double[] daily(Harmonic wave, double[] nodes) {
        double[] daily = new double[DAYS];
        for (int day = 0; day < DAYS; day++) {
            int m = month(day);
            double months = m + (day + 0.5 - FIRST_DAY[m]) / daysOf(m);
            daily[day] = wave.at(months) + smooth(nodes, months - 0.5);
        }
        return daily;
    }

    /** Periodic cubic between the nodes, with the slope at each from its two neighbours. */
    private static double smooth(double[] nodes, double at) {
        int i = (int) Math.floor(at);
        double t = at - i;
        double p0 = nodes[Math.floorMod(i - 1, MONTHS)];
        double p1 = nodes[Math.floorMod(i, MONTHS)];
        double p2 = nodes[Math.floorMod(i + 1, MONTHS)];
        double p3 = nodes[Math.floorMod(i + 2, MONTHS)];
        return p1 + 0.5 * t * (p2 - p0 + t * (2 * p0 - 5 * p1 + 4 * p2 - p3 + t * (3 * (p1 - p2) + p3 - p0)));
    }
}
