package oakum.physics.envelope;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** Which face an assembly is, and its surfaces where they are not those of the standard. */
public record Placement(
        @Entry(label = "Kind") AssemblyKind kind,

        @Entry(
                label = "Outside of it",
                help = "Left out: the ground under a slab and outside a basement wall, else air.")
        @Nullable
        Outside outside,

        @Quantity(
                label = "Inside surface resistance",
                symbol = "R_si",
                unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                min = 0,
                max = 1,
                limitSource = InputRange.PLAUSIBLE,
                help = "Left out: by the direction of heat flow.")
        @Nullable
        Double insideSurfaceM2KPerW,

        @Quantity(
                label = "Outside surface resistance",
                symbol = "R_se",
                unit = Unit.SQUARE_METRE_KELVIN_PER_WATT,
                min = 0,
                max = 1,
                limitSource = InputRange.PLAUSIBLE,
                help = "Left out: 0.04 to wind, as inside behind a ventilated layer or under a vented attic, 0 to the"
                        + " ground.")
        @Nullable
        Double outsideSurfaceM2KPerW) {
    private static final double TO_WIND_M2K_PER_W = 0.04;

    double insideSurface() {
        Double typed = insideSurfaceM2KPerW;
        return typed == null ? HeatFlow.of(kind).insideSurfaceM2KPerW() : typed;
    }

    /** The outside surface, where no ventilated layer stands before it. */
    double outsideSurface() {
        Double typed = outsideSurfaceM2KPerW;
        if (typed != null) {
            return typed;
        }
        Outside lies = outside;
        if (lies == null) {
            lies = kind == AssemblyKind.SLAB || kind == AssemblyKind.BASEMENT_WALL
                    ? Outside.GROUND
                    : Outside.OUTDOOR_AIR;
        }
        return switch (lies) {
            case OUTDOOR_AIR -> TO_WIND_M2K_PER_W;
            case VENTED_ATTIC -> shelteredSurface();
            case GROUND -> 0;
        };
    }

    /** The outside surface in sheltered air: as the inside one of this direction of heat flow. */
    double shelteredSurface() {
        return HeatFlow.of(kind).insideSurfaceM2KPerW();
    }

    /** The outside surface behind a well-ventilated layer; a typed one stays. */
    double behindVentilatedLayer() {
        Double typed = outsideSurfaceM2KPerW;
        return typed == null ? shelteredSurface() : typed;
    }
}
