package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** A kind of hole that the equipment of the house brings with it, and how many of them. */
public record ExpectedHole(
        @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
        String id,

        @Entry(label = "Name") String label,

        @Quantity(
                label = "How many",
                unit = Unit.COUNT,
                min = 0,
                max = 200,
                limitSource = "plausible range for a house, proposed by the project")
        int holeCount) {}
