package oakum.physics.hygrothermal;

import java.util.function.DoubleUnaryOperator;
import oakum.physics.material.LiquidRule;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialProperty;
import oakum.physics.material.Sorption;

/** Layers of a wall out of materials of the library or of one's own. */
public final class MaterialLayers {
    /** δ_a of Schirmer at 20 °C and 101325 Pa, kg/(m s Pa) (from memory). */
    private static final double AIR_PERMEABILITY_KG_PER_M_S_PA = 2.306e-5
            / (Constants.VAPOUR_GAS_CONSTANT_J_PER_KG_K * (Constants.ZERO_C_IN_K + TabulatedProperties.REFERENCE_C))
            * Math.pow((Constants.ZERO_C_IN_K + TabulatedProperties.REFERENCE_C) / Constants.ZERO_C_IN_K, 1.81);

    private static final double REFERENCE_AIR_PRESSURE_PA = 101_325;

    /** δ_a goes with T^0.81, so resistivity falls by this share per kelvin. */
    private static final double RESISTIVITY_PER_K = -0.81 / (Constants.ZERO_C_IN_K + TabulatedProperties.REFERENCE_C);

    /** Vapour in the pores at saturation, kg/m³, about that at 20 °C; keeps the storage of dry materials from vanishing. */
    private static final double PORE_VAPOUR_KG_PER_M3 = 0.02;

    /** A sheet from this thickness on is a board. */
    private static final double THINNEST_BOARD_M = 0.001;

    private static final double DIFFUSIVITY_BASE_LN = Math.log(1000);

    private MaterialLayers() {}

    /**
     * A layer that stores and conducts, or a membrane where the material's vapour resistance belongs to the sheet.
     *
     * @param field pointer to the layer, for refusals
     * @param name of the layer
     * @param thicknessM of a solid layer, 0.0001 to 2; of no effect for a sheet
     * @param initialHumidityFraction 0 to 1
     * @param airPressurePa of the place: vapour passes pores more easily where the air is thin; a sheet keeps its
     *     permeance
     * @throws oakum.physics.calculation.Refused where the material lacks a property that the layer needs
     */
    public static WallLayer of(
            String field,
            String name,
            double thicknessM,
            Material material,
            double initialHumidityFraction,
            double airPressurePa) {
        material.require(field, MaterialProperty.VAPOUR_RESISTANCE);
        if (material.isSheet() && !(thicknessM >= THINNEST_BOARD_M && stores(material))) {
            return new MembraneLayer(
                    name,
                    material.values().diffusionThicknesses().stream()
                            .map(p -> new MembraneLayer.Point(p.humidityFraction(), p.diffusionThicknessM()))
                            .toList());
        }
        material.require(
                field,
                MaterialProperty.DENSITY,
                MaterialProperty.HEAT_CAPACITY,
                MaterialProperty.CONDUCTIVITY,
                MaterialProperty.SORPTION,
                MaterialProperty.SATURATION_WATER);
        return new SolidLayer(
                name,
                thicknessM,
                properties(thicknessM, material, airPressurePa),
                material.densityKgPerM3(),
                material.heatCapacityJPerKgK(),
                initialHumidityFraction);
    }

    /** A board whose vapour resistance was told for the whole sheet still stores water; a film or a metal does not. */
    private static boolean stores(Material material) {
        return material.knows(MaterialProperty.SORPTION)
                && material.sorption().saturationKgPerM3() > 0
                && material.knows(MaterialProperty.DENSITY)
                && material.knows(MaterialProperty.CONDUCTIVITY);
    }

    /**
     * The properties of a material that the solver reads.
     *
     * @param thicknessM of the layer, over which a resistance told for the sheet is spread
     * @param airPressurePa of the place, 45000 to 110000
     */
    static LayerProperties properties(double thicknessM, Material material, double airPressurePa) {
        Sorption sorption = material.sorption();
        double air = AIR_PERMEABILITY_KG_PER_M_S_PA * REFERENCE_AIR_PRESSURE_PA / airPressurePa;
        Double byTemperature = material.values().conductivityByTemperaturePerK();
        return new TabulatedProperties.Description(
                        h -> sorption.waterKgPerM3(h) + PORE_VAPOUR_KG_PER_M3 * h,
                        h -> material.diffusionThicknessM(thicknessM, h) / thicknessM / air,
                        liquidPotential(material, sorption),
                        h -> material.conductivityWPerMK(TabulatedProperties.REFERENCE_C, sorption.waterKgPerM3(h)))
                .vapourResistivityGrowingPerK(RESISTIVITY_PER_K)
                .conductivityGrowingPerK(byTemperature == null ? 0 : byTemperature)
                .overHumidity();
    }

    /** Θ = ∫ D_ws dw from where liquid begins to move, with D_ws = D(w_f) 1000^(w/w_f − 1). */
    private static DoubleUnaryOperator liquidPotential(Material material, Sorption sorption) {
        double atSaturation = material.liquidDiffusivityM2PerS(1);
        if (atSaturation == 0) {
            return h -> 0;
        }
        double full = sorption.saturationKgPerM3();
        double scale = atSaturation * full / DIFFUSIVITY_BASE_LN;
        double begins = material.liquidRule() == LiquidRule.ABOVE_95_PERCENT
                ? sorption.waterKgPerM3(Material.LIQUID_FROM_HUMIDITY)
                : 0;
        double dry = Math.exp(DIFFUSIVITY_BASE_LN * (begins / full - 1));
        return h -> {
            double w = sorption.waterKgPerM3(h);
            return w <= begins ? 0 : scale * (Math.exp(DIFFUSIVITY_BASE_LN * (w / full - 1)) - dry);
        };
    }
}
