package oakum.physics.hygrothermal;

import java.util.function.IntToDoubleFunction;
import oakum.physics.exposure.BoundaryHour;
import oakum.physics.exposure.BoundarySeries;

/**
 * What surrounds a wall, from an hourly boundary series. Build the series with a constant film equal to that of the
 * wall's outer face: the equivalent temperature holds for the film it was made with.
 */
public final class BoundaryClimate {
    private BoundaryClimate() {}

    /** The climate of a series, for a wall whose cavities, if any, are not ventilated; not for two runs at once. */
    public static Climate of(BoundarySeries series) {
        return of(series, 0, hour -> 0);
    }

    /**
     * The climate of a series; not for two runs at once.
     *
     * @param firstHour hour of the series with which the run begins
     * @param cavityAirChangesPerHour of outdoor air through ventilated cavities at the begin of each hour, at least 0
     */
    public static Climate of(BoundarySeries series, int firstHour, IntToDoubleFunction cavityAirChangesPerHour) {
        return new HourlyClimate((hour, state) -> {
            BoundaryHour given = series.hour(firstHour + hour);
            state.outdoorTemperatureC = given.outdoorTemperatureC();
            state.outdoorEquivalentC = given.equivalentTemperatureC();
            state.outdoorVapourPa = given.outdoorVapourPressurePa();
            state.rainKgPerM2S = given.rainKgPerM2H() / Constants.SECONDS_PER_HOUR;
            state.indoorTemperatureC = given.indoorTemperatureC();
            state.indoorVapourPa = given.indoorVapourPressurePa();
            state.airflowM3PerM2S = 0;
            state.leakM3PerM2S = given.leakM3PerSM2();
            state.cavityAirChangesPerHour = cavityAirChangesPerHour.applyAsDouble(hour);
        });
    }
}
