package oakum.portal.reading;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import oakum.physics.calculation.Unit;

/**
 * What a sensor observes. The limits refuse what no such sensor can mean (a temperature of -9900 °C); they are common
 * practice and have no published source.
 */
public enum ObservedProperty {
    AIR_TEMPERATURE("air temperature", Unit.CELSIUS, -80, 100),
    SURFACE_TEMPERATURE("surface temperature", Unit.CELSIUS, -80, 150),
    WATER_TEMPERATURE("water temperature", Unit.CELSIUS, -40, 150),
    DEW_POINT("dew point", Unit.CELSIUS, -100, 60),
    /** Sensors at saturation read a little above one. */
    RELATIVE_HUMIDITY("relative humidity", Unit.FRACTION, 0, 1.05),
    /** Mass of water on dry mass of wood. */
    WOOD_MOISTURE("wood moisture", Unit.FRACTION, 0, 3),
    CARBON_DIOXIDE("carbon dioxide", Unit.PARTS_PER_MILLION, 0, 100_000),
    FINE_PARTICLES("fine particles PM2.5", Unit.MICROGRAM_PER_CUBIC_METRE, 0, 100_000),
    RADON("radon", Unit.BECQUEREL_PER_CUBIC_METRE, 0, 1_000_000),
    PRESSURE_DIFFERENCE("pressure difference", Unit.PASCAL, -5_000, 5_000),
    HOUSE_PRESSURE("house pressure, inside less outside", Unit.HOUSE_PASCAL, -500, 500),
    AIR_PRESSURE("air pressure", Unit.AIR_PASCAL, 30_000, 115_000),
    AIRFLOW("airflow", Unit.CUBIC_METRE_PER_SECOND, -20, 20),
    WATER_FLOW("water flow", Unit.CUBIC_METRE_PER_SECOND, 0, 1),
    FAN_SPEED("fan speed, of the highest", Unit.FRACTION, 0, 1.05),
    OPENING("opening", Unit.FRACTION, 0, 1.05),
    /** 1 while the thing is so, 0 while it is not: wet, running, open, somebody there. */
    STATE("state, 1 or 0", Unit.ONE, 0, 1),
    ELECTRIC_POWER("electric power", Unit.ELECTRIC_WATT, -1_000_000, 1_000_000),
    ENERGY("energy since the reading before", Unit.JOULE, -1e12, 1e12),
    IRRADIANCE("sun on a surface", Unit.WATT_PER_SQUARE_METRE, -50, 2_000),
    ILLUMINANCE("light on a surface", Unit.LUX, 0, 200_000),
    WIND_SPEED("wind speed", Unit.METRE_PER_SECOND, 0, 115),
    WIND_DIRECTION("where the wind comes from", Unit.DEGREE, 0, 360),
    RAIN("rain and melted snow since the reading before", Unit.KILOGRAM_PER_SQUARE_METRE, 0, 1_000),
    CLOUD_COVER("cloud cover", Unit.FRACTION, 0, 1),
    VISIBILITY("visibility", Unit.METRE, 0, 1_000_000),
    /** A number without a unit that the portal knows. */
    OTHER_NUMBER("another number", Unit.ONE, -1e30, 1e30);

    private final String label;
    private final Unit unit;
    private final double min;
    private final double max;

    ObservedProperty(String label, Unit unit, double min, double max) {
        this.label = label;
        this.unit = unit;
        this.min = min;
        this.max = max;
    }

    /** The name on the wire: kebab case. */
    @JsonValue
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The property of that name. */
    @JsonCreator
    public static ObservedProperty of(String id) {
        return Arrays.stream(values())
                .filter(p -> p.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no observed property is named " + id));
    }

    public String label() {
        return label;
    }

    public Unit unit() {
        return unit;
    }

    /** The lowest value that is kept, in {@link #unit}. */
    public double min() {
        return min;
    }

    /** The highest value that is kept, in {@link #unit}. */
    public double max() {
        return max;
    }
}
