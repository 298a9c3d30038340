package oakum.physics.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Refused;
import oakum.physics.moistair.MoistAir;

/** Weather from the house's own sensors, whatever their steps up to an hour. */
public final class HouseReadings {
    private static final double MOST_HUMIDITY = 1.1;

    private HouseReadings() {}

    /**
     * Makes equal hours of readings.
     *
     * @param relativeHumidity fractions over water, also below freezing, as sensors give it; 0 to 1.1. May have other
     *     times than the temperature
     * @param others further quantities; vapour pressure must not be among them
     * @throws Refused where a reading is out of range, or readings are missing for longer than three days
     */
    public static HourlyWeather hourly(
            Place place,
            String source,
            TimedValues airTemperature,
            TimedValues relativeHumidity,
            Map<WeatherQuantity, TimedValues> others) {
        Map<WeatherQuantity, TimedValues> given = new EnumMap<>(WeatherQuantity.class);
        others.forEach((quantity, values) -> given.put(quantity, local(place, quantity, values)));
        TimedValues temperature = local(place, WeatherQuantity.AIR_TEMPERATURE, airTemperature);
        given.put(WeatherQuantity.AIR_TEMPERATURE, temperature);
        given.put(WeatherQuantity.VAPOUR_PRESSURE, vapourPressure(place, temperature, relativeHumidity));
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.note(
                "humidity-convention",
                WeatherQuantity.VAPOUR_PRESSURE.name(),
                "Relative humidity was read as counted over water, as sensors give it.",
                WeatherTable.READING));
        return new Hours(place, source, Hours.Interval.BEFORE_STAMP, given, notices).asDated();
    }

    /** With the times of the place's clock, in range. */
    private static TimedValues local(Place place, WeatherQuantity quantity, TimedValues values) {
        double[] read = values.values();
        for (int i = 0; i < read.length; i++) {
            if (!(read[i] >= quantity.min() && read[i] <= quantity.max())) {
                throw new Refused(OutOfRange.violation(quantity, "reading " + i, read[i]));
            }
        }
        return new TimedValues(local(place, values.epochSecond()), read);
    }

    private static long[] local(Place place, long[] epochSecond) {
        long offsetS = place.offset().getTotalSeconds();
        return Arrays.stream(epochSecond).map(second -> second + offsetS).toArray();
    }

    private static TimedValues vapourPressure(Place place, TimedValues temperature, TimedValues relativeHumidity) {
        long[] times = local(place, relativeHumidity.epochSecond());
        double[] pressures = relativeHumidity.values();
        for (int i = 0; i < pressures.length; i++) {
            if (!(pressures[i] >= 0 && pressures[i] <= MOST_HUMIDITY)) {
                throw new Refused(OutOfRange.violation(
                        "reading " + i, "relative humidity", Double.toString(pressures[i]), 0, MOST_HUMIDITY, "1"));
            }
        }
        Sorted at = new Sorted(temperature);
        for (int i = 0; i < pressures.length; i++) {
            pressures[i] = Math.min(1, pressures[i]) * MoistAir.saturationPressureOverWaterPa(at.value(times[i]));
        }
        return new TimedValues(times, pressures);
    }

    /** Values in order of time, read between times by a straight line and level beyond the ends. */
    private static final class Sorted {
        private final long[] times;
        private final double[] values;

        Sorted(TimedValues given) {
            long[] t = given.epochSecond();
            double[] v = given.values();
            Integer[] order = new Integer[t.length];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, (a, b) -> Long.compare(t[a], t[b]));
            times = Arrays.stream(order).mapToLong(i -> t[i]).toArray();
            values = Arrays.stream(order).mapToDouble(i -> v[i]).toArray();
        }

        double value(long time) {
            int at = Arrays.binarySearch(times, time);
            if (at >= 0) {
                return values[at];
            }
            int next = -at - 1;
            if (next == 0) {
                return values[0];
            }
            if (next == times.length) {
                return values[next - 1];
            }
            double share = (double) (time - times[next - 1]) / (times[next] - times[next - 1]);
            return values[next - 1] + share * (values[next] - values[next - 1]);
        }
    }
}
