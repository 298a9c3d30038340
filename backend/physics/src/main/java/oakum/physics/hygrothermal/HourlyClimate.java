package oakum.physics.hygrothermal;

/**
 * A climate from one state an hour. Temperatures, vapour pressures and flows of air run straight from each hour's state
 * to the next hour's; rain is the mean over the hour and stands still within it. The equivalent temperature runs
 * straight in its air part and stands still in what sun and sky add, since that is an hourly mean too.
 */
public final class HourlyClimate implements Climate {
    /** Gives the state of one hour: instantaneous values at its start, means over it for rain and sun. */
    @FunctionalInterface
    public interface Hours {
        /** Fills in the state of an hour, 0 up to and including the number of hours of the run. */
        void at(int hour, ClimateState state);
    }

    private final Hours hours;
    private final ClimateState start = new ClimateState();
    private final ClimateState end = new ClimateState();
    private int held = -1;

    /** A climate from a source of hourly states; not for use by two runs at once. */
    public HourlyClimate(Hours hours) {
        this.hours = hours;
    }

    @Override
    public void at(int hour, double fraction, ClimateState state) {
        if (hour != held) {
            if (hour == held + 1 && held >= 0) {
                start.set(end);
            } else {
                hours.at(hour, start);
            }
            hours.at(hour + 1, end);
            held = hour;
        }
        state.outdoorTemperatureC = between(start.outdoorTemperatureC, end.outdoorTemperatureC, fraction);
        state.outdoorEquivalentC = state.outdoorTemperatureC + start.outdoorEquivalentC - start.outdoorTemperatureC;
        state.outdoorVapourPa = between(start.outdoorVapourPa, end.outdoorVapourPa, fraction);
        state.rainKgPerM2S = start.rainKgPerM2S;
        state.indoorTemperatureC = between(start.indoorTemperatureC, end.indoorTemperatureC, fraction);
        state.indoorVapourPa = between(start.indoorVapourPa, end.indoorVapourPa, fraction);
        state.airflowM3PerM2S = between(start.airflowM3PerM2S, end.airflowM3PerM2S, fraction);
        state.leakM3PerM2S = between(start.leakM3PerM2S, end.leakM3PerM2S, fraction);
        state.cavityAirChangesPerHour = between(start.cavityAirChangesPerHour, end.cavityAirChangesPerHour, fraction);
    }

    private static double between(double a, double b, double fraction) {
        return a + fraction * (b - a);
    }
}
