package oakum.portal.commissioning;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * When, with what and in which weather something was measured.
 *
 * @param clientId made by the device, one for each measurement; sent again it is known already
 * @param takenAt when the device says it was measured
 * @param note what else was seen, or null
 * @param photos ids of photos sent before, or null
 */
public record Taken(
        @NotNull UUID clientId,
        @NotNull Occasion occasion,
        @NotNull Instant takenAt,
        @NotNull @Valid Instrument instrument,
        @NotNull @Valid WeatherSeen weather,
        @Nullable @Size(max = 2000) String note,
        @Nullable @Size(max = 20) List<@NotNull UUID> photos) {

    /**
     * What it was measured with.
     *
     * @param description what kind of instrument, without a maker's name
     * @param serial its serial number
     * @param calibratedOn date of its calibration certificate
     * @param flowAccuracyFraction accuracy of its flow as a part of the reading, 0 to 0.5
     * @param pressureAccuracyFraction accuracy of its pressure as a part of the reading, 0 to 0.5
     * @param pressureAccuracyPa its least accuracy of pressure, 0 to 20 Pa; the larger of the two counts
     */
    public record Instrument(
            @NotBlank @Size(max = 200) String description,
            @NotBlank @Size(max = 80) String serial,
            @NotNull LocalDate calibratedOn,
            @DecimalMin("0") @DecimalMax("0.5") double flowAccuracyFraction,
            @DecimalMin("0") @DecimalMax("0.5") double pressureAccuracyFraction,
            @DecimalMin("0") @DecimalMax("20") double pressureAccuracyPa) {

        double pressureUncertaintyPa(double pressurePa) {
            return Math.max(pressureAccuracyFraction * Math.abs(pressurePa), pressureAccuracyPa);
        }
    }

    /**
     * The weather while measuring.
     *
     * @param windMPerS 0 to 60
     * @param outdoorC -60 to 60
     * @param indoorC -40 to 60
     */
    public record WeatherSeen(
            @DecimalMin("0") @DecimalMax("60") double windMPerS,
            @DecimalMin("-60") @DecimalMax("60") double outdoorC,
            @DecimalMin("-40") @DecimalMax("60") double indoorC) {}

    List<UUID> photoIds() {
        return photos == null ? List.of() : photos.stream().distinct().toList();
    }
}
