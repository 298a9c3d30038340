package oakum.physics.weather;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;

/** Makes equal hours of values that come in any step up to an hour, and says what it bridged, dropped or cut. */
final class Hours {
    /** Where a value of sun or rain lies. */
    enum Interval {
        BEFORE_STAMP,
        AFTER_STAMP
    }

    private static final Source RULES = Source.proposed("gaps of weather: up to 6 h by a straight line, up to 72 h by"
            + " the same hours of the days around, longer refused; sun by the days around, rain taken as none");
    private static final int HOUR_S = 3600;

    /** A table within this many hours of a whole calendar year is taken as that year. */
    private static final int MOSTLY_A_YEAR_H = HourlyWeather.HOURS_OF_YEAR - 2 * Gaps.LONGEST_H;

    /** Share of an hour's readings of sun or rain that must be there. */
    private static final double ENOUGH = 0.5;

    private final Place place;
    private final String source;
    private final Interval interval;
    private final List<Notice> notices;
    private final Map<WeatherQuantity, TimedValues> given;
    private final int stepS;
    private final long[] times;

    /**
     * Begins.
     *
     * @param given times in standard time of the place, as if it were UTC
     * @param notices what was said so far; grows
     */
    Hours(
            Place place,
            String source,
            Interval interval,
            Map<WeatherQuantity, TimedValues> given,
            List<Notice> notices) {
        this.place = place;
        this.source = source;
        this.interval = interval;
        this.given = given;
        this.notices = notices;
        this.times = times();
        this.stepS = stepS();
    }

    /** Times of the air temperature, in order. */
    private long[] times() {
        TimedValues temperature = given.get(WeatherQuantity.AIR_TEMPERATURE);
        if (temperature == null || temperature.values().length < 2) {
            throw Refused.of("rows", "", "The table has fewer than two hours with an air temperature.", RULES);
        }
        long[] times = temperature.epochSecond();
        int backwards = 0;
        for (int i = 1; i < times.length; i++) {
            backwards += times[i] < times[i - 1] ? 1 : 0;
        }
        note(backwards, "rows-out-of-order", "%d rows stand before an earlier one; all were put in order of time.");
        Arrays.sort(times);
        return times;
    }

    /** Seconds between them. */
    private int stepS() {
        long[] steps = new long[times.length - 1];
        int twice = 0;
        int count = 0;
        for (int i = 1; i < times.length; i++) {
            if (times[i] == times[i - 1]) {
                twice++;
            } else {
                steps[count++] = times[i] - times[i - 1];
            }
        }
        note(twice, "times-given-twice", "%d times are given more than once; their values were averaged.");
        Arrays.sort(steps, 0, count);
        int median = count == 0 ? 0 : (int) steps[count / 2];
        if (median == 0 || median > HOUR_S) {
            throw Refused.of(
                    "time",
                    Integer.toString(median),
                    "The rows are " + median + " s apart; weather needs rows at most an hour apart.",
                    RULES);
        }
        return median;
    }

    private void note(int count, String code, String sentence) {
        if (count > 0) {
            notices.add(Notice.note(code, "", String.format(Locale.ROOT, sentence, count), RULES));
        }
    }

    /** The typical year: months of any years, already dated in the one that stands for any. */
    HourlyWeather typicalYear() {
        return wholeYear(HourlyWeather.anyYear(), false);
    }

    /** The hours as dated; a table that is nearly one calendar year becomes that year. */
    HourlyWeather asDated() {
        long first = hourOfState(times[0]);
        long last = hourOfState(times[times.length - 1]);
        int year = LocalDateTime.ofEpochSecond((first + Gaps.LONGEST_H) * HOUR_S, 0, ZoneOffset.UTC)
                .getYear();
        LocalDate newYear = LocalDate.of(year, Month.JANUARY, 1);
        long begin = newYear.atStartOfDay().toEpochSecond(ZoneOffset.UTC) / HOUR_S;
        long end = begin + 24L * newYear.lengthOfYear();
        if (first >= begin && last <= end && last - first >= MOSTLY_A_YEAR_H) {
            return wholeYear(newYear.atStartOfDay(), newYear.isLeapYear());
        }
        // the last row says nothing of the hour after it where sums lie before their stamp
        int hours = (int) (last - first) + (interval == Interval.AFTER_STAMP ? 1 : 0);
        return built(LocalDateTime.ofEpochSecond(first * HOUR_S, 0, ZoneOffset.UTC), hours, false, false);
    }

    private HourlyWeather wholeYear(LocalDateTime start, boolean leap) {
        return built(start, HourlyWeather.HOURS_OF_YEAR + (leap ? 24 : 0), true, leap);
    }

