package oakum.physics.envelope;

import org.jspecify.annotations.Nullable;

/** Builds layer rows for tests. */
final class TestLayer {
    private final String id;
    private final double thicknessM;
    private @Nullable String materialId;
    private @Nullable Double conductivity;
    private @Nullable Double resistance;
    private @Nullable Double sdDry;
    private @Nullable Double sdWet;
    private @Nullable Double framing;
    private @Nullable Double framingConductivity;
    private @Nullable String framingOn;
    private @Nullable AirLayerVentilation ventilation;
    private @Nullable Double opening;

    private TestLayer(String id, double thicknessM) {
        this.id = id;
        this.thicknessM = thicknessM;
    }

    static TestLayer of(String id, double thicknessM) {
        return new TestLayer(id, thicknessM);
    }

    /** A layer by conductivity. */
    static TestLayer solid(String id, double thicknessM, double conductivity) {
        TestLayer layer = of(id, thicknessM);
        layer.conductivity = conductivity;
        return layer;
    }

    /** A layer by resistance. */
    static TestLayer resistance(String id, double resistance) {
        TestLayer layer = of(id, 0.05);
        layer.resistance = resistance;
        return layer;
    }

    static TestLayer air(String id, double thicknessM, AirLayerVentilation ventilation) {
        TestLayer layer = of(id, thicknessM);
        layer.ventilation = ventilation;
        return layer;
    }

    static TestLayer library(String id, double thicknessM, String materialId) {
        TestLayer layer = of(id, thicknessM);
        layer.materialId = materialId;
        return layer;
    }

    TestLayer sd(double sd) {
        this.sdDry = sd;
        return this;
    }

    TestLayer sdWet(double sd) {
        this.sdWet = sd;
        return this;
    }

    TestLayer conductivity(double value) {
        this.conductivity = value;
        return this;
    }

    TestLayer wood(double fraction) {
        return framed(fraction, 0.12);
    }

    TestLayer framed(double fraction, double framingConductivityWPerMK) {
        this.framing = fraction;
        this.framingConductivity = framingConductivityWPerMK;
        return this;
    }

    /** A share of framing of which nothing is known. */
    TestLayer noFraming() {
        this.framingConductivity = null;
        return this;
    }

    TestLayer on(String inner) {
        this.framingOn = inner;
        return this;
    }

    TestLayer opening(double m2PerM) {
        this.opening = m2PerM;
        return this;
    }

    LayerRow row() {
        return new LayerRow(
                id,
                null,
                materialId,
                thicknessM,
                conductivity,
                resistance,
                sdDry,
                sdWet,
                null,
                framing,
                framingConductivity,
                framingOn,
                ventilation,
                opening);
    }
}
