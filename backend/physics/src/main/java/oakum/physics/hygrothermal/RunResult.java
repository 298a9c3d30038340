package oakum.physics.hygrothermal;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a run found. Of an unfinished run everything holds up to {@link #hoursDone} and no farther.
 *
 * @param outcome whether it went through
 * @param stop where and when it could not go on; null unless the outcome is {@link Outcome#NOT_CONVERGED}
 * @param hoursDone hours computed
 * @param layers one per layer, membranes included
 * @param yearsToBalance the first year after whose end the wall's water was within 1 % of that a year before in every
 *     layer; null where no such year was reached
 * @param frostHours hours below 0 °C in which some cell held air of 95 % relative humidity or more
 * @param overfullHours hours in which some cell held more water than its material can bind: there water would drip or
 *     run, which this calculation does not follow
 * @param runOffKgPerM2 rain that reached the wall and was not taken up
 * @param days one per whole day, for a year strip
 * @param profiles one per profile hour reached
 * @param balance moisture and energy accounts
 * @param statistics of the solver
 */
public record RunResult(
        Outcome outcome,
        @Nullable Stop stop,
        int hoursDone,
        List<LayerResult> layers,
        @Nullable Integer yearsToBalance,
        int frostHours,
        int overfullHours,
        double runOffKgPerM2,
        List<Day> days,
        List<Profile> profiles,
        Balance balance,
        Statistics statistics) {

    /** How a run ended. */
    public enum Outcome {
        FINISHED,
        CANCELLED,
        NOT_CONVERGED
    }

    /**
     * Where and when a run could not go on.
     *
     * @param layer name of the layer
     * @param depthM depth in that layer from its inner face
     * @param hour hours since the start
     * @param why in a sentence
     */
    public record Stop(String layer, double depthM, double hour, String why) {}

    /**
     * One layer's moisture over the run. Mass % is water by dry mass; 0 for a membrane.
     *
     * @param name of the layer
     * @param startKgPerM2 water at the start
     * @param endKgPerM2 water at the end
     * @param endMassPercent mean at the end
     * @param peakMassPercent highest mean of the layer
     * @param peakHour when, hours since the start
     * @param worstPeakMassPercent highest mean of its wettest 5 mm
     * @param worstPeakHour when
     * @param lastYear net moisture flows over the last whole year (over the whole run where it is shorter)
     */
    public record LayerResult(
            String name,
            double startKgPerM2,
            double endKgPerM2,
            double endMassPercent,
            double peakMassPercent,
            int peakHour,
            double worstPeakMassPercent,
            int worstPeakHour,
            Drying lastYear) {}

    /**
     * Where a layer's water goes.
     *
     * @param throughInnerFaceKgPerM2 net, out of the layer towards inside positive
     * @param throughOuterFaceKgPerM2 net, out of the layer towards outside positive
     */
    public record Drying(double throughInnerFaceKgPerM2, double throughOuterFaceKgPerM2) {
        /** Share of the drying that goes inward: 1 all inward, 0 all outward; NaN where nothing leaves. */
        public double inwardShare() {
            double inward = Math.max(0, throughInnerFaceKgPerM2);
            return inward / (inward + Math.max(0, throughOuterFaceKgPerM2));
        }
    }

    /**
     * One day of the year strip.
     *
     * @param day counted from 0
     * @param layerMassPercent mean of the day's last hour, one per layer
     * @param layerWorstMassPercent highest of the day in the wettest 5 mm, one per layer
     * @param planeTemperatureC mean of the day, one per plane
     * @param planeHumidity mean of the day, one per plane
     */
    public record Day(
            int day,
            List<Double> layerMassPercent,
            List<Double> layerWorstMassPercent,
            List<Double> planeTemperatureC,
            List<Double> planeHumidity) {}

    /**
     * The wall at one hour, one value per cell from inside to outside.
     *
     * @param hour since the start
     * @param depthM centre of the cell from the indoor face
     * @param temperatureC temperature
     * @param humidity relative humidity, fraction
     * @param vapourPressurePa vapour pressure
     * @param waterKgPerM3 water
     */
    public record Profile(
            int hour,
            List<Double> depthM,
            List<Double> temperatureC,
            List<Double> humidity,
            List<Double> vapourPressurePa,
            List<Double> waterKgPerM3) {}

    /**
     * Accounts of a run: what came in less what went out is what is stored, but for the error.
     *
     * @param waterInKgPerM2 everything that entered
     * @param waterOutKgPerM2 everything that left
     * @param waterStoredKgPerM2 water at the end less water at the start
     * @param waterErrorOfThroughput what is left over, as a fraction of all that passed
     * @param heatInJPerM2 everything that entered, latent heat included
     * @param heatOutJPerM2 everything that left
     * @param heatStoredJPerM2 what warmed up the wall
     * @param heatErrorOfThroughput what is left over, as a fraction of all that passed
     */
    public record Balance(
            double waterInKgPerM2,
            double waterOutKgPerM2,
            double waterStoredKgPerM2,
            double waterErrorOfThroughput,
            double heatInJPerM2,
            double heatOutJPerM2,
            double heatStoredJPerM2,
            double heatErrorOfThroughput) {}

    /**
     * How the solver fared.
     *
     * @param cells number of cells
     * @param steps steps taken
     * @param halvedForError steps refused because their estimated error was too great
     * @param halvedForIteration steps refused because their iteration did not converge
     * @param iterations linear systems solved
     * @param largestErrorK greatest estimated error of a step taken
     * @param shortestStepS shortest step taken
     */
    public record Statistics(
            int cells,
            long steps,
            long halvedForError,
            long halvedForIteration,
            long iterations,
            double largestErrorK,
            double shortestStepS) {}
}
