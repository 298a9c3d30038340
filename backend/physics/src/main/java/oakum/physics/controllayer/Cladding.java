package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/**
 * The cladding of an assembly, what carries it, and the edges of the cavity behind it. Whatever nobody said yet is null.
 *
 * @param species wood by its trade name, null for what is no wood
 * @param jointWidthM between two boards; 0 for closed laps and joints
 * @param battenDepthM of the battens that the boards are fixed to
 * @param counterBattenDepthM of the vertical battens under horizontal ones; 0 where there are none
 * @param bottomEdge whether water behind the cladding can leave at the bottom
 * @param topClosure whether air can leave at the top
 * @param bottomOpeningM2PerM free opening along the bottom edge, before the screen
 * @param topOpeningM2PerM free opening along the top edge, before the screen
 */
public record Cladding(
        @Entry(label = "Boards run") @Nullable BoardDirection boardDirection,

        @Entry(label = "Wood", help = "By its trade name; empty for what is no wood.", maxLength = 60) @Nullable
        String species,

        @Quantity(
                label = "Board width",
                symbol = "b",
                unit = Unit.SMALL_METRE,
                min = 0.01,
                max = 3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double boardWidthM,

        @Quantity(
                label = "Board thickness",
                symbol = "t",
                unit = Unit.SMALL_METRE,
                min = 0.0003,
                max = 0.3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double boardThicknessM,

        @Quantity(
                label = "Joint between boards",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 0.2,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double jointWidthM,

        @Entry(label = "Battens run") @Nullable BattenDirection battenDirection,

        @Quantity(
                label = "Batten depth",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 0.3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double battenDepthM,

        @Quantity(
                label = "Batten spacing",
                unit = Unit.SMALL_METRE,
                min = 0.05,
                max = 2,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double battenSpacingM,

        @Quantity(
                label = "Counter-batten depth",
                unit = Unit.SMALL_METRE,
                min = 0,
                max = 0.3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double counterBattenDepthM,

        @Entry(label = "Bottom edge") @Nullable EdgeState bottomEdge,
        @Entry(label = "Top edge") @Nullable EdgeState topClosure,

        @Quantity(
                label = "Opening along the bottom",
                symbol = "A",
                unit = Unit.SQUARE_METRE_PER_METRE,
                min = 0,
                max = 0.3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double bottomOpeningM2PerM,

        @Quantity(
                label = "Opening along the top",
                symbol = "A",
                unit = Unit.SQUARE_METRE_PER_METRE,
                min = 0,
                max = 0.3,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double topOpeningM2PerM,

        @Entry(label = "Insect screen in every opening") @Nullable
        Boolean insectScreen,

        @Quantity(
                label = "Free share of the screen",
                unit = Unit.FRACTION,
                min = 0.1,
                max = 1,
                limitSource = "plausible range for a house, proposed by the project")
        @Nullable
        Double screenFreeFraction) {}
