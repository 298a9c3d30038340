package oakum.physics.hygrothermal;

import java.util.List;

/**
 * How long and how finely to compute.
 *
 * @param hours length of the run, 1 to 438300 (50 years)
 * @param initialTemperatureC temperature of the whole wall at the start, −40 to 80
 * @param baseStepS longest step, 1 to 3600; a step always ends on the hour
 * @param errorK estimated error of one step above which it is halved, 0.001 to 10; 2 % of humidity counts as one kelvin
 * @param newtonK change below which the iteration of a step ends, 1e-9 to 0.5
 * @param grid how the wall is divided
 * @param profileHours hours whose profile is kept, counted from the start; 0 is the start itself
 */
public record RunPlan(
        int hours,
        double initialTemperatureC,
        double baseStepS,
        double errorK,
        double newtonK,
        GridRule grid,
        List<Integer> profileHours) {
    public RunPlan {
        profileHours = List.copyOf(profileHours);
    }

    /** A run of so many hours with the usual steps and grid, from 10 °C, that keeps no profile. */
    public static RunPlan hours(int hours) {
        return new RunPlan(hours, 10, 3600, 1, 0.05, GridRule.usual(), List.of());
    }

    /** The same plan starting at this temperature. */
    public RunPlan startingAt(double temperatureC) {
        return new RunPlan(hours, temperatureC, baseStepS, errorK, newtonK, grid, profileHours);
    }

    /** The same plan with these longest steps and error bounds. */
    public RunPlan withSteps(double longestS, double stepErrorK, double iterationK) {
        return new RunPlan(hours, initialTemperatureC, longestS, stepErrorK, iterationK, grid, profileHours);
    }

    /** The same plan on this grid. */
    public RunPlan on(GridRule rule) {
        return new RunPlan(hours, initialTemperatureC, baseStepS, errorK, newtonK, rule, profileHours);
    }

    /** The same plan keeping the profiles of these hours. */
    public RunPlan keepingProfilesAt(List<Integer> chosen) {
        return new RunPlan(hours, initialTemperatureC, baseStepS, errorK, newtonK, grid, chosen);
    }
}
