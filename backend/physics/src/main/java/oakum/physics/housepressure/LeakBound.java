package oakum.physics.housepressure;

import org.jspecify.annotations.Nullable;

/**
 * Which envelope a balance is solved with: the one that was entered, or the ends of its 95 % interval.
 *
 * <p>The flow through the leaks is {@code Q = Q50 (Δp/50 Pa)^n}, so {@code ln Q = ln Q50 + n ln(Δp/50 Pa)} and an interval
 * ± u of Q50 and ± un of n makes ln Q uncertain by √(uln² + (un ln(Δp/50 Pa))²) (GUM, JCGM 100:2008, 5.1.2), with uln the
 * interval of ln Q50. Both are taken as independent: a fit gives a Q50 that rises with its n, because 50 Pa lies above the
 * middle of its pressures, and below 50 Pa that would make the interval narrower. No end leaves 0.5 to 1, between an
 * opening and a fine crack.
 */
enum LeakBound {
    AS_ENTERED(0),
    LEAST(-1),
    MOST(1);

    private static final double LEAST_EXPONENT = 0.5;
    private static final double MOST_EXPONENT = 1;

    private final int side;

    LeakBound(int side) {
        this.side = side;
    }

    /**
     * By how much the flow differs from the entered one.
     *
     * @param input with the intervals
     * @param depressurisationPa of either sign
     */
    double factor(HousePressureInput input, double depressurisationPa) {
        double flow = orNone(input.q50UncertaintyFraction());
        double overFifty = Math.log(Math.abs(depressurisationPa) / 50);
        double exponent = exponentWidth(input, side * overFifty > 0);
        // no flow at no pressure, whatever the exponent
        if (side == 0 || exponent == 0 || depressurisationPa == 0) {
            return 1 + side * flow;
        }
        return Math.exp(side * Math.hypot(Math.log1p(side * flow), exponent * overFifty));
    }

    /** How far the exponent may be off in one direction without leaving the range that leaks have. */
    private static double exponentWidth(HousePressureInput input, boolean larger) {
        double room = larger ? MOST_EXPONENT - input.exponent() : input.exponent() - LEAST_EXPONENT;
        return Math.min(orNone(input.exponentUncertainty()), room);
    }

    /** Whether there is an interval at all. */
    static boolean known(HousePressureInput input) {
        return orNone(input.q50UncertaintyFraction()) > 0 || orNone(input.exponentUncertainty()) > 0;
    }

    private static double orNone(@Nullable Double given) {
        return given == null ? 0 : given;
    }
}
