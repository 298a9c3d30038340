package oakum.portal.demo;

import java.util.List;
import java.util.Map;
import oakum.portal.houserecord.standing.Binding;

/** Where the inputs of the demo's proofs come from: the record where it holds them, else typed with their origin. */
final class DemoProofs {
    private static final String FIRM_RULES = "firm rules, edition 7";
    private static final String DATA_SHEET = "data sheet, read by the designer";

    private DemoProofs() {}

    static List<Binding> housePressure() {
        return List.of(
                Binding.of("q50M3PerS", "air.tightness.q50M3PerS"),
                Binding.of("exponent", "air.tightness.exponent"),
                Binding.of("altitudeM", "house.altitudeM"),
                Binding.of("indoorTemperatureC", "heat.indoorC"),
                Binding.of("outdoorTemperatureC", "house.designOutdoorC"),
                // the trade's way: one density, that of the air delivered, at this altitude
                Binding.typed("flowBasis", "LOCAL", "typed by designer"),
                Binding.typed("flowTemperatureC", "15", "typed by designer: the delivered air"),
                Binding.typed("appliances", "NONE", "firm rules, edition 7: all-electric"),
                Binding.of("limit.workingPa", "air.limits.housePressurePa"),
                Binding.of("limit.failedPa", "air.limits.failedMakeUpPressurePa"),
                Binding.typed("limit.failedWithinS", "60", FIRM_RULES),
                Binding.typed("limit.origin", "FIRM_RULE", FIRM_RULES),
                Binding.typed("limit.rule", "House pressure with make-up air", FIRM_RULES),
                Binding.typed("limit.edition", "7", FIRM_RULES),
                Binding.of(
                        "devices",
                        "air.exhaust",
                        Map.of(
                                "airflowM3PerS",
                                "ratedFlowM3PerS",
                                "makeUp",
                                "makeUpId",
                                "shutOffPa",
                                "shutOffPressurePa")),
                Binding.typed("devices[*].running", "SOMETIMES", "typed by designer"),
                Binding.of("ventilator.supplyM3PerS", "air.ventilation.supplyM3PerS"),
                Binding.of("ventilator.exhaustM3PerS", "air.ventilation.exhaustM3PerS"),
                Binding.of(
                        "makeUpUnits",
                        "air.makeUp",
                        Map.of(
                                "airflowM3PerS", "flowM3PerS",
                                "supplyTemperatureC", "supplyC",
                                "heaterRatingW", "heaterRatedW",
                                "circuitA", "circuitRatedA",
                                "outletAreaM2", "outletGrossAreaM2",
                                "openSignalWithinS", "proofTimeS")),
                Binding.typed("makeUpUnits[*].fanPlace", "AFTER_HEATER", DATA_SHEET),
                Binding.typed("makeUpUnits[*].phases", "SINGLE", DATA_SHEET),
                Binding.typed(
                        "makeUpUnits[*].circuitFactor", "1.25", "common practice for long loads; licensed electrician"),
                Binding.typed("makeUpUnits[*].ductVelocityLimitMPerS", "6", FIRM_RULES));
    }

    static List<Binding> filterSizing() {
        return List.of(
                Binding.of("highM3PerS", "air.airHandler.highFlowM3PerS"),
                Binding.of("lowM3PerS", "air.airHandler.lowFlowM3PerS"),
                Binding.typed("highShareFraction", "0.15", "assumed until readings show it"),
                Binding.of("altitudeM", "house.altitudeM"),
                Binding.of("airC", "heat.indoorC"),
                Binding.typed("fanKind", "CONSTANT_FLOW", DATA_SHEET),
                Binding.of("staticLimitPa", "air.airHandler.staticLimitPa"),
                Binding.of("otherStaticPa", "air.airHandler.otherStaticPa"),
                Binding.of("fanFraction", "air.airHandler.fanEfficiencyFraction"),
                Binding.of("coolingW", "air.airHandler.coolingCapacityW"),
                Binding.typed("electricityCostPerKWh", "0.15", "assumed; the owner's bill decides"),
                Binding.typed("house.outdoorUgPerM3", "12", "assumed yearly mean"),
                Binding.of("house.volumeM3", "house.netVolumeM3"),
                Binding.typed("house.infiltrationPerH", "0.03", "assumed for a house this tight"),
                Binding.typed("house.penetrationFraction", "0.8", "from memory, common for tight houses"),
                Binding.of("house.ventilationM3PerS", "air.ventilation.supplyM3PerS"),
                Binding.typed("house.ventilationFilterFraction", "0.5", DATA_SHEET),
                Binding.typed("house.depositionPerH", "0.39", "from memory, common for houses"),
                Binding.typed("house.emissionUgPerH", "0", "assumed"),
                Binding.of("rules.faceLimitMPerS", "air.limits.faceVelocityMPerS"),
                Binding.of("rules.cleanLimitPa", "air.limits.cleanDropPa"),
                Binding.typed("rules.changeLoad", "2", FIRM_RULES),
                Binding.typed("rules.curveToleranceFraction", "0.15", FIRM_RULES),
                Binding.typed("rules.coilAdvisedM3PerSW", "0.00004697", "350 cfm a ton, common practice"),
                Binding.typed("rules.coilAlarmM3PerSW", "0.00004026", "300 cfm a ton, common practice"),
                Binding.of(
                        "candidates",
                        "air.filters",
                        Map.of(
                                "filterCount", "count",
                                "linearPaSPerM", "curveLinearPaSPerM",
                                "squarePaS2PerM2", "curveQuadraticPaS2PerM2")),
                Binding.typed("candidates[*].merv", "13", DATA_SHEET),
                Binding.typed("candidates[*].mervEdition", "ED_2017", DATA_SHEET),
                Binding.typed("candidates[*].particleFraction", "0.85", "assumed for fine particles at this grade"));
    }
}
