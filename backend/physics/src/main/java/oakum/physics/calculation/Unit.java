package oakum.physics.calculation;

/**
 * The units in which numbers travel, each with the ending that a component of that unit must carry in its name, its
 * UCUM code, and how people of either habit are shown it. Values are always kept and computed in this unit; {@code si}
 * and {@code ip} are display only: {@code shown = value * factor + offset}.
 *
 * <p>Factors are exact by definition: 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, 1 Btu(IT) = 1055.05585262 J (NIST SP 811,
 * appendix B); 1 in. of water = 249.08891 Pa (conventional, 4 °C).
 */
public enum Unit {
    ONE("", "1", new Shown("", 1, 0, 3), new Shown("", 1, 0, 3)),
    FRACTION("Fraction", "1", new Shown("%", 100, 0, 1), new Shown("%", 100, 0, 1)),
    COUNT("Count", "1", new Shown("", 1, 0, 0), new Shown("", 1, 0, 0)),
    CELSIUS("C", "Cel", new Shown("°C", 1, 0, 1), new Shown("°F", 1.8, 32, 1)),
    KELVIN_DIFFERENCE("K", "K", new Shown("K", 1, 0, 1), new Shown("°F", 1.8, 0, 1)),
    PASCAL("Pa", "Pa", new Shown("Pa", 1, 0, 1), new Shown("in. w.c.", 1 / 249.08891, 0, 3)),
    /** House pressures: both habits read pascals. */
    HOUSE_PASCAL("Pa", "Pa", new Shown("Pa", 1, 0, 1), new Shown("Pa", 1, 0, 1)),
    /** Air (barometric) pressure. */
    AIR_PASCAL("Pa", "Pa", new Shown("kPa", 0.001, 0, 2), new Shown("psi", 1 / 6894.757293168, 0, 3)),
    METRE("M", "m", new Shown("m", 1, 0, 2), new Shown("ft", 1 / 0.3048, 0, 1)),
    /** Sizes that the trade reads in millimetres or inches. */
    SMALL_METRE("M", "m", new Shown("mm", 1000, 0, 0), new Shown("in.", 1 / 0.0254, 0, 2)),
    SQUARE_METRE("M2", "m2", new Shown("m²", 1, 0, 2), new Shown("ft²", 1 / 0.09290304, 0, 1)),
    /** Openings and leakage areas. */
    SMALL_SQUARE_METRE("M2", "m2", new Shown("cm²", 10000, 0, 1), new Shown("in.²", 1 / 0.00064516, 0, 2)),
    CUBIC_METRE("M3", "m3", new Shown("m³", 1, 0, 1), new Shown("ft³", 1 / 0.028316846592, 0, 0)),
    CUBIC_METRE_PER_SECOND(
            "M3PerS", "m3/s", new Shown("m³/h", 3600, 0, 1), new Shown("cfm", 60 / 0.028316846592, 0, 0)),
    /** Airflow over a coil for its cooling capacity. */
    FLOW_PER_POWER(
            "M3PerSW",
            "m3/(s.W)",
            new Shown("L/(s·kW)", 1e6, 0, 1),
            new Shown("cfm/ton", 60 / 0.028316846592 * 12000 * 1055.05585262 / 3600, 0, 0)),
    /** Drag part of a filter's drop. */
    PASCAL_PER_VELOCITY(
            "PaSPerM",
            "Pa.s/m",
            new Shown("Pa/(m/s)", 1, 0, 2),
            new Shown("in. w.c./(100 fpm)", 0.508 / 249.08891, 0, 4)),
    /** Inertia part of a filter's drop. */
    PASCAL_PER_VELOCITY_SQUARED(
            "PaS2PerM2",
            "Pa.s2/m2",
            new Shown("Pa/(m/s)²", 1, 0, 2),
            new Shown("in. w.c./(100 fpm)²", 0.508 * 0.508 / 249.08891, 0, 5)),
    METRE_PER_SECOND("MPerS", "m/s", new Shown("m/s", 1, 0, 2), new Shown("fpm", 60 / 0.3048, 0, 0)),
    PER_KELVIN("PerK", "/K", new Shown("1/K", 1, 0, 4), new Shown("1/°F", 1 / 1.8, 0, 4)),
    PER_HOUR("PerH", "/h", new Shown("1/h", 1, 0, 2), new Shown("1/h", 1, 0, 2)),
    FLOW_PER_AREA("M3PerSM2", "m3/(s.m2)", new Shown("m³/(h·m²)", 3600, 0, 2), new Shown("cfm/ft²", 60 / 0.3048, 0, 3)),
    KILOGRAM("Kg", "kg", new Shown("kg", 1, 0, 3), new Shown("lb", 1 / 0.45359237, 0, 3)),
    GRAM("G", "g", new Shown("g", 1, 0, 1), new Shown("oz", 1 / 28.349523125, 0, 2)),
    KILOGRAM_PER_SECOND("KgPerS", "kg/s", new Shown("kg/s", 1, 0, 4), new Shown("lb/h", 3600 / 0.45359237, 0, 1)),
    KILOGRAM_PER_HOUR("KgPerH", "kg/h", new Shown("kg/h", 1, 0, 2), new Shown("lb/h", 1 / 0.45359237, 0, 2)),
    KILOGRAM_PER_CUBIC_METRE(
            "KgPerM3", "kg/m3", new Shown("kg/m³", 1, 0, 4), new Shown("lb/ft³", 0.028316846592 / 0.45359237, 0, 4)),
    CUBIC_METRE_PER_KILOGRAM(
            "M3PerKg", "m3/kg", new Shown("m³/kg", 1, 0, 4), new Shown("ft³/lb", 0.45359237 / 0.028316846592, 0, 3)),
    /** Humidity ratio. */
    KILOGRAM_PER_KILOGRAM("KgPerKg", "kg/kg", new Shown("g/kg", 1000, 0, 2), new Shown("gr/lb", 7000, 0, 1)),
    JOULE_PER_KILOGRAM("JPerKg", "J/kg", new Shown("kJ/kg", 0.001, 0, 2), new Shown("Btu/lb", 1 / 2326.0, 0, 2)),
    WATT("W", "W", new Shown("W", 1, 0, 0), new Shown("Btu/h", 3600 / 1055.05585262, 0, 0)),
    /** Conductivity of a material. */
    WATT_PER_METRE_KELVIN(
            "WPerMK",
            "W/(m.K)",
            new Shown("W/(m·K)", 1, 0, 3),
            new Shown("Btu·in./(h·ft²·°F)", 12 * 0.3048 * 3600 / (1.8 * 1055.05585262), 0, 2)),
    /** Heat transfer through an area, the U-value. */
    WATT_PER_SQUARE_METRE_KELVIN(
            "WPerM2K",
            "W/(m2.K)",
            new Shown("W/(m²·K)", 1, 0, 3),
            new Shown("Btu/(h·ft²·°F)", 0.09290304 * 3600 / (1.8 * 1055.05585262), 0, 3)),
    /** Thermal resistance of an area. */
    SQUARE_METRE_KELVIN_PER_WATT(
            "M2KPerW",
            "m2.K/W",
            new Shown("m²·K/W", 1, 0, 2),
            new Shown("h·ft²·°F/Btu", 1.8 * 1055.05585262 / (0.09290304 * 3600), 0, 1)),
    /** Heat loss of a whole house or of a point bridge. */
    WATT_PER_KELVIN(
            "WPerK", "W/K", new Shown("W/K", 1, 0, 2), new Shown("Btu/(h·°F)", 3600 / (1.8 * 1055.05585262), 0, 2)),
    JOULE_PER_KILOGRAM_KELVIN(
            "JPerKgK", "J/(kg.K)", new Shown("J/(kg·K)", 1, 0, 0), new Shown("Btu/(lb·°F)", 1 / 4186.8, 0, 3)),
    /** Vapour permeance: one perm is a grain through a square foot in an hour under an inch of mercury. */
    VAPOUR_PERMEANCE(
            "KgPerSM2Pa",
            "kg/(s.m2.Pa)",
            new Shown("ng/(s·m²·Pa)", 1e12, 0, 1),
            new Shown("perm", 1 / 5.721e-11, 0, 2)),
    /** Capillary uptake of water. */
    WATER_UPTAKE("KgPerM2SqrtS", "kg/(m2.s0.5)", new Shown("kg/(m²·√s)", 1, 0, 4), new Shown("kg/(m²·√s)", 1, 0, 4)),
    NEWTON_PER_METRE(
            "NPerM", "N/m", new Shown("N/mm", 0.001, 0, 2), new Shown("lbf/in.", 0.0254 / 4.4482216152605, 0, 1)),
    /** Vent openings along an edge of a cladding. */
    SQUARE_METRE_PER_METRE(
            "M2PerM", "m2/m", new Shown("mm²/m", 1e6, 0, 0), new Shown("in.²/ft", 0.3048 / 0.00064516, 0, 2)),
    /** Wind pressure on a cladding. */
    WIND_PASCAL("Pa", "Pa", new Shown("Pa", 1, 0, 0), new Shown("psf", 1 / 47.88025898, 0, 1)),
    /** Wind speed of a place. */
    WIND_METRE_PER_SECOND("MPerS", "m/s", new Shown("m/s", 1, 0, 1), new Shown("mph", 1 / 0.44704, 0, 0)),
    /** Driving rain in an hour. */
    RAIN_PER_HOUR("KgPerM2H", "kg/(m2.h)", new Shown("mm/h", 1, 0, 2), new Shown("in./h", 1 / 25.4, 0, 3)),
    /** Water that dries from a surface in a day. */
    WATER_PER_DAY(
            "KgPerM2D",
            "kg/(m2.d)",
            new Shown("g/(m²·day)", 1000, 0, 0),
            new Shown("oz/(ft²·day)", 0.09290304 / 0.028349523125, 0, 2)),
    /** Moisture that diffusion or leaking air brings in a day. */
    GRAM_PER_SQUARE_METRE_DAY(
            "GPerM2D",
            "g/(m2.d)",
            new Shown("g/(m²·day)", 1, 0, 2),
            new Shown("gr/(ft²·day)", 0.09290304 / 0.06479891, 0, 2)),
    LITRE("L", "L", new Shown("L", 1, 0, 0), new Shown("gal", 1 / 3.785411784, 0, 0)),
    /** Electrical power: watts in both habits. */
    ELECTRIC_WATT("W", "W", new Shown("W", 1, 0, 0), new Shown("W", 1, 0, 0)),
    KILOWATT_HOUR("KWh", "kW.h", new Shown("kWh", 1, 0, 0), new Shown("kWh", 1, 0, 0)),
    AMPERE("A", "A", new Shown("A", 1, 0, 1), new Shown("A", 1, 0, 1)),
    VOLT("V", "V", new Shown("V", 1, 0, 0), new Shown("V", 1, 0, 0)),
    NEWTON("N", "N", new Shown("N", 1, 0, 1), new Shown("lbf", 1 / 4.4482216152605, 0, 2)),
    SECOND("S", "s", new Shown("s", 1, 0, 0), new Shown("s", 1, 0, 0)),
    HOUR("H", "h", new Shown("h", 1, 0, 1), new Shown("h", 1, 0, 1)),
    DAY("D", "d", new Shown("days", 1, 0, 1), new Shown("days", 1, 0, 1)),
    /** How fast a filter fills: kept per day, read per week. */
    LOAD_PER_DAY("PerD", "/d", new Shown("1/week", 7, 0, 3), new Shown("1/week", 7, 0, 3)),
    PER_DAY("PerD", "/d", new Shown("1/day", 1, 0, 4), new Shown("1/day", 1, 0, 4)),
    /** Degrees of an angle, latitude and longitude. */
    DEGREE("Deg", "deg", new Shown("°", 1, 0, 3), new Shown("°", 1, 0, 3)),
    MICROGRAM_PER_CUBIC_METRE("UgPerM3", "ug/m3", new Shown("µg/m³", 1, 0, 1), new Shown("µg/m³", 1, 0, 1)),
    MICROGRAM_PER_HOUR("UgPerH", "ug/h", new Shown("µg/h", 1, 0, 0), new Shown("µg/h", 1, 0, 0)),
    PARTS_PER_MILLION("Ppm", "[ppm]", new Shown("ppm", 1, 0, 0), new Shown("ppm", 1, 0, 0)),
    BECQUEREL_PER_CUBIC_METRE("BqPerM3", "Bq/m3", new Shown("Bq/m³", 1, 0, 0), new Shown("pCi/L", 1 / 37.0, 0, 1)),
    JOULE("J", "J", new Shown("kWh", 1 / 3.6e6, 0, 3), new Shown("kWh", 1 / 3.6e6, 0, 3)),
    WATT_PER_SQUARE_METRE(
            "WPerM2",
            "W/m2",
            new Shown("W/m²", 1, 0, 0),
            new Shown("Btu/(h·ft²)", 3600 / 1055.05585262 * 0.09290304, 0, 1)),
    LUX("Lx", "lx", new Shown("lx", 1, 0, 0), new Shown("fc", 0.09290304, 0, 0)),
    /** Rain: a kilogram on a square metre stands one millimetre high. */
    KILOGRAM_PER_SQUARE_METRE("KgPerM2", "kg/m2", new Shown("mm", 1, 0, 1), new Shown("in.", 1 / 25.4, 0, 2)),
    /** Water that condensed on a face. */
    CONDENSATE(
            "KgPerM2", "kg/m2", new Shown("g/m²", 1000, 0, 0), new Shown("oz/ft²", 16 * 0.09290304 / 0.45359237, 0, 2)),
    PASCAL_SECOND("PaS", "Pa.s", new Shown("µPa·s", 1e6, 0, 3), new Shown("µPa·s", 1e6, 0, 3)),
    /** Money in the firm's own currency. */
    MONEY("Cost", "1", new Shown("", 1, 0, 2), new Shown("", 1, 0, 2)),
    MONEY_PER_KILOWATT_HOUR("CostPerKWh", "1/(kW.h)", new Shown("per kWh", 1, 0, 3), new Shown("per kWh", 1, 0, 3)),
    /** The coefficient of a power-law flow; its unit depends on the exponent. */
    FLOW_COEFFICIENT(
            "M3PerSPaN",
            "m3/(s.Pa^n)",
            new Shown("m³/(h·Paⁿ)", 3600, 0, 3),
            new Shown("cfm/Paⁿ", 60 / 0.028316846592, 0, 3));

    /** How a value is shown: {@code value * factor + offset}, with so many digits after the point by default. */
    public record Shown(String symbol, double factor, double offset, int digits) {}

    private final String nameEnding;
    private final String ucum;
    private final Shown si;
    private final Shown ip;

    Unit(String nameEnding, String ucum, Shown si, Shown ip) {
        this.nameEnding = nameEnding;
        this.ucum = ucum;
        this.si = si;
        this.ip = ip;
    }

    /** The ending that a component name must carry; empty for plain numbers. */
    public String nameEnding() {
        return nameEnding;
    }

    /** The code of the unit in the Unified Code for Units of Measure, where it has one. */
    public String ucum() {
        return ucum;
    }

    public Shown si() {
        return si;
    }

    public Shown ip() {
        return ip;
    }
}
