package oakum.portal.houserecord;

import java.util.List;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;

/** The sensors as the section shows them. */
public record SensorsPart(
        @Entry(label = "Sensors", maxRows = 200) List<Place> places) implements Part {
    public SensorsPart {
        places = places == null ? List.of() : List.copyOf(places);
    }

    /** One place where something is read. */
    public record Place(
            @Entry(label = "Short name", help = "Names the row in paths; letters and digits.", maxLength = 40)
            String id,

            @Entry(label = "Name") String label,
            @Entry(label = "What it reads", maxLength = 60) String quantity,
            @Entry(label = "Where") String where,

            @Quantity(
                    label = "Across the section",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE,
                    help = "0 at its left edge, 1 at its right.")
            double xFraction,

            @Quantity(
                    label = "Up the section",
                    unit = Unit.FRACTION,
                    min = 0,
                    max = 1,
                    limitSource = PlausibleRange.SOURCE,
                    help = "0 at the ground, 1 at the top.")
            double yFraction) {}
}
