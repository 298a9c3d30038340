package oakum.physics.hygrothermal;

import java.util.List;
import oakum.physics.moistair.Iso13788Saturation;
import oakum.physics.mould.BelowFreezingMould;
import oakum.physics.mould.MouldGrowth;
import oakum.physics.mould.MouldSurface;
import oakum.physics.mould.ThirtyDayHumidity;
import oakum.physics.mould.WoodDecay;

/** What grows at the named planes of a wall: feeds mould, thirty-day humidity and decay with the hours of a run. */
public final class PlaneRisks implements HourSink {
    /** An overfull cell may show more; beyond saturation nothing changes for what grows. */
    private static final double MOST_HUMIDITY = 1;

    private final MouldGrowth[] mould;
    private final ThirtyDayHumidity[] thirtyDays;
    private final WoodDecay[] decay;

    /**
     * What the surface at a plane is.
     *
     * @param surface on which mould would grow
     * @param declineFactor 0 to 1, see {@link MouldGrowth}
     * @param belowFreezing what hours at or below 0 °C do
     */
    public record Surface(MouldSurface surface, double declineFactor, BelowFreezingMould belowFreezing) {}

    /**
     * Starts clean.
     *
     * @param surfaces one for each plane of the wall, in its order
     */
    public PlaneRisks(List<Surface> surfaces) {
        int planes = surfaces.size();
        mould = new MouldGrowth[planes];
        thirtyDays = new ThirtyDayHumidity[planes];
        decay = new WoodDecay[planes];
        for (int p = 0; p < planes; p++) {
            Surface one = surfaces.get(p);
            mould[p] = new MouldGrowth(one.surface(), one.declineFactor(), one.belowFreezing(), 0);
            thirtyDays[p] = new ThirtyDayHumidity();
            decay[p] = new WoodDecay();
        }
    }

    @Override
    public void accept(HourView hour) {
        for (int p = 0; p < mould.length; p++) {
            double temperature = hour.planeTemperatureC(p);
            double humidity = overWater(temperature, hour.planeHumidity(p));
            mould[p].add(hour.hour(), temperature, humidity);
            thirtyDays[p].add(hour.hour(), temperature, humidity);
            decay[p].add(hour.hour(), temperature, humidity);
        }
    }

    /** The models of mould and decay count humidity over water, the solver over ice below 0 °C. */
    private static double overWater(double temperatureC, double humidity) {
        double over = temperatureC >= 0
                ? humidity
                : humidity
                        * Iso13788Saturation.pressurePa(temperatureC)
                        / Iso13788Saturation.pressureOverWaterPa(temperatureC);
        return Math.min(over, MOST_HUMIDITY);
    }

    /** Mould at a plane so far. */
    public MouldGrowth mould(int plane) {
        return mould[plane];
    }

    /** Thirty-day humidity at a plane so far. */
    public ThirtyDayHumidity thirtyDays(int plane) {
        return thirtyDays[plane];
    }

    /** Decay of wood at a plane so far. */
    public WoodDecay decay(int plane) {
        return decay[plane];
    }
}
