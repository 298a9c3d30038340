package oakum.portal.demo;

/** The third filter of H3, which loads early after a board was sanded. */
final class DemoFilter {
    /** Clean drop at high flow, measured when the house was set to work and accepted since. */
    static final double CLEAN_HIGH_PA = 21.4;

    /** Load at the end of each week from 27 January 2026. */
    static final double[] LOAD_BY_WEEK = {
        1.00, 1.01, 1.03, 1.05, 1.07, 1.10, 1.12, 1.15, 1.17, 1.20, 1.23, 1.38, 1.47, 1.55, 1.63, 1.71
    };

    private DemoFilter() {}

    /** Load after so many weeks; beyond the last one it grows on as it last did. */
    static double loadAfter(double weeks) {
        int before = Math.min((int) weeks, LOAD_BY_WEEK.length - 2);
        return LOAD_BY_WEEK[before] + (LOAD_BY_WEEK[before + 1] - LOAD_BY_WEEK[before]) * (weeks - before);
    }
}
