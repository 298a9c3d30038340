package oakum.physics.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.moistair.BelowFreezing;
import oakum.physics.weather.WeatherColumn.Given;
import oakum.physics.weather.WeatherColumn.Meaning;

/**
 * Typical meteorological years as NREL publishes them (TMY3; NREL/TP-581-43156, Users Manual for TMY3 Data Sets, 2008):
 * station on the first line, columns by name on the second, hours 01:00 to 24:00 of months from several years, sun and
 * rain over the hour before the stamp, dew point over water.
 */
public final class Tmy3 {
    private static final Source MANUAL = Source.fromMemory("NREL/TP-581-43156, Users Manual for TMY3 Data Sets, 2008");
    private static final Source RAIN = Source.proposed(
            "rain of typical years: yearly sums of four stations, compared" + " with the rain of the places");
    private static final int STATION_FIELDS = 7;

    /** A column that only the files revised in 2015 have. */
    private static final String REVISED = "PresWth (METAR code)";

    private Tmy3() {}

    /**
     * Reads a typical year.
     *
     * @param lines the whole file
     * @throws Refused where the station line or a column is not as published, or a value is out of range
     */
    public static HourlyWeather read(List<String> lines) {
        List<String> station = Delimited.split(lines.isEmpty() ? "" : lines.get(0), ',');
        if (station.size() < STATION_FIELDS) {
            throw notThis(lines.isEmpty() ? "" : lines.get(0));
        }
        Place place;
        try {
            place = new Place(
                    station.get(1) + " " + station.get(2),
                    Double.parseDouble(station.get(4)),
                    Double.parseDouble(station.get(5)),
                    Double.parseDouble(station.get(6)),
                    Double.parseDouble(station.get(3)));
        } catch (NumberFormatException e) {
            throw notThis(lines.get(0));
        }
        boolean revised = lines.size() > 1 && lines.get(1).contains(REVISED);
        HourlyWeather weather = map(place.standardOffsetH(), revised)
                .read(place, String.format(Locale.ROOT, "TMY3 %s, %s", station.get(0), place.name()), lines);
        return weather.with(
                revised
                        ? Notice.advice(
                                "rain-in-tenths",
                                WeatherQuantity.PRECIPITATION.name(),
                                "The precipitation of this revised file was read as tenths of a millimetre although its"
                                        + " header says mm: as millimetres the year would have ten times the rain of"
                                        + " the place.",
                                RAIN)
                        : Notice.advice(
                                "rain-not-read",
                                WeatherQuantity.PRECIPITATION.name(),
                                "The precipitation of this file was not read: such files know it for a part of the"
                                        + " hours only, as sums over 1 to 24 hours.",
                                RAIN));
    }

    /** The column map of these files; the revised ones have more columns and know the rain of every hour. */
    static WeatherTable map(double standardOffsetH, boolean revised) {
        List<WeatherColumn> columns = new ArrayList<>(List.of(
                new WeatherColumn("Dry-bulb (C)", Meaning.AIR_TEMPERATURE, Given.CELSIUS),
                new WeatherColumn("Dew-point (C)", Meaning.DEW_POINT, Given.CELSIUS),
                new WeatherColumn("RHum (%)", Meaning.RELATIVE_HUMIDITY, Given.PERCENT),
                new WeatherColumn("Pressure (mbar)", Meaning.AIR_PRESSURE, Given.HECTOPASCAL),
                new WeatherColumn("GHI (W/m^2)", Meaning.GLOBAL_HORIZONTAL, Given.WATT_PER_SQUARE_METRE),
                new WeatherColumn("DNI (W/m^2)", Meaning.DIRECT_NORMAL, Given.WATT_PER_SQUARE_METRE),
                new WeatherColumn("DHI (W/m^2)", Meaning.DIFFUSE_HORIZONTAL, Given.WATT_PER_SQUARE_METRE),
                new WeatherColumn("TotCld (tenths)", Meaning.CLOUD_COVER, Given.TENTHS),
                new WeatherColumn("Wspd (m/s)", Meaning.WIND_SPEED, Given.METRE_PER_SECOND),
                new WeatherColumn("Wdir (degrees)", Meaning.WIND_DIRECTION, Given.DEGREE)));
        if (revised) {
            columns.add(new WeatherColumn("Lprecip depth (mm)", Meaning.PRECIPITATION, Given.TENTH_OF_MILLIMETRE));
        }
        return new WeatherTable(
                2,
                3,
                ',',
                '.',
                List.of("Date (MM/DD/YYYY)", "Time (HH:MM)"),
                "MM/dd/yyyy HH:mm",
                standardOffsetH,
                WeatherTable.Dates.TYPICAL_YEAR,
                WeatherTable.Sums.BEFORE_STAMP,
                BelowFreezing.OVER_WATER,
                Set.of("-9900"),
                columns);
    }

    private static Refused notThis(String line) {
        String shown = line.length() <= 80 ? line : line.substring(0, 80) + "…";
        return Refused.of(
                "line 1",
                shown,
                "The first line is not a station line (number, name, state, hours from UTC, latitude, longitude,"
                        + " elevation): \"" + shown + "\".",
                MANUAL);
    }
}
