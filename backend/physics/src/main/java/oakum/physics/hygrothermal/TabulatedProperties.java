package oakum.physics.hygrothermal;

import java.util.function.DoubleUnaryOperator;
import oakum.physics.moistair.Iso13788Saturation;

/**
 * Properties read from tables that are laid out once: whatever functions a material is described by, the solver's inner
 * loop costs the same few multiplications and no exponential. Between the points of a table runs a cubic with the
 * slopes of the harmonic mean (Fritsch and Butland 1984, SIAM J. Sci. Stat. Comput. 5), so that rising stays rising and
 * no kink is left over which an iteration could trip.
 *
 * <p>Beyond saturation water goes on rising in a straight line, so that a cell that is given more than it can bind keeps
 * it instead of losing it; all else stands still there.
 */
public final class TabulatedProperties implements LayerProperties {
    /** Temperature to which tables and the isotherm belong, °C (HAMSTAD and EN 15026 keep the isotherm at 293.15 K). */
    public static final double REFERENCE_C = 20;

    private static final int HUMIDITY_INTERVALS = 512;
    private static final int SUCTION_INTERVALS = 2048;
    private static final double LEAST_SUCTION_PA = 1;
    private static final double GREATEST_SUCTION_PA = 1e9;
    private static final double SUCTION_PER_LOG_HUMIDITY = Iso13788Saturation.suctionPa(REFERENCE_C, Math.exp(-1));

    /** Least rise of water over the whole coordinate, as a share of saturation: keeps the linear system regular. */
    private static final double LEAST_RISE = 1e-6;

    /** Beyond saturation a further tenth of relative humidity holds at least this many times the saturation. */
    private static final double OVERFULL_PER_TENTH = 2;

    private static final int WATER = 0;
    private static final int VAPOUR = 1;
    private static final int LIQUID = 2;
    private static final int HEAT = 3;
    private static final int HUMIDITY = 4;

    private final boolean suction;
    private final boolean liquid;
    private final int tables;
    private final int stride;
    private final int intervals;
    private final double first;
    private final double perInterval;

    /** For each interval and table the four coefficients of the cubic in the share of the interval passed. */
    private final double[] cubics;

    private final double saturation;
    private final double overfullSlope;
    private final double vapourPerK;
    private final double heatPerK;

    private TabulatedProperties(Description d, boolean suction) {
        this.suction = suction;
        intervals = suction ? SUCTION_INTERVALS : HUMIDITY_INTERVALS;
        first = suction ? -Math.log(GREATEST_SUCTION_PA) : 0;
        double last = suction ? -Math.log(LEAST_SUCTION_PA) : 1;
        perInterval = intervals / (last - first);
        tables = suction ? 5 : 4;
        stride = 4 * tables;
        cubics = new double[intervals * stride];
        double[][] values = new double[tables][intervals + 1];
        for (int k = 0; k <= intervals; k++) {
            double u = first + k / perInterval;
            double x = suction ? Math.exp(-u) : u;
            double humidity = suction ? Math.exp(-x / SUCTION_PER_LOG_HUMIDITY) : u;
            values[WATER][k] = d.water.applyAsDouble(x);
            values[VAPOUR][k] = d.vapourResistivity.applyAsDouble(x);
            values[LIQUID][k] = d.liquidPotential.applyAsDouble(x);
            values[HEAT][k] = 1 / d.conductivity.applyAsDouble(x);
            if (suction) {
                values[HUMIDITY][k] = humidity;
            }
        }
        saturation = values[WATER][intervals];
        liquid = values[LIQUID][intervals] > values[LIQUID][0];
        for (int k = 0; k <= intervals; k++) {
            values[WATER][k] += LEAST_RISE * saturation * k / intervals;
        }
        for (int table = 0; table < tables; table++) {
            lay(table, values[table]);
        }
        double steepest = slopeAtEnd(WATER);
        overfullSlope = suction ? steepest : Math.max(steepest, 10 * OVERFULL_PER_TENTH * saturation);
        vapourPerK = d.vapourPerK;
        heatPerK = d.conductivityPerK;
    }

    /** What a material is described by; arguments of all functions are the same: relative humidity, or suction in Pa. */
    public static final class Description {
        private final DoubleUnaryOperator water;
        private final DoubleUnaryOperator vapourResistivity;
        private final DoubleUnaryOperator liquidPotential;
        private final DoubleUnaryOperator conductivity;
        private double vapourPerK;
        private double conductivityPerK;

