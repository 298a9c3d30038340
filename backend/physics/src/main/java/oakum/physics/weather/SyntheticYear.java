package oakum.physics.weather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import oakum.physics.calculation.Entry;
import oakum.physics.calculation.Limits;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Quantity;
import oakum.physics.calculation.Refused;
import oakum.physics.calculation.Source;
import oakum.physics.calculation.Unit;
import oakum.physics.moistair.MoistAir;
import org.jspecify.annotations.Nullable;

/**
 * A year by the hour from twelve rows of monthly normals, always the same for the same rows. Daily means follow a smooth
 * curve that keeps each monthly mean; the day swings by the monthly range along the design day's course; vapour pressure
 * keeps its monthly course, capped at saturation; each day's sun follows the monthly mean, spread over the day and split
 * by clearness; wind keeps its monthly mean; rain falls in spells of {@value #SPELL_H} hours every third day. Good for
 * means, poor for extremes and for wind, rain and humidity that come together.
 */
public final class SyntheticYear {
    private static final Source METHOD = Source.proposed("synthetic year from monthly normals");
    static final String NORMAL_LIMIT = "wider than any monthly normal on earth";

    static final int SPELL_H = 6;
    private static final int SPELL_EVERY_DAYS = 3;
    private static final int SPELL_FIRST_HOUR = 3;
    private static final double NOISE_MEMORY = 0.7;
    private static final long NOISE_SEED = 20_010_101L;
    private static final double MOST_CLEARNESS = 0.82;

    private SyntheticYear() {}

    /** Normals of one month. */
    public record Month(
            @Quantity(label = "Mean temperature", unit = Unit.CELSIUS, min = -60, max = 45, limitSource = NORMAL_LIMIT)
            double meanTemperatureC,

            @Quantity(
                    label = "Mean daily maximum less minimum",
                    unit = Unit.KELVIN_DIFFERENCE,
                    min = 0,
                    max = 30,
                    limitSource = NORMAL_LIMIT)
            double dailyRangeK,

            @Quantity(
                    label = "Mean vapour pressure",
                    unit = Unit.PASCAL,
                    min = 1,
                    max = 4500,
                    limitSource = NORMAL_LIMIT,
                    help = "From the mean dew point, or from mean temperature and humidity.")
            double vapourPressurePa,

            @Quantity(
                    label = "Standard deviation of daily means",
                    unit = Unit.KELVIN_DIFFERENCE,
                    min = 0,
                    max = 20,
                    limitSource = NORMAL_LIMIT,
                    help = "0 for a year without good and bad days.")
            double dailyDeviationK,

            @Quantity(
                    label = "Mean global irradiance on level ground, day and night",
                    unit = Unit.WATT_PER_SQUARE_METRE,
                    min = 0,
                    max = 450,
                    limitSource = NORMAL_LIMIT,
                    help = "1 kWh/m² a day is 41.7 W/m².")
            @Nullable
            Double globalWPerM2,

            @Quantity(
                    label = "Mean wind speed",
                    unit = Unit.METRE_PER_SECOND,
                    min = 0,
                    max = 30,
                    limitSource = NORMAL_LIMIT)
            @Nullable
            Double windMPerS,

            @Quantity(
                    label = "Precipitation of the month",
                    unit = Unit.KILOGRAM_PER_SQUARE_METRE,
                    min = 0,
                    max = 3000,
                    limitSource = NORMAL_LIMIT)
            @Nullable
            Double precipitationKgPerM2) {}

    /** Twelve months, January first. */
    public record Normals(
            @Entry(label = "Months", minRows = 12, maxRows = 12)
            List<Month> months) {
        public Normals {
            months = List.copyOf(months);
        }
    }

    /**
     * Makes the year.
     *
     * @param source where the normals are from
     * @throws Refused where a month is missing or out of range, or some months lack what others have
     */
    public static HourlyWeather of(Place place, String source, Normals normals) {
        Limits.require(place);
        Limits.require(normals);
        List<Month> months = normals.months();
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.advice(
                "synthetic-year",
                "",
                "A synthetic year from monthly normals: good for means, poor for extremes and for wind, rain and"
                        + " humidity that come together.",
                METHOD));

        double[] dailyK = YearCurve.through(monthly(months, Month::meanTemperatureC));
        double[] noiseK = noise(months);
        double[] temperature = new double[HourlyWeather.HOURS_OF_YEAR];
        for (int i = 0; i < temperature.length; i++) {
            int day = i / 24;
            double range = months.get(YearCurve.month(day)).dailyRangeK();
            // the hour's begin is the clock at the end of the hour before
            int hour = i % 24 == 0 ? 24 : i % 24;
            temperature[i] = dailyK[day] + noiseK[day] + range * (DesignDay.MEAN_FRACTION - DesignDay.fraction(hour));
        }

