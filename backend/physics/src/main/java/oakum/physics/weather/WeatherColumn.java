package oakum.physics.weather;

import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import oakum.physics.calculation.Labelled;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;

/**
 * What a column of a weather table holds.
 *
 * @param column its name in the header, or {@code #3} for the third where there is no header
 * @param meaning what it is
 * @param unit in which it is written
 */
public record WeatherColumn(String column, Meaning meaning, Given unit) {
    private static final Source UNITS = Source.proposed("column maps of weather tables");

    /** Refuses a unit that does not go with the meaning. */
    public WeatherColumn {
        if (!meaning.units().contains(unit)) {
            throw Refused.of(
                    column,
                    unit.label(),
                    "Column \"" + column + "\": " + meaning.label() + " is not written in " + unit.label() + " but in "
                            + meaning.units().stream().map(Given::label).collect(Collectors.joining(", ")) + ".",
                    UNITS);
        }
    }

    /** What weather tables have columns of. */
    public enum Meaning implements Labelled {
        AIR_TEMPERATURE("air temperature", WeatherQuantity.AIR_TEMPERATURE),
        RELATIVE_HUMIDITY("relative humidity", WeatherQuantity.VAPOUR_PRESSURE),
        DEW_POINT("dew point", WeatherQuantity.VAPOUR_PRESSURE),
        HUMIDITY_RATIO("humidity ratio", WeatherQuantity.VAPOUR_PRESSURE),
        VAPOUR_PRESSURE("vapour pressure", WeatherQuantity.VAPOUR_PRESSURE),
        AIR_PRESSURE("air pressure of the place", WeatherQuantity.AIR_PRESSURE),
        GLOBAL_HORIZONTAL("global irradiance on level ground", WeatherQuantity.GLOBAL_HORIZONTAL),
        DIRECT_NORMAL("direct irradiance facing the sun", WeatherQuantity.DIRECT_NORMAL),
        DIFFUSE_HORIZONTAL("diffuse irradiance on level ground", WeatherQuantity.DIFFUSE_HORIZONTAL),
        SKY_LONG_WAVE("long-wave irradiance from the sky", WeatherQuantity.SKY_LONG_WAVE),
        CLOUD_COVER("cloud cover", WeatherQuantity.CLOUD_FRACTION),
        WIND_SPEED("wind speed", WeatherQuantity.WIND_SPEED),
        WIND_DIRECTION("where the wind comes from", WeatherQuantity.WIND_DIRECTION),
        PRECIPITATION("precipitation", WeatherQuantity.PRECIPITATION);

        private final String label;
        private final WeatherQuantity quantity;

        Meaning(String label, WeatherQuantity quantity) {
            this.label = label;
            this.quantity = quantity;
        }

        @Override
        public String label() {
            return label;
        }

        WeatherQuantity quantity() {
            return quantity;
        }

        Set<Given> units() {
            return switch (this) {
                case AIR_TEMPERATURE, DEW_POINT -> EnumSet.of(Given.CELSIUS, Given.FAHRENHEIT, Given.KELVIN);
                case RELATIVE_HUMIDITY -> EnumSet.of(Given.PERCENT, Given.FRACTION);
                case HUMIDITY_RATIO -> EnumSet.of(Given.GRAM_PER_KILOGRAM, Given.FRACTION);
                case VAPOUR_PRESSURE, AIR_PRESSURE ->
                    EnumSet.of(
                            Given.PASCAL,
                            Given.HECTOPASCAL,
                            Given.KILOPASCAL,
                            Given.INCH_OF_MERCURY,
                            Given.MILLIMETRE_OF_MERCURY);
                case GLOBAL_HORIZONTAL, DIRECT_NORMAL, DIFFUSE_HORIZONTAL, SKY_LONG_WAVE ->
                    EnumSet.of(Given.WATT_PER_SQUARE_METRE, Given.KILOJOULE_PER_SQUARE_METRE_HOUR);
                case CLOUD_COVER -> EnumSet.of(Given.FRACTION, Given.PERCENT, Given.TENTHS, Given.EIGHTHS);
                case WIND_SPEED ->
                    EnumSet.of(Given.METRE_PER_SECOND, Given.KILOMETRE_PER_HOUR, Given.MILE_PER_HOUR, Given.KNOT);
                case WIND_DIRECTION -> EnumSet.of(Given.DEGREE);
                case PRECIPITATION ->
                    EnumSet.of(Given.MILLIMETRE_PER_HOUR, Given.MILLIMETRE, Given.TENTH_OF_MILLIMETRE, Given.INCH);
            };
        }

        boolean isHumidity() {
            return quantity == WeatherQuantity.VAPOUR_PRESSURE;
        }
    }

    /** The unit of a column: kept = (written + offset) · factor. */
    public enum Given implements Labelled {
        CELSIUS("°C", 1, 0),
        FAHRENHEIT("°F", 1 / 1.8, -32),
        KELVIN("K", 1, -273.15),
        PERCENT("%", 0.01, 0),
        FRACTION("fraction", 1, 0),
        TENTHS("tenths", 0.1, 0),
        EIGHTHS("eighths", 0.125, 0),
        GRAM_PER_KILOGRAM("g/kg", 0.001, 0),
        PASCAL("Pa", 1, 0),
        HECTOPASCAL("hPa or mbar", 100, 0),
        KILOPASCAL("kPa", 1000, 0),
        INCH_OF_MERCURY("in. Hg", 3386.389, 0),
        MILLIMETRE_OF_MERCURY("mm Hg", 133.322387415, 0),
        WATT_PER_SQUARE_METRE("W/m²", 1, 0),
        KILOJOULE_PER_SQUARE_METRE_HOUR("kJ/(m²·h)", 1 / 3.6, 0),
        METRE_PER_SECOND("m/s", 1, 0),
        KILOMETRE_PER_HOUR("km/h", 1 / 3.6, 0),
        MILE_PER_HOUR("mph", 0.44704, 0),
        KNOT("knots", 1852 / 3600.0, 0),
        DEGREE("°", 1, 0),
        MILLIMETRE_PER_HOUR("mm/h", 1, 0),
        /** Fallen since the row before. */
        MILLIMETRE("mm in the step", 1, 0),
        /** Fallen since the row before. */
        TENTH_OF_MILLIMETRE("0.1 mm in the step", 0.1, 0),
        /** Fallen since the row before. */
        INCH("in. in the step", 25.4, 0);

        private final String label;
        private final double factor;
        private final double offset;

        Given(String label, double factor, double offset) {
            this.label = label;
            this.factor = factor;
            this.offset = offset;
        }

        @Override
        public String label() {
            return label;
        }

        double kept(double written) {
            return (written + offset) * factor;
        }

        boolean isAmount() {
            return this == MILLIMETRE || this == TENTH_OF_MILLIMETRE || this == INCH;
        }
    }
}
