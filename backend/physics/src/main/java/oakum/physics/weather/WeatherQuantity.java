package oakum.physics.weather;

import oakum.physics.calculation.Labelled;

/** What is kept of the weather of an hour, with the unit and the range that any weather on earth keeps. */
public enum WeatherQuantity implements Labelled {
    AIR_TEMPERATURE("air temperature", "Cel", -70, 60, Kind.STATE),
    VAPOUR_PRESSURE("vapour pressure", "Pa", 0, 7000, Kind.STATE),
    AIR_PRESSURE("air pressure", "Pa", 45_000, 110_000, Kind.STATE),
    /** Sun and sky on level ground. */
    GLOBAL_HORIZONTAL("global irradiance on level ground", "W/m2", 0, 1600, Kind.SUN),
    /** The sun alone on a surface that faces it. */
    DIRECT_NORMAL("direct irradiance facing the sun", "W/m2", 0, 1400, Kind.SUN),
    /** The sky alone on level ground. */
    DIFFUSE_HORIZONTAL("diffuse irradiance on level ground", "W/m2", 0, 1000, Kind.SUN),
    /** Long-wave radiation of the sky on level ground. */
    SKY_LONG_WAVE("long-wave irradiance from the sky", "W/m2", 50, 700, Kind.STATE),
    CLOUD_FRACTION("cloud cover", "1", 0, 1, Kind.STATE),
    WIND_SPEED("wind speed", "m/s", 0, 75, Kind.STATE),
    /** Where the wind comes from, clockwise from north. */
    WIND_DIRECTION("wind direction", "deg", 0, 360, Kind.DIRECTION),
    /** Rain and melted snow of the hour; 1 kg/m² stands 1 mm high. */
    PRECIPITATION("precipitation", "kg/(m2.h)", 0, 400, Kind.SUM);

    /** How readings become an hour, and how a gap is bridged. */
    enum Kind {
        /** Mean of the hour; short gaps by a straight line. */
        STATE,
        /** Mean of the hour; gaps by the same hours of the days around. */
        SUN,
        /** Mean of the vectors; gaps hold the hour before. */
        DIRECTION,
        /** Sum of the hour; gaps are taken as nothing. */
        SUM
    }

    private final String label;
    private final String ucum;
    private final double min;
    private final double max;
    private final Kind kind;

    WeatherQuantity(String label, String ucum, double min, double max, Kind kind) {
        this.label = label;
        this.ucum = ucum;
        this.min = min;
        this.max = max;
        this.kind = kind;
    }

    @Override
    public String label() {
        return label;
    }

    /** UCUM code of the unit in which it is kept. */
    public String ucum() {
        return ucum;
    }

    public double min() {
        return min;
    }

    public double max() {
        return max;
    }

    Kind kind() {
        return kind;
    }
}
