package oakum.portal.houserecord;

import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Unit;
import org.jspecify.annotations.Nullable;

/** The part "house": what a house is called, where it stands and how large it is. */
public record HouseMeasures(
        @Entry(label = "Name") String name,
        @Entry(label = "Place") String place,

        @Quantity(label = "Latitude", unit = Unit.DEGREE, min = -90, max = 90, limitSource = PlausibleRange.SOURCE)
        double latitudeDeg,

        @Quantity(label = "Longitude", unit = Unit.DEGREE, min = -180, max = 180, limitSource = PlausibleRange.SOURCE)
        double longitudeDeg,

        @Quantity(
                label = "Altitude",
                symbol = "z",
                unit = Unit.METRE,
                min = -500,
                max = 5000,
                limitSource = PlausibleRange.SOURCE)
        double altitudeM,

        @Entry(label = "Time zone", help = "Name in the tz database; the days of the house follow it.")
        String timeZone,

        @Entry(label = "Stage") Stage stage,

        @Quantity(
                label = "Floor area",
                symbol = "A",
                unit = Unit.SQUARE_METRE,
                min = 10,
                max = 2000,
                limitSource = PlausibleRange.SOURCE)
        double floorAreaM2,

        @Quantity(
                label = "Net air volume",
                symbol = "V",
                unit = Unit.CUBIC_METRE,
                min = 20,
                max = 10000,
                limitSource = PlausibleRange.SOURCE)
        double netVolumeM3,

        @Quantity(
                label = "Volume with floor depth",
                unit = Unit.CUBIC_METRE,
                min = 20,
                max = 12000,
                limitSource = PlausibleRange.SOURCE)
        double volumeWithFloorsM3,

        @Quantity(
                label = "Envelope area",
                unit = Unit.SQUARE_METRE,
                min = 20,
                max = 8000,
                limitSource = PlausibleRange.SOURCE)
        double envelopeAreaM2,

        @Quantity(label = "Bedrooms", unit = Unit.COUNT, min = 0, max = 30, limitSource = PlausibleRange.SOURCE)
        int bedroomCount,

        @Quantity(
                label = "Design outdoor temperature",
                unit = Unit.CELSIUS,
                min = -60,
                max = 30,
                limitSource = PlausibleRange.SOURCE)
        double designOutdoorC,

        @Entry(label = "Weather year", help = "Content hash of one of the firm's weather years.") @Nullable
        String weatherHash)
        implements Part {

    /** The same house with another weather year. */
    public HouseMeasures withWeather(@Nullable String hash) {
        return new HouseMeasures(
                name,
                place,
                latitudeDeg,
                longitudeDeg,
                altitudeM,
                timeZone,
                stage,
                floorAreaM2,
                netVolumeM3,
                volumeWithFloorsM3,
                envelopeAreaM2,
                bedroomCount,
                designOutdoorC,
                hash);
    }
}
