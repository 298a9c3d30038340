package oakum.physics.material;

/**
 * The isotherm through the two contents that data sheets of mineral materials give: w = w_f (b − 1) φ/(b − φ) (Künzel
 * 1995, from memory). For wood-based materials it reads too much above 90 %.
 */
final class SorptionFormula implements Sorption {
    private final double saturation;
    private final double b;

    /**
     * @param saturationKgPerM3 w_f
     * @param at80KgPerM3 water at 80 % relative humidity, above 0 and below 0.8 w_f
     */
    SorptionFormula(double saturationKgPerM3, double at80KgPerM3) {
        saturation = saturationKgPerM3;
        b = shape(saturationKgPerM3, at80KgPerM3);
    }

    /** The b of the equation. */
    static double shape(double saturationKgPerM3, double at80KgPerM3) {
        return 0.8 * (at80KgPerM3 - saturationKgPerM3) / (at80KgPerM3 - 0.8 * saturationKgPerM3);
    }

    @Override
    public double waterKgPerM3(double humidityFraction) {
        return saturation * (b - 1) * humidityFraction / (b - humidityFraction);
    }

    @Override
    public double slopeKgPerM3(double humidityFraction) {
        double left = b - humidityFraction;
        return saturation * (b - 1) * b / (left * left);
    }

    @Override
    public double humidityFraction(double waterKgPerM3) {
        return waterKgPerM3 * b / (saturation * (b - 1) + waterKgPerM3);
    }

    @Override
    public double saturationKgPerM3() {
        return saturation;
    }
}
