package oakum.portal.commissioning;

import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1/houses/{house}/setting-to-work")
@Tag(name = "Setting to work")
class SettingToWorkController {
    private final SettingToWork settingToWork;

    SettingToWorkController(SettingToWork settingToWork) {
        this.settingToWork = settingToWork;
    }

    /**
     * A signature.
     *
     * @param reason why it is accepted although it does not pass, or null
     */
    record MeasurementSigning(@Nullable @Size(max = 1000) String reason) {}

    @GetMapping
    List<SheetListed> listSheets(@PathVariable String house) {
        return settingToWork.list(house);
    }

    @GetMapping("/{sheet}")
    SheetShown getSheet(@PathVariable String house, @PathVariable String sheet) {
        return settingToWork.get(house, sheet);
    }

    @PostMapping("/tightness/measurements")
    @ResponseStatus(HttpStatus.CREATED)
    MeasurementShown measureTightness(@PathVariable String house, @Valid @RequestBody TightnessSent body) {
        return settingToWork.measure(house, body);
    }

    @PostMapping("/filter-drop/measurements")
    @ResponseStatus(HttpStatus.CREATED)
    MeasurementShown measureFilterDrop(@PathVariable String house, @Valid @RequestBody FilterDropSent body) {
        return settingToWork.measure(house, body);
    }

    @PostMapping("/house-pressure/measurements")
    @ResponseStatus(HttpStatus.CREATED)
    MeasurementShown measureHousePressure(@PathVariable String house, @Valid @RequestBody HousePressureSent body) {
        return settingToWork.measure(house, body);
    }

    @PostMapping("/{sheet}/measurements/{id}/signature")
    MeasurementShown signMeasurement(
            @PathVariable String house,
            @PathVariable String sheet,
            @PathVariable UUID id,
            @Valid @RequestBody MeasurementSigning body) {
        return settingToWork.sign(house, sheet, id, body.reason());
    }
}