    private HourlyWeather built(LocalDateTime start, int hours, boolean wraps, boolean leap) {
        long first = start.toEpochSecond(ZoneOffset.UTC) / HOUR_S;
        Map<WeatherQuantity, double[]> hourly = new EnumMap<>(WeatherQuantity.class);
        given.forEach((quantity, values) -> {
            double[] binned = binned(quantity, values, first, hours, wraps);
            if (bridged(quantity, binned, start, wraps)) {
                hourly.put(quantity, leap ? withoutLeapDay(binned) : binned);
            }
        });
        if (leap) {
            notices.add(Notice.note(
                    "leap-day-removed",
                    "",
                    "The table has " + hours + " hours; 29 February was left out, so that the year has 8760.",
                    RULES));
        }
        LocalDateTime dated = leap ? HourlyWeather.anyYear() : start;
        Sunlight.complete(new SunCourse(place, dated, hours - (leap ? 24 : 0)), hourly, notices);
        return new HourlyWeather(place, source, dated, hourly, notices);
    }

    private static long hourOfState(long second) {
        return Math.floorDiv(second + HOUR_S / 2, (long) HOUR_S);
    }

    private long hourOfMean(long second) {
        long middle = interval == Interval.BEFORE_STAMP ? second - stepS / 2 - 1 : second + stepS / 2;
        return Math.floorDiv(middle, (long) HOUR_S);
    }

    private double[] binned(WeatherQuantity quantity, TimedValues values, long first, int hours, boolean wraps) {
        WeatherQuantity.Kind kind = quantity.kind();
        boolean mean = kind == WeatherQuantity.Kind.SUN || kind == WeatherQuantity.Kind.SUM;
        long[] at = values.epochSecond();
        double[] read = values.values();
        double[] sum = new double[hours];
        double[] across = new double[hours];
        int[] count = new int[hours];
        for (int i = 0; i < at.length; i++) {
            long counted = (mean ? hourOfMean(at[i]) : hourOfState(at[i])) - first;
            // the moment at which a year ends is the one at which it begins
            int hour = wraps && (counted == -1 || counted == hours) ? Math.floorMod(counted, hours) : (int) counted;
            if (counted < -1 || counted > hours || hour < 0 || hour >= hours) {
                continue;
            }
            if (kind == WeatherQuantity.Kind.DIRECTION) {
                sum[hour] += Math.cos(Math.toRadians(read[i]));
                across[hour] += Math.sin(Math.toRadians(read[i]));
            } else {
                sum[hour] += read[i];
            }
            count[hour]++;
        }
        double needed = mean ? ENOUGH * HOUR_S / stepS : 1;
        for (int i = 0; i < hours; i++) {
            if (count[i] < needed) {
                sum[i] = Double.NaN;
            } else if (kind == WeatherQuantity.Kind.DIRECTION) {
                double degrees = Math.toDegrees(Math.atan2(across[i], sum[i]));
                sum[i] = degrees < 0 ? degrees + 360 : degrees;
            } else {
                sum[i] /= count[i];
            }
        }
        return sum;
    }

    /** Bridges the gaps; false where a quantity that weather can do without is too broken to keep. */
    private boolean bridged(WeatherQuantity quantity, double[] hourly, LocalDateTime start, boolean wraps) {
        Gaps.Bridged bridged = Gaps.bridge(hourly, quantity.kind(), wraps);
        if (bridged.hours() == 0) {
            return true;
        }
        String where = start.plusHours(bridged.firstHour()).toString();
        if (bridged.complete()) {
            notices.add(Notice.note(
                    "gaps-bridged",
                    quantity.name(),
                    "The " + quantity.label() + " was missing in " + bridged.hours() + " hours, at most "
                            + bridged.longestH() + " in a row (from " + where + "); " + how(quantity.kind()) + ".",
                    RULES));
            return true;
        }
        String broken = "The " + quantity.label() + " is missing for " + bridged.longestH() + " hours in a row from "
                + where + "; at most " + Gaps.LONGEST_H + " can be bridged";
        if (quantity == WeatherQuantity.AIR_TEMPERATURE || quantity == WeatherQuantity.VAPOUR_PRESSURE) {
            throw Refused.of(quantity.name(), where, broken + ".", RULES);
        }
        notices.add(Notice.advice(
                "quantity-left-out", quantity.name(), broken + ", so the weather is kept without it.", RULES));
        return false;
    }

    private static String how(WeatherQuantity.Kind kind) {
        return switch (kind) {
            case STATE ->
                "up to 6 hours were bridged by a straight line, longer gaps by the same hours of the days around";
            case SUN -> "the same hours of the days around were taken";
            case DIRECTION -> "the direction before was held";
            case SUM -> "none was taken";
        };
    }

    private static double[] withoutLeapDay(double[] hourly) {
        int leapDay = 59 * 24;
        double[] year = new double[hourly.length - 24];
        System.arraycopy(hourly, 0, year, 0, leapDay);
        System.arraycopy(hourly, leapDay + 24, year, leapDay, year.length - leapDay);
        return year;
    }
}