        /**
         * A material at {@value #REFERENCE_C} °C.
         *
         * @param water kg/m³, rising with humidity
         * @param vapourResistivity 1/δ, m s Pa/kg
         * @param liquidPotential kg/(m s), see {@link LayerProperties#liquidPotentialKgPerMS}
         * @param conductivity of heat, W/(m K)
         */
        public Description(
                DoubleUnaryOperator water,
                DoubleUnaryOperator vapourResistivity,
                DoubleUnaryOperator liquidPotential,
                DoubleUnaryOperator conductivity) {
            this.water = water;
            this.vapourResistivity = vapourResistivity;
            this.liquidPotential = liquidPotential;
            this.conductivity = conductivity;
        }

        /** Resistivity to vapour grows by this share of its value per kelvin; 1/293.15 where δ goes with 1/T. */
        public Description vapourResistivityGrowingPerK(double share) {
            vapourPerK = share;
            return this;
        }

        /** Conductivity of heat grows exponentially by this share per kelvin (f_T of ISO 10456). */
        public Description conductivityGrowingPerK(double share) {
            conductivityPerK = share;
            return this;
        }

        /** Lays the tables over relative humidity, 0 to 1: for materials described by a sorption curve. */
        public TabulatedProperties overHumidity() {
            return new TabulatedProperties(this, false);
        }

        /** Lays the tables over the logarithm of suction, 1 to 1e9 Pa: for materials described by a retention curve. */
        public TabulatedProperties overSuction() {
            return new TabulatedProperties(this, true);
        }
    }

    private void lay(int table, double[] y) {
        double[] rise = new double[intervals];
        for (int k = 0; k < intervals; k++) {
            rise[k] = y[k + 1] - y[k];
        }
        double[] slope = new double[intervals + 1];
        slope[0] = rise[0];
        slope[intervals] = rise[intervals - 1];
        for (int k = 1; k < intervals; k++) {
            double product = rise[k - 1] * rise[k];
            slope[k] = product > 0 ? 2 * product / (rise[k - 1] + rise[k]) : 0;
        }
        for (int k = 0; k < intervals; k++) {
            int at = k * stride + 4 * table;
            cubics[at] = y[k];
            cubics[at + 1] = slope[k];
            cubics[at + 2] = 3 * rise[k] - 2 * slope[k] - slope[k + 1];
            cubics[at + 3] = slope[k] + slope[k + 1] - 2 * rise[k];
        }
    }

    private double slopeAtEnd(int table) {
        int at = (intervals - 1) * stride + 4 * table;
        return perInterval * (cubics[at + 1] + 2 * cubics[at + 2] + 3 * cubics[at + 3]);
    }

    private double read(int table, double coordinate) {
        double x = (coordinate - first) * perInterval;
        int k = Math.max(0, Math.min(intervals - 1, (int) x));
        double f = Math.max(0, Math.min(1, x - k));
        int at = k * stride + 4 * table;
        return cubics[at] + f * (cubics[at + 1] + f * (cubics[at + 2] + f * cubics[at + 3]));
    }

    @Override
    public double coordinate(double relativeHumidityFraction) {
        if (!suction) {
            return relativeHumidityFraction;
        }
        double s = -SUCTION_PER_LOG_HUMIDITY * Math.log(relativeHumidityFraction);
        return -Math.log(Math.max(LEAST_SUCTION_PA, Math.min(GREATEST_SUCTION_PA, s)));
    }

    @Override
    public double relativeHumidity(double coordinate) {
        return suction ? Math.exp(-Math.exp(-coordinate) / SUCTION_PER_LOG_HUMIDITY) : coordinate;
    }

    @Override
    public double waterKgPerM3(double coordinate) {
        double beyond = coordinate - (first + intervals / perInterval);
        return read(WATER, coordinate) + Math.max(0, beyond) * overfullSlope;
    }

    @Override
    public double saturationKgPerM3() {
        return saturation;
    }

    @Override
    public double liquidPotentialKgPerMS(double coordinate) {
        return read(LIQUID, coordinate);
    }

    @Override
    public boolean carriesLiquid() {
        return liquid;
    }

