package oakum.physics.exposure;

import static oakum.physics.moistair.MoistAir.ZERO_C_IN_K;

import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Source;
import oakum.physics.moistair.Iso13788Saturation;

/**
 * Indoor air that the stack effect presses through the small leaks of a wall, and the moisture it leaves where it passes
 * a cold plane (Künzel, Zirkelbach and Schafaczek 2012, Modelling the effect of air leakage in hygrothermal envelope
 * simulation; from memory).
 *
 * @param tightness of the envelope
 * @param airHeightM height of the connected air inside, 0 to 100
 */
public record AirLeak(Tightness tightness, double airHeightM) {
    static final Source SOURCE = Source.fromMemory("Künzel, Zirkelbach and Schafaczek 2012, Modelling the effect of"
            + " air leakage in hygrothermal envelope simulation");

    private static final double GRAVITY_M_PER_S2 = 9.81;
    private static final double DENSITY_TIMES_KELVIN = 353;
    private static final double SECONDS_PER_HOUR = 3600;

    /** What a tightness test found; only a share of all leaks passes slowly enough to leave moisture. */
    public enum Tightness implements Labelled {
        ONE("about 1 m³/(h·m²) at 50 Pa, or tighter", 0.004),
        THREE("about 3 m³/(h·m²) at 50 Pa", 0.007),
        FIVE("about 5 m³/(h·m²) at 50 Pa", 0.010);

        private final String label;
        private final double coefficient;

        Tightness(String label, double coefficient) {
            this.label = label;
            this.coefficient = coefficient;
        }

        @Override
        public String label() {
            return label;
        }

        @Override
        public String source() {
            return SOURCE.printed();
        }

        /** k_CL, m³/(m²·h·Pa). */
        double coefficient() {
            return coefficient;
        }
    }

    /** What drives the air outward at the top, Pa: half the stack; 0 when it is warmer outside. */
    public double stackPa(double indoorTemperatureC, double outdoorTemperatureC) {
        double outside = DENSITY_TIMES_KELVIN / (outdoorTemperatureC + ZERO_C_IN_K);
        double inside = DENSITY_TIMES_KELVIN / (indoorTemperatureC + ZERO_C_IN_K);
        return Math.max(0, 0.5 * (outside - inside) * GRAVITY_M_PER_S2 * airHeightM);
    }

    /** Air that passes, m³/(m²·s). */
    public double airflowM3PerSM2(double indoorTemperatureC, double outdoorTemperatureC) {
        return tightness.coefficient() * stackPa(indoorTemperatureC, outdoorTemperatureC) / SECONDS_PER_HOUR;
    }

    /**
     * Moisture that air leaves at a plane, kg/(m²·s); 0 where the plane could take up none.
     *
     * @param airflowM3PerSM2 see {@link #airflowM3PerSM2}
     */
    public static double wettingKgPerM2S(
            double airflowM3PerSM2, double indoorTemperatureC, double indoorVapourPressurePa, double planeC) {
        double carried = Iso13788Saturation.vapourDensityKgPerM3(indoorTemperatureC, indoorVapourPressurePa);
        double held = Iso13788Saturation.vapourDensityKgPerM3(planeC, Iso13788Saturation.pressurePa(planeC));
        return airflowM3PerSM2 * Math.max(0, carried - held);
    }
}
