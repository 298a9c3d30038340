package oakum.portal.commissioning;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;

/**
 * The drop over a new filter at several flows.
 *
 * @param filterId short name of the filter in the Air part
 * @param flows at least two; the sheet asks for three: high, design, low
 */
public record FilterDropSent(
        @NotNull @Valid Taken taken,
        @NotBlank @Size(max = 40) String filterId,
        @NotNull @Size(min = 2, max = 10) List<@Valid @NotNull FlowStep> flows) {

    /**
     * One flow.
     *
     * @param label high, design, low
     * @param airflowM3PerS three or more readings of the air through all filters together, 0.001 to 5 each
     * @param dropPa three or more readings of the pressure before less after, 0.1 to 1000 each
     */
    public record FlowStep(
            @NotBlank @Size(max = 40) String label,
            @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("0.001") @DecimalMax("5") Double> airflowM3PerS,

            @NotNull @Size(min = 3, max = 20) List<@NotNull @DecimalMin("0.1") @DecimalMax("1000") Double> dropPa) {}
}