        SunCourse sun = new SunCourse(place, HourlyWeather.anyYear(), temperature.length);
        Map<WeatherQuantity, double[]> hourly = new EnumMap<>(WeatherQuantity.class);
        hourly.put(WeatherQuantity.AIR_TEMPERATURE, temperature);
        hourly.put(WeatherQuantity.VAPOUR_PRESSURE, vapourPressure(months, temperature, notices));
        optional(months, "windMPerS", Month::windMPerS)
                .ifPresent(wind -> hourly.put(WeatherQuantity.WIND_SPEED, hourly(YearCurve.through(wind))));
        optional(months, "precipitationKgPerM2", Month::precipitationKgPerM2)
                .ifPresent(rain -> hourly.put(WeatherQuantity.PRECIPITATION, spells(rain)));
        optional(months, "globalWPerM2", Month::globalWPerM2)
                .ifPresent(mean -> hourly.put(WeatherQuantity.GLOBAL_HORIZONTAL, global(place, sun, mean)));
        Sunlight.complete(sun, hourly, notices);
        return new HourlyWeather(
                place, "Synthetic year from monthly normals: " + source, HourlyWeather.anyYear(), hourly, notices);
    }

    private interface Pick {
        @Nullable
        Double of(Month month);
    }

    private static double[] monthly(List<Month> months, ToDoubleFunction<Month> pick) {
        return months.stream().mapToDouble(pick).toArray();
    }

    private static Optional<double[]> optional(List<Month> months, String field, Pick pick) {
        List<Integer> lacking = new ArrayList<>();
        double[] picked = new double[months.size()];
        for (int m = 0; m < picked.length; m++) {
            Double value = pick.of(months.get(m));
            if (value == null) {
                lacking.add(m);
            } else {
                picked[m] = value;
            }
        }
        if (lacking.size() == picked.length) {
            return Optional.empty();
        }
        if (!lacking.isEmpty()) {
            throw Refused.of(
                    "months[" + lacking.get(0) + "]." + field,
                    "",
                    "months[" + lacking.get(0) + "]." + field
                            + " is missing; give it for all twelve months or for none.",
                    METHOD);
        }
        return Optional.of(picked);
    }

    /** Good and bad days, the same in every run; each month keeps its mean. */
    private static double[] noise(List<Month> months) {
        Random random = new Random(NOISE_SEED);
        double[] daily = new double[YearCurve.DAYS];
        double state = 0;
        double fresh = Math.sqrt(1 - NOISE_MEMORY * NOISE_MEMORY);
        for (int day = 0; day < daily.length; day++) {
            state = NOISE_MEMORY * state + fresh * random.nextGaussian();
            daily[day] = state * months.get(YearCurve.month(day)).dailyDeviationK();
        }
        double[] centre = new double[months.size()];
        for (int m = 0; m < centre.length; m++) {
            centre[m] = YearCurve.mean(daily, m);
        }
        for (int day = 0; day < daily.length; day++) {
            daily[day] -= centre[YearCurve.month(day)];
        }
        return daily;
    }

    private static double[] vapourPressure(List<Month> months, double[] temperature, List<Notice> notices) {
        // in logarithms the curve cannot pass below zero
        double[] daily = YearCurve.through(monthly(months, month -> Math.log(month.vapourPressurePa())));
        double[] pressure = new double[temperature.length];
        int capped = 0;
        for (int i = 0; i < pressure.length; i++) {
            double saturated = MoistAir.saturationPressureOverWaterPa(temperature[i]);
            double wanted = Math.exp(daily[i / 24]);
            capped += wanted > saturated ? 1 : 0;
            pressure[i] = Math.min(wanted, saturated);
        }
        if (capped > 0) {
            notices.add(Notice.note(
                    "humidity-capped",
                    WeatherQuantity.VAPOUR_PRESSURE.name(),
                    "In " + capped + " hours the month's vapour pressure is above saturation; the hours were taken as"
                            + " saturated over water.",
                    METHOD));
        }
        return pressure;
    }

    private static double[] hourly(double[] daily) {
        double[] hourly = new double[HourlyWeather.HOURS_OF_YEAR];
        for (int i = 0; i < hourly.length; i++) {
            hourly[i] = Math.max(0, daily[i / 24]);
        }
        return hourly;
    }

    private static double[] spells(double[] monthly) {
        double[] hourly = new double[HourlyWeather.HOURS_OF_YEAR];
        int[] days = new int[monthly.length];
        for (int day = 0; day < YearCurve.DAYS; day += SPELL_EVERY_DAYS) {
            days[YearCurve.month(day)]++;
        }
        for (int day = 0; day < YearCurve.DAYS; day += SPELL_EVERY_DAYS) {
            int month = YearCurve.month(day);
            // the spell comes later in the day each time, so that it favours no hour
            int first = 24 * day + (SPELL_FIRST_HOUR + 5 * (day / SPELL_EVERY_DAYS)) % (24 - SPELL_H);
            for (int hour = first; hour < first + SPELL_H; hour++) {
                hourly[hour] = monthly[month] / days[month] / SPELL_H;
            }
        }
        return hourly;
    }

    private static double[] global(Place place, SunCourse sun, double[] monthlyWPerM2) {
        double[] wanted = YearCurve.through(monthlyWPerM2);
        double[] hourly = new double[HourlyWeather.HOURS_OF_YEAR];
        for (int day = 0; day < YearCurve.DAYS; day++) {
            double sunset = SolarRadiation.sunsetHourAngle(place.latitudeDeg(), day + 1);
            double above = SolarRadiation.extraterrestrialDayMJPerM2(place.latitudeDeg(), day + 1) * 1e6 / 86_400;
            double mean = Math.max(0, Math.min(wanted[day], MOST_CLEARNESS * above));
            double[] share = new double[24];
            double sum = 0;
            for (int hour = 0; hour < 24; hour++) {
                double solarMinutes = 60 * (hour + 0.5)
                        + 4 * place.longitudeDeg()
                        - 60 * place.standardOffsetH()
                        + sun.position(24 * day + hour).equationOfTimeMin();
                double angle = Math.toRadians(solarMinutes / 4 - 180);
                double wrapped = Math.atan2(Math.sin(angle), Math.cos(angle));
                share[hour] = sunset <= 0 ? 0 : SolarRadiation.hourlyShare(wrapped, sunset);
                sum += share[hour];
            }
            for (int hour = 0; hour < 24 && sum > 0; hour++) {
                hourly[24 * day + hour] = 24 * mean * share[hour] / sum;
            }
        }
        return hourly;
    }
}
