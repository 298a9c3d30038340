package oakum.portal.simulation;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A run to look through, day by day.
 *
 * @param layers what was computed, from inside to outside
 * @param planes named planes at which temperature and humidity are followed
 * @param days whole days that were computed
 * @param dayCount how many whole days were computed in all
 * @param profileFromDay the first day whose profile is kept; null where none is
 * @param profileToDay the last one
 * @param partial whether the run stopped before its end; the days are those before
 */
record Tape(
        List<TapeLayer> layers,
        List<String> planes,
        List<TapeDay> days,
        int dayCount,
        @Nullable Integer profileFromDay,
        @Nullable Integer profileToDay,
        boolean partial) {

    /**
     * One layer.
     *
     * @param fromM depth of its inner face from indoors
     * @param thicknessM 0 for a membrane
     */
    record TapeLayer(String id, String label, double fromM, double thicknessM) {}

    /**
     * One day.
     *
     * @param day counted from 0 at the start of the run
     * @param date in a year that stands for any year
     * @param layerWaterFraction water by dry mass, mean of each layer at the end of the day; 0 for a membrane
     * @param layerPeakFraction highest of the day in the wettest 5 mm of each layer, by dry mass
     * @param planeC mean temperature of the day at each plane
     * @param planeHumidityFraction mean relative humidity of the day at each plane
     */
    record TapeDay(
            int day,
            LocalDate date,
            List<Double> layerWaterFraction,
            List<Double> layerPeakFraction,
            List<Double> planeC,
            List<Double> planeHumidityFraction) {}

    /**
     * The construction at one hour of a day, one value a cell from inside to outside.
     *
     * @param hourOfDay 0 to 23, standard time
     * @param depthM centre of each cell from the indoor face
     */
    record TapeProfile(
            int day,
            LocalDate date,
            int hourOfDay,
            List<Double> depthM,
            List<Double> temperatureC,
            List<Double> humidityFraction,
            List<Double> vapourPressurePa,
            List<Double> waterKgPerM3) {}

    /** The same tape with these days only. */
    Tape between(int fromDay, int toDay) {
        return new Tape(
                layers,
                planes,
                days.stream()
                        .filter(day -> day.day() >= fromDay && day.day() <= toDay)
                        .toList(),
                dayCount,
                profileFromDay,
                profileToDay,
                partial);
    }
}
