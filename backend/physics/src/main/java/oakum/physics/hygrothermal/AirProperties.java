package oakum.physics.hygrothermal;

/**
 * Air between two faces as a material of one cell: the resistance of each half of it is the film at that face. Its own
 * water is held at 10 g/m³ at saturation whatever the temperature, less than 1 g/m² in any cavity; it moves nothing but
 * keeps the account closed.
 */
final class AirProperties implements LayerProperties {
    private static final double SATURATION_KG_PER_M3 = 0.010;
    private static final double WEIGHT_K = 50;

    private final double vapourResistivity;
    private final double heatResistivity;

    AirProperties(AirLayer layer) {
        double half = 0.5 * layer.thicknessM();
        vapourResistivity = 1 / (layer.faceVapourSPerM() * half);
        heatResistivity = 1 / (layer.faceHeatWPerM2K() * half);
    }

    @Override
    public double coordinate(double relativeHumidityFraction) {
        return relativeHumidityFraction;
    }

    @Override
    public double relativeHumidity(double coordinate) {
        return coordinate;
    }

    @Override
    public double waterKgPerM3(double coordinate) {
        return SATURATION_KG_PER_M3 * coordinate;
    }

    @Override
    public double saturationKgPerM3() {
        return SATURATION_KG_PER_M3;
    }

    @Override
    public double liquidPotentialKgPerMS(double coordinate) {
        return 0;
    }

    @Override
    public boolean carriesLiquid() {
        return false;
    }

    @Override
    public void evaluate(Cells cells, int from, int to) {
        for (int i = from; i < to; i++) {
            double humidity = cells.coordinate[i];
            cells.humidity[i] = humidity;
            cells.humiditySlope[i] = 1;
            cells.water[i] = SATURATION_KG_PER_M3 * humidity;
            cells.waterSlope[i] = SATURATION_KG_PER_M3;
            cells.vapourResistivity[i] = vapourResistivity;
            cells.heatResistivity[i] = heatResistivity;
        }
    }

    @Override
    public boolean limit(double[] from, double[] to, int first, int end) {
        boolean shortened = false;
        for (int i = first; i < end; i++) {
            if (to[i] < 0.1 * from[i]) {
                to[i] = 0.1 * from[i];
                shortened = true;
            }
        }
        return shortened;
    }

    @Override
    public double coordinateWeightK() {
        return WEIGHT_K;
    }
}
