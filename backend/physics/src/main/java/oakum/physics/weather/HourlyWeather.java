package oakum.physics.weather;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.Month;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.moistair.MoistAir;
import oakum.physics.moistair.StandardAtmosphere;

/**
 * Weather of equal hours at one place, most often a year; cannot be changed. Air temperature and vapour pressure are
 * always there, the rest where the source gives it.
 *
 * <p>Hour {@code i} runs from {@code start() + i} to the next hour, in the place's standard time. Temperature, vapour
 * pressure, air pressure, wind, cloud and the sky's long-wave radiation are those of the moment at which the hour begins;
 * sun and precipitation are means over the hour. A whole year has 8,760 hours from 1 January and no leap day, and goes
 * on with its own first hour. Vapour pressure is kept in place of relative humidity, so that no question of ice or water
 * is left open: the readers say how they came by it.
 */
public final class HourlyWeather {
    /** Hours of a year without leap day. */
    public static final int HOURS_OF_YEAR = 8760;

    /** The year that stands for any year: it has no leap day. */
    static final int ANY_YEAR = 2001;

    /** Values are hashed to this part of their unit, so that the last bit of a processor's logarithm does not show. */
    private static final double HASHED_STEPS_PER_UNIT = 1e4;

    private static final Source CONTENT = Source.proposed("weather of equal hours");

    private final Place place;
    private final String source;
    private final LocalDateTime start;
    private final int hours;
    private final EnumMap<WeatherQuantity, double[]> values;
    private final List<Notice> notices;
    private final String contentHash;

    /**
     * Takes hours as they are.
     *
     * @param place where
     * @param source what it is, as people cite it
     * @param start when the first hour begins, in standard time, on the hour
     * @param values by quantity, all of one length; copied
     * @param notices what was repaired or assumed on the way
     * @throws Refused where a place, a length or a value is out of range
     */
    public HourlyWeather(
            Place place,
            String source,
            LocalDateTime start,
            Map<WeatherQuantity, double[]> values,
            List<Notice> notices) {
        Limits.require(place);
        if (!start.equals(start.truncatedTo(ChronoUnit.HOURS))) {
            throw Refused.of(
                    "start", start.toString(), "Hours of weather begin on the hour, not at " + start + ".", CONTENT);
        }
        this.place = place;
        this.source = source;
        this.start = start;
        this.values = new EnumMap<>(WeatherQuantity.class);
        values.forEach((quantity, hourly) -> this.values.put(quantity, hourly.clone()));
        this.notices = List.copyOf(notices);
        this.hours = count();
        this.values.forEach(HourlyWeather::require);
        this.contentHash = hash();
    }

    private int count() {
        double[] temperatures = values.get(WeatherQuantity.AIR_TEMPERATURE);
        if (temperatures == null || !values.containsKey(WeatherQuantity.VAPOUR_PRESSURE) || temperatures.length == 0) {
            throw Refused.of("values", "", "Weather needs air temperature and humidity of at least one hour.", CONTENT);
        }
        values.forEach((quantity, hourly) -> {
            if (hourly.length != temperatures.length) {
                throw Refused.of(
                        quantity.name(),
                        Integer.toString(hourly.length),
                        "The " + quantity.label() + " has " + hourly.length + " hours, the air temperature "
                                + temperatures.length + ".",
                        CONTENT);
            }
        });
        return temperatures.length;
    }

    private static void require(WeatherQuantity quantity, double[] hourly) {
        for (int i = 0; i < hourly.length; i++) {
            if (!(hourly[i] >= quantity.min() && hourly[i] <= quantity.max())) {
                throw new Refused(OutOfRange.violation(quantity, "hour " + i, hourly[i]));
            }
        }
    }

    private String hash() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            String head = "hourly weather\n" + Canonical.flatten(place) + "\n" + start + "\n" + hours + "\n";
            digest.update(head.getBytes(StandardCharsets.UTF_8));
            values.forEach((quantity, hourly) -> {
                digest.update(quantity.name().getBytes(StandardCharsets.UTF_8));
                ByteBuffer buffer = ByteBuffer.allocate(Long.BYTES * hourly.length);
                for (double value : hourly) {
                    buffer.putLong(Math.round(value * HASHED_STEPS_PER_UNIT));
                }
                digest.update(buffer.array());
            });
            return "sha256:" + HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    public Place place() {
        return place;
    }

    /** What it is, as people cite it. */
    public String source() {
        return source;
    }

    /** When the first hour begins, in the place's standard time. */
    public LocalDateTime start() {
        return start;
    }

    public int hours() {
        return hours;
    }

    /** When an hour begins, in the place's standard time. */
    public LocalDateTime time(int hour) {
        return start.plusHours(hour);
    }

    /** What was repaired or assumed, and how. */
    public List<Notice> notices() {
        return notices;
    }

