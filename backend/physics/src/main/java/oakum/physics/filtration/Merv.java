package oakum.physics.filtration;

import java.util.OptionalInt;
import oakum.physics.calculation.Labelled;

/**
 * Filter grade from the composite efficiencies of ASHRAE Standard 52.2 in the size groups 0.30–1.0 µm (E1), 1.0–3.0 µm
 * (E2) and 3.0–10 µm (E3). Grades 1 to 4 depend on arrestance, which is not a size group: they are not given.
 */
public final class Merv {
    /** The least E1, E2, E3 (percent) of each grade from 16 downward; 0 where the edition asks nothing. */
    private static final int[][] RULES_2017 = {
        {16, 95, 95, 95},
        {15, 85, 90, 95},
        {14, 75, 90, 95},
        {13, 50, 85, 90},
        {12, 35, 80, 90},
        {11, 20, 65, 85},
        {10, 0, 50, 80},
        {9, 0, 35, 75},
        {8, 0, 20, 70},
        {7, 0, 0, 50},
        {6, 0, 0, 35},
        {5, 0, 0, 20},
    };

    private static final int[][] RULES_2007 = {
        {16, 95, 95, 95},
        {15, 85, 90, 90},
        {14, 75, 90, 90},
        {13, 0, 90, 90},
        {12, 0, 80, 90},
        {11, 0, 65, 85},
        {10, 0, 50, 85},
        {9, 0, 0, 85},
        {8, 0, 0, 70},
        {7, 0, 0, 50},
        {6, 0, 0, 35},
        {5, 0, 0, 20},
    };

    private static final double IN_WC_PA = 249.08891;

    private Merv() {}

    /** The edition whose table a grade follows; a grade without its edition says little. */
    public enum Edition implements Labelled {
        ED_2007("2007", "ASHRAE 52.2-2007 table 12-1, seen in print by the trade", RULES_2007),
        ED_2017("2017", "ASHRAE 52.2-2017 table 12-1, from memory", RULES_2017);

        private final String label;
        private final String source;
        private final int[][] rules;

        Edition(String label, String source, int[][] rules) {
            this.label = label;
            this.source = source;
            this.rules = rules;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return source;
        }
    }

    /**
     * The highest grade whose three efficiencies are reached.
     *
     * @param e1Fraction 0.30–1.0 µm, 0 to 1
     * @param e2Fraction 1.0–3.0 µm, 0 to 1
     * @param e3Fraction 3.0–10 µm, 0 to 1
     * @return 5 to 16, or empty below grade 5
     */
    public static OptionalInt grade(double e1Fraction, double e2Fraction, double e3Fraction, Edition edition) {
        for (int[] rule : edition.rules) {
            if (reaches(e1Fraction, rule[1]) && reaches(e2Fraction, rule[2]) && reaches(e3Fraction, rule[3])) {
                return OptionalInt.of(rule[0]);
            }
        }
        return OptionalInt.empty();
    }

    private static boolean reaches(double fraction, int percent) {
        // 0.35 * 100 is a hair below 35
        return fraction * 100 >= percent - 1e-9;
    }

    /**
     * Least final resistance of the laboratory test for a grade: this or twice the initial drop, whichever is greater.
     *
     * @param grade 1 to 16
     */
    public static double leastFinalResistancePa(int grade) {
        if (grade <= 4) {
            return 0.3 * IN_WC_PA;
        }
        if (grade <= 8) {
            return 0.6 * IN_WC_PA;
        }
        return (grade <= 12 ? 1.0 : 1.4) * IN_WC_PA;
    }
}
