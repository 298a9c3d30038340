package oakum.physics.weather;

import java.time.LocalDateTime;

/**
 * Where the sun stands in each hour: in the middle of that part of the hour in which it is up, so that the hours of
 * sunrise and sunset are not taken for night. Compute it once for all surfaces of a house.
 */
public final class SunCourse {
    private static final int HOUR_S = 3600;
    private static final int PARTS = 12;

    private final SolarPosition[] positions;
    private final double[] extraterrestrialWPerM2;

    /** The course over the hours of a weather. */
    public static SunCourse over(HourlyWeather weather) {
        return new SunCourse(weather.place(), weather.start(), weather.hours());
    }

    SunCourse(Place place, LocalDateTime start, int hours) {
        positions = new SolarPosition[hours];
        extraterrestrialWPerM2 = new double[hours];
        long first = start.toEpochSecond(place.offset());
        for (int i = 0; i < hours; i++) {
            positions[i] = seen(place, first + (long) i * HOUR_S);
            extraterrestrialWPerM2[i] = SolarRadiation.extraterrestrialNormalWPerM2(
                    start.plusHours(i).getDayOfYear());
        }
    }

    private static SolarPosition seen(Place place, long second) {
        SolarPosition middle = at(place, (double) second + HOUR_S / 2);
        // the sun moves less than 16° in an hour: deep night and full day need no closer look
        if (Math.abs(middle.elevationDeg()) > 16) {
            return middle;
        }
        double first = Double.NaN;
        double last = Double.NaN;
        for (int part = 0; part < PARTS; part++) {
            double at = (double) second + (part + 0.5) * HOUR_S / PARTS;
            if (at(place, at).zenithDeg() < 90) {
                first = Double.isNaN(first) ? at : first;
                last = at;
            }
        }
        return Double.isNaN(first) ? middle : at(place, (first + last) / 2);
    }

    private static SolarPosition at(Place place, double epochSecond) {
        return SolarPosition.at(place.latitudeDeg(), place.longitudeDeg(), epochSecond, 0);
    }

    public int hours() {
        return positions.length;
    }

    /** The sun in an hour; with a zenith above 90° where it is not up at all. */
    public SolarPosition position(int hour) {
        return positions[hour];
    }

    /** Irradiance above the air, facing the sun. */
    public double extraterrestrialNormalWPerM2(int hour) {
        return extraterrestrialWPerM2[hour];
    }
}
