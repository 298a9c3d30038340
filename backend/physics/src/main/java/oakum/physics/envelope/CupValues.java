package oakum.physics.envelope;

import oakum.physics.calculation.Labelled;

/** At which humidity the vapour resistances were measured. */
public enum CupValues implements Labelled {
    DRY("dry cup, mean of 25 %", LayerRow.DRY_CUP_HUMIDITY),
    WET("wet cup, mean of 75 %", LayerRow.WET_CUP_HUMIDITY);

    private final String label;
    private final double meanHumidityFraction;

    CupValues(String label, double meanHumidityFraction) {
        this.label = label;
        this.meanHumidityFraction = meanHumidityFraction;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return Citations.CUPS.printed();
    }

    double meanHumidityFraction() {
        return meanHumidityFraction;
    }
}
