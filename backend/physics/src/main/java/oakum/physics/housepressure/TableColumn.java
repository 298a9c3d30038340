package oakum.physics.housepressure;

import oakum.physics.calculation.Labelled;

/** A column of the Minnesota make-up air table: the appliances in the house decide how much leakage is credited. */
public enum TableColumn implements Labelled {
    A("A: no combustion appliance, or only power-vent or direct-vent", 0.15),
    B("B: one or more fan-assisted appliances", 0.09),
    C("C: one atmospherically vented, or one solid-fuel appliance", 0.06),
    D("D: several atmospherically vented or solid-fuel appliances", 0.03);

    private static final double CFM_PER_FT2 = 0.3048 / 60;

    private final String label;
    private final double cfmPerFt2;

    TableColumn(String label, double cfmPerFt2) {
        this.label = label;
        this.cfmPerFt2 = cfmPerFt2;
    }

    @Override
    public String label() {
        return label;
    }

    @Override
    public String source() {
        return cfmPerFt2 + " cfm/ft² of leakage credited; Minn. R. 1346.0501, table 501.4.1";
    }

    /** The credited leakage per floor area, m³/(s·m²). */
    double leakageM3PerSM2() {
        return cfmPerFt2 * CFM_PER_FT2;
    }
}