    @Override
    public void evaluate(Cells cells, int from, int to) {
        double[] c = cubics;
        double h = perInterval;
        for (int i = from; i < to; i++) {
            double u = cells.coordinate[i];
            double x = (u - first) * h;
            int k = (int) x;
            if (k >= intervals || k < 0) {
                outside(cells, i);
                continue;
            }
            double f = x - k;
            int at = k * stride;
            cells.water[i] = c[at] + f * (c[at + 1] + f * (c[at + 2] + f * c[at + 3]));
            cells.waterSlope[i] = h * (c[at + 1] + f * (2 * c[at + 2] + 3 * f * c[at + 3]));
            at += 4;
            double rise = cells.temperatureC[i] - REFERENCE_C;
            double r = c[at] + f * (c[at + 1] + f * (c[at + 2] + f * c[at + 3]));
            double warmer = 1 + vapourPerK * rise;
            cells.vapourResistivity[i] = r * warmer;
            cells.vapourResistivityPerK[i] = r * vapourPerK;
            cells.vapourResistivitySlope[i] = warmer * h * (c[at + 1] + f * (2 * c[at + 2] + 3 * f * c[at + 3]));
            at += 4;
            cells.liquidPotential[i] = c[at] + f * (c[at + 1] + f * (c[at + 2] + f * c[at + 3]));
            cells.liquidPotentialSlope[i] = h * (c[at + 1] + f * (2 * c[at + 2] + 3 * f * c[at + 3]));
            at += 4;
            double z = heatPerK * rise;
            double cooler = cooling(z);
            double q = (c[at] + f * (c[at + 1] + f * (c[at + 2] + f * c[at + 3]))) * cooler;
            cells.heatResistivity[i] = q;
            cells.heatResistivityPerK[i] = -heatPerK * q;
            cells.heatResistivitySlope[i] = cooler * h * (c[at + 1] + f * (2 * c[at + 2] + 3 * f * c[at + 3]));
            if (suction) {
                at += 4;
                cells.humidity[i] = c[at] + f * (c[at + 1] + f * (c[at + 2] + f * c[at + 3]));
                cells.humiditySlope[i] = h * (c[at + 1] + f * (2 * c[at + 2] + 3 * f * c[at + 3]));
            } else {
                cells.humidity[i] = u;
                cells.humiditySlope[i] = 1;
            }
        }
    }

    /** exp(−z) for the small z of a temperature coefficient; within 1e-6 for |z| below 0.3. */
    private static double cooling(double z) {
        return 1 - z * (1 - z * (1.0 / 2 - z * (1.0 / 6 - z * (1.0 / 24 - z * (1.0 / 120)))));
    }

    private void outside(Cells cells, int i) {
        double u = cells.coordinate[i];
        double rise = cells.temperatureC[i] - REFERENCE_C;
        boolean wet = u > first;
        double beyond = wet ? u - (first + intervals / perInterval) : u - first;
        cells.waterSlope[i] = wet ? overfullSlope : h1(WATER);
        cells.water[i] = Math.max(0, (wet ? read(WATER, u) : cubics[0]) + beyond * cells.waterSlope[i]);
        double r = read(VAPOUR, u);
        cells.vapourResistivity[i] = r * (1 + vapourPerK * rise);
        cells.vapourResistivityPerK[i] = r * vapourPerK;
        cells.vapourResistivitySlope[i] = 0;
        // a slope is kept, so that a saturated row of cells still passes on what it is given
        cells.liquidPotentialSlope[i] = wet ? slopeAtEnd(LIQUID) : 0;
        cells.liquidPotential[i] = read(LIQUID, u) + (wet ? beyond * slopeAtEnd(LIQUID) : 0);
        double q = read(HEAT, u) * cooling(heatPerK * rise);
        cells.heatResistivity[i] = q;
        cells.heatResistivityPerK[i] = -heatPerK * q;
        cells.heatResistivitySlope[i] = 0;
        cells.humidity[i] = relativeHumidity(u);
        cells.humiditySlope[i] = suction ? Math.exp(-u) / SUCTION_PER_LOG_HUMIDITY * cells.humidity[i] : 1;
    }

    private double h1(int table) {
        return perInterval * cubics[4 * table + 1];
    }

    @Override
    public boolean limit(double[] from, double[] to, int first, int end) {
        boolean shortened = false;
        double most = suction ? 1.5 : 0.3;
        for (int i = first; i < end; i++) {
            double least = suction ? from[i] - most : Math.max(0.25 * from[i], from[i] - most);
            if (to[i] < least) {
                to[i] = least;
                shortened = true;
            } else if (to[i] > from[i] + most) {
                to[i] = from[i] + most;
                shortened = true;
            }
        }
        return shortened;
    }

    @Override
    public double coordinateWeightK() {
        return suction ? 1 : WallSolver.FULL_SCALE_K;
    }
}
