package oakum.portal.commissioning;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import oakum.physics.airtightness.TightnessTest;
import oakum.portal.houserecord.VolumeBasis;
import org.jspecify.annotations.Nullable;

/**
 * A tightness test as it was run; volumes, area, altitude and target come from the house record.
 *
 * @param stage whether the finished house was tested or the air layer before insulation
 * @param depressurisation the fan blows out; null where it was not run
 * @param pressurisation the fan blows in; null where it was not run
 * @param typedTargetAch50PerH used only where the record has no target
 * @param typedTargetVolume the volume on which a typed target counts
 * @param roomAirAppliance whether something that burns takes its air from the rooms
 */
public record TightnessSent(
        @NotNull @Valid Taken taken,
        @NotNull TestStage stage,
        TightnessTest.@NotNull Standard standard,
        @Nullable @Valid TestDirection depressurisation,
        @Nullable @Valid TestDirection pressurisation,
        @Nullable @DecimalMin("0.01") @DecimalMax("50") Double typedTargetAch50PerH,
        @Nullable VolumeBasis typedTargetVolume,
        boolean roomAirAppliance) {

    /** What was tested. */
    public enum TestStage {
        /** The air layer is complete, before insulation: 80 % of the final target, a firm rule. */
        ROUGH_IN,
        FINISHED
    }

    /**
     * The steps of one direction.
     *
     * @param baselineBeforePa indoors less outdoors with the fan covered, before the steps
     * @param baselineAfterPa the same after them
     */
    public record TestDirection(
            double baselineBeforePa,
            double baselineAfterPa,
            @NotNull @Size(min = 1, max = 50) List<@NotNull PressureStep> steps) {}

    /**
     * One step.
     *
     * @param pressurePa indoors less outdoors as read: negative when the fan blows out
     * @param airflowM3PerS through the fan
     */
    public record PressureStep(double pressurePa, double airflowM3PerS) {}
}
