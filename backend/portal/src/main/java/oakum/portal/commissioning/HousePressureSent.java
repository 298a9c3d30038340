package oakum.portal.commissioning;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * House pressure with everything on. Every pressure is indoors less outdoors: negative when exhaust pulls.
 *
 * @param restBeforePa three or more readings with everything off, before
 * @param restAfterPa the same at the end
 * @param fluctuationPa how far the rest pressure swings in the wind
 * @param running what ran: "hood high, bath boost, dryer"
 * @param working with make-up air as it should be
 * @param failed with the make-up damper held shut
 * @param blocked with the damper open and the outside intake blocked
 * @param typedDesignPressurePa how far below outdoors the design expects the house; used only where no proof says so
 */
public record HousePressureSent(
        @NotNull @Valid Taken taken,
        @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("-200") @DecimalMax("200") Double> restBeforePa,

        @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("-200") @DecimalMax("200") Double> restAfterPa,

        @DecimalMin("0") @DecimalMax("50") double fluctuationPa,
        @NotNull @Size(min = 1, max = 30) List<@NotNull @Size(min = 1, max = 80) String> running,
        @NotNull @Valid MakeUpWorking working,
        @Nullable @Valid MakeUpFailing failed,
        @Nullable @Valid MakeUpFailing blocked,
        @Nullable @DecimalMin("0.1") @DecimalMax("200") Double typedDesignPressurePa) {

    /**
     * With make-up air working.
     *
     * @param pressurePa three or more readings
     * @param damperOpenS seconds until the damper proved open, or null
     * @param deliveredC temperature of the make-up air where it enters, or null
     * @param hoodM3PerS flow of the hood with make-up air on, or null
     * @param hoodWithoutMakeUpM3PerS the same with make-up air off, or null
     */
    public record MakeUpWorking(
            @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("-200") @DecimalMax("200") Double> pressurePa,

            @Nullable @DecimalMin("0") @DecimalMax("600") Double damperOpenS,
            @Nullable @DecimalMin("-60") @DecimalMax("80") Double deliveredC,
            @Nullable @DecimalMin("0") @DecimalMax("2") Double hoodM3PerS,
            @Nullable @DecimalMin("0") @DecimalMax("2") Double hoodWithoutMakeUpM3PerS) {}

    /**
     * With make-up air failing.
     *
     * @param worstPa the reading farthest from rest before the interlock acted, or null
     * @param hoodOffS seconds until the interlock switched the hood off, or null where it did not
     * @param heldPa three or more readings after the interlock acted, at the latest after 60 seconds
     * @param heldAfterS seconds from the failure until the house was back within its limit, or null where it was not
     */
    public record MakeUpFailing(
            @Nullable @DecimalMin("-2000") @DecimalMax("2000")
            Double worstPa,

            @Nullable @DecimalMin("0") @DecimalMax("3600") Double hoodOffS,
            @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("-2000") @DecimalMax("2000") Double> heldPa,

            @Nullable @DecimalMin("0") @DecimalMax("3600") Double heldAfterS) {}
}
