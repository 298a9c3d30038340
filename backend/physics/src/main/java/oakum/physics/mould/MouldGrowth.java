package oakum.physics.mould;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The mould index of one surface, fed with its climate as it goes by: simulated hours, measured readings or a steady
 * stretch alike. Integrated as the sources do, with explicit steps of at most one hour.
 *
 * <pre>{@code
 * MouldGrowth growth = new MouldGrowth(MouldSurface.SENSITIVE, 0.1, BelowFreezingMould.DECLINES, 0);
 * for (int hour = 0; hour < 8760; hour++) {
 *     growth.add(hour + 1, surfaceC[hour], surfaceHumidity[hour]);
 * }
 * double worst = growth.greatest();
 * }</pre>
 *
 * <p>Index 1: first growth under the microscope. 2: several colonies under the microscope. 3: seen by the eye, under
 * 10 % of the surface. 4: 10 to 50 %. 5: above 50 %. 6: about all of it.
 */
public final class MouldGrowth extends HourSteps {
    /** Index at which the eye sees mould, and which ASHRAE 160-2016 does not allow to be reached. */
    public static final double VISIBLE = 3;

    /** Half the width of what the model can tell, in index steps (common practice). */
    public static final double UNCERTAINTY = 1;

    private static final double DECLINE_PER_DAY_AT_FIRST = 0.032;
    private static final double DECLINE_PER_DAY_LATER = 0.016;
    private static final double FIRST_DECLINE_H = 6;
    private static final double STANDSTILL_ENDS_H = 24;

    private final MouldSurface surface;
    private final double declineFactor;
    private final BelowFreezingMould belowFreezing;
    private double index;
    private double greatest;
    private double greatestAtH;
    private double unfavourableForH;
    private double favourableH;
    private double visibleH;
    private double firstGrowthAtH = Double.NaN;
    private double visibleAtH = Double.NaN;
    private double[] byDay = new double[64];
    private int dayCount;

    /**
     * Starts at hour 0.
     *
     * @param surface what the mould would grow on
     * @param declineFactor 0 to 1, share of the decline of pine: 1 strong, 0.5 significant, 0.25 relatively low, 0.1
     *     almost none; 0.1 where untested (ASHRAE 160-2016, from memory)
     * @param belowFreezing what hours at or below 0 °C do
     * @param startIndex 0 to 6, what is there at the start
     * @throws IllegalArgumentException outside these ranges
     */
    public MouldGrowth(
            MouldSurface surface, double declineFactor, BelowFreezingMould belowFreezing, double startIndex) {
        if (!(declineFactor >= 0 && declineFactor <= 1)) {
            throw new IllegalArgumentException("decline factor " + declineFactor + " is outside 0 to 1");
        }
        if (!(startIndex >= 0 && startIndex <= 6)) {
            throw new IllegalArgumentException("start index " + startIndex + " is outside 0 to 6");
        }
        this.surface = surface;
        this.declineFactor = declineFactor;
        this.belowFreezing = belowFreezing;
        this.index = startIndex;
        this.greatest = startIndex;
        mark(0);
    }

    /**
     * Adds what the surface saw from the last end to this one.
     *
     * @param hoursSinceStart end of the stretch, after the last end; the first stretch begins at 0
     * @param temperatureC mean surface temperature of the stretch, −100 to 150
     * @param relativeHumidityFraction mean relative humidity at the surface, over water, 0 to 2; above 1 counts as 1
     * @throws IllegalArgumentException where time does not go forward or a value is outside its range
     */
    public void add(double hoursSinceStart, double temperatureC, double relativeHumidityFraction) {
        walk(hoursSinceStart, temperatureC, relativeHumidityFraction, "relative humidity");
    }

    @Override
    void step(double startH, double lengthH, double temperatureC, double humidity) {
        double humid = Math.min(humidity, 1);
        if (surface.isFavourable(temperatureC, humid)) {
            index += surface.growthPerDay(index, temperatureC, humid) * lengthH / 24;
            unfavourableForH = 0;
            favourableH += lengthH;
        } else if (temperatureC > 0 || belowFreezing == BelowFreezingMould.DECLINES) {
            index = Math.max(index - declineFactor * declinePerDay() * lengthH / 24, 0);
            unfavourableForH += lengthH;
        }
        double endH = startH + lengthH;
        if (index > greatest) {
            greatest = index;
            greatestAtH = endH;
        }
        if (index >= VISIBLE) {
            visibleH += lengthH;
        }
        mark(endH);
        keepDay(endH);
    }

    @Override
    void skipped(double startH, double endH) {
        keepDay(endH);
    }

    private double declinePerDay() {
        if (unfavourableForH < FIRST_DECLINE_H) {
            return DECLINE_PER_DAY_AT_FIRST;
        }
        return unfavourableForH < STANDSTILL_ENDS_H ? 0 : DECLINE_PER_DAY_LATER;
    }

    private void mark(double endH) {
        if (index >= 1 && Double.isNaN(firstGrowthAtH)) {
            firstGrowthAtH = endH;
        }
        if (index >= VISIBLE && Double.isNaN(visibleAtH)) {
            visibleAtH = endH;
        }
    }

    private void keepDay(double endH) {
        int whole = (int) Math.floor(endH / 24);
        if (whole > byDay.length) {
            byDay = Arrays.copyOf(byDay, Math.max(whole, 2 * byDay.length));
        }
        while (dayCount < whole) {
            byDay[dayCount] = index;
            dayCount++;
        }
    }

    /** The index now. */
    public double index() {
        return index;
    }

    /** The greatest index so far. */
    public double greatest() {
        return greatest;
    }

    /** When the greatest index was reached first, hours since the start. */
    public double greatestAtHours() {
        return greatestAtH;
    }

    /** The index at the end of each whole day, oldest first. */
    public double[] byDay() {
        return Arrays.copyOf(byDay, dayCount);
    }

    /** Hours in which mould could grow. */
    public double favourableHours() {
        return favourableH;
    }

    /** Hours with the index at 3 or above. */
    public double visibleHours() {
        return visibleH;
    }

    /** When index 1 was reached, hours since the start; null where it was not. */
    public @Nullable Double firstGrowthAtHours() {
        return Double.isNaN(firstGrowthAtH) ? null : (Double) firstGrowthAtH;
    }

    /** When index 3 was reached, hours since the start; null where it was not. */
    public @Nullable Double visibleAtHours() {
        return Double.isNaN(visibleAtH) ? null : (Double) visibleAtH;
    }
}
