package oakum.physics.hygrothermal;

import java.time.LocalDate;
import java.util.List;

/**
 * What a drawing needs beside the result: every day of the run, and the wall's profile on each day of the last year.
 *
 * @param firstDay first day of the run, in a year that stands for any year
 * @param layers from inside, membranes included
 * @param planes names of the planes that each day follows
 * @param days of the whole run
 * @param profiles of the last year, one a day, at {@value #PROFILE_HOUR}:00
 */
public record WallTape(
        LocalDate firstDay,
        List<TapeLayer> layers,
        List<String> planes,
        List<RunResult.Day> days,
        List<RunResult.Profile> profiles) {
    /** The coldest hour of most days. */
    public static final int PROFILE_HOUR = 6;

    public WallTape {
        layers = List.copyOf(layers);
        planes = List.copyOf(planes);
        days = List.copyOf(days);
        profiles = List.copyOf(profiles);
    }

    /**
     * A layer as drawn.
     *
     * @param fromM depth of its inner face from indoors
     * @param thicknessM 0 for a membrane
     */
    public record TapeLayer(String id, String label, double fromM, double thicknessM) {}
}