    /** Stands for the place, the start and every value; the same text for the same weather wherever it is computed. */
    public String contentHash() {
        return contentHash;
    }

    /** The same weather with something more to say. */
    HourlyWeather with(Notice notice) {
        List<Notice> more = new ArrayList<>(notices);
        more.add(notice);
        return new HourlyWeather(place, source, start, values, more);
    }

    /** Whether it is the 8,760 hours of a year from 1 January, which can follow one another without end. */
    public boolean isWholeYear() {
        return hours == HOURS_OF_YEAR && start.getDayOfYear() == 1 && start.getHour() == 0;
    }

    /** Whether the source gives a quantity. */
    public boolean has(WeatherQuantity quantity) {
        return values.containsKey(quantity);
    }

    /**
     * One value, in the unit of its quantity.
     *
     * @param hour 0 to below {@link #hours()}
     * @throws Refused where the source does not give the quantity
     */
    public double value(WeatherQuantity quantity, int hour) {
        return given(quantity)[hour];
    }

    /** A copy of all values of a quantity. */
    public double[] values(WeatherQuantity quantity) {
        return given(quantity).clone();
    }

    private double[] given(WeatherQuantity quantity) {
        double[] hourly = values.get(quantity);
        if (hourly == null) {
            throw Refused.of(
                    quantity.name(), "", "The weather \"" + source + "\" has no " + quantity.label() + ".", CONTENT);
        }
        return hourly;
    }

    public double temperatureC(int hour) {
        return value(WeatherQuantity.AIR_TEMPERATURE, hour);
    }

    public double vapourPressurePa(int hour) {
        return value(WeatherQuantity.VAPOUR_PRESSURE, hour);
    }

    /** Air pressure, or the standard atmosphere's at this altitude where the source gives none. */
    public double airPressurePa(int hour) {
        return has(WeatherQuantity.AIR_PRESSURE)
                ? value(WeatherQuantity.AIR_PRESSURE, hour)
                : StandardAtmosphere.pressurePa(place.altitudeM());
    }

    /** Relative humidity over water, also below freezing, as a fraction: what weather services print. */
    public double relativeHumidityOverWater(int hour) {
        return vapourPressurePa(hour) / MoistAir.saturationPressureOverWaterPa(temperatureC(hour));
    }

    /** Mean of a quantity over all hours. */
    public double mean(WeatherQuantity quantity) {
        return Arrays.stream(given(quantity)).average().orElseThrow();
    }

    /**
     * The hours of a stretch.
     *
     * @param from first hour, on the hour, not before {@link #start()}
     * @param count how many, at least 1
     * @throws Refused where they are not all there
     */
    public HourlyWeather stretch(LocalDateTime from, int count) {
        int first = (int) ChronoUnit.HOURS.between(start, from);
        if (count < 1 || first < 0 || first + count > hours) {
            throw Refused.of(
                    "from",
                    from.toString(),
                    "The weather runs from " + start + " to " + time(hours) + "; " + count + " hours from " + from
                            + " are not all there.",
                    CONTENT);
        }
        Map<WeatherQuantity, double[]> chosen = new EnumMap<>(WeatherQuantity.class);
        values.forEach((quantity, hourly) -> chosen.put(quantity, Arrays.copyOfRange(hourly, first, first + count)));
        return new HourlyWeather(place, source, from, chosen, notices);
    }

    /**
     * The hours of one calendar year, without leap day.
     *
     * @throws Refused where they are not all there
     */
    public HourlyWeather calendarYear(int year) {
        LocalDateTime first = LocalDate.of(year, Month.JANUARY, 1).atStartOfDay();
        int from = (int) ChronoUnit.HOURS.between(start, first);
        boolean leap = first.toLocalDate().isLeapYear();
        int to = from + HOURS_OF_YEAR + (leap ? 24 : 0);
        if (from < 0 || to > hours) {
            throw Refused.of(
                    "year",
                    Integer.toString(year),
                    "The weather runs from " + start + " to " + time(hours) + "; that is not all of " + year + ".",
                    CONTENT);
        }
        int leapDay = from + 59 * 24;
        Map<WeatherQuantity, double[]> chosen = new EnumMap<>(WeatherQuantity.class);
        values.forEach((quantity, hourly) -> {
            double[] year8760 = new double[HOURS_OF_YEAR];
            for (int i = 0, at = from; i < HOURS_OF_YEAR; i++, at++) {
                if (leap && at == leapDay) {
                    at += 24;
                }
                year8760[i] = hourly[at];
            }
            chosen.put(quantity, year8760);
        });
        return new HourlyWeather(place, source + ", " + year, leap ? anyYear() : first, chosen, notices);
    }

    /** 1 January of the year that stands for any year. */
    static LocalDateTime anyYear() {
        return LocalDate.of(ANY_YEAR, Month.JANUARY, 1).atStartOfDay();
    }
}
