package oakum.portal.reading;

import io.swagger.v3.oas.annotations.Operation;
import java.net.URI;
import java.util.Arrays;
import java.util.List;
import oakum.portal.calculation.FieldJson.UnitJson;
import oakum.portal.http.EntityTag;
import oakum.portal.people.Access;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@RequestMapping("/api/v1")
class SensorController {
    private final Sensors sensors;
    private final ColumnMaps maps;
    private final Access access;

    SensorController(Sensors sensors, ColumnMaps maps, Access access) {
        this.sensors = sensors;
        this.maps = maps;
        this.access = access;
    }

    /**
     * A property that sensors observe.
     *
     * @param unit as UCUM code
     * @param shown how clients show it in either system of units
     */
    record ObservedPropertyAnswer(
            ObservedProperty id, String label, String unit, UnitJson shown, double min, double max) {}

    /** The sensors of a house and what this person may do with them. */
    record SensorList(List<Sensor> items, List<String> actions) {}

    /** The names of the column maps of a house. */
    record ColumnMapList(List<String> items) {}

    @Operation(summary = "What sensors can observe, with unit and limits")
    @GetMapping("/observed-properties")
    List<ObservedPropertyAnswer> observedProperties() {
        return Arrays.stream(ObservedProperty.values())
                .map(p -> new ObservedPropertyAnswer(
                        p, p.label(), p.unit().ucum(), UnitJson.of(p.unit()), p.min(), p.max()))
                .toList();
    }

    @Operation(summary = "The sensors of a house")
    @GetMapping("/houses/{house}/sensors")
    SensorList listSensors(@PathVariable String house) {
        List<Sensor> items = sensors.list(house);
        return new SensorList(
                items,
                access.may(Permission.MANAGE_SENSORS, house)
                        ? List.of("add-sensor", "bring-readings")
                        : access.may(Permission.WRITE_READINGS, house) ? List.of("bring-readings") : List.of());
    }

    @Operation(summary = "Make a sensor known")
    @PostMapping("/houses/{house}/sensors")
    ResponseEntity<Sensor> addSensor(@PathVariable String house, @RequestBody NewSensor sensor) {
        Sensor added = sensors.add(house, sensor);
        return ResponseEntity.created(URI.create("/api/v1/houses/" + house + "/sensors/" + added.key()))
                .eTag(EntityTag.of(added.version()))
                .body(added);
    }

    @Operation(summary = "One sensor")
    @GetMapping("/houses/{house}/sensors/{key}")
    ResponseEntity<Sensor> getSensor(@PathVariable String house, @PathVariable String key) {
        return tagged(sensors.get(house, key));
    }

    @Operation(summary = "Correct what is said of a sensor")
    @PutMapping("/houses/{house}/sensors/{key}")
    ResponseEntity<Sensor> changeSensor(
            @PathVariable String house,
            @PathVariable String key,
            @RequestBody NewSensor sensor,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        return tagged(sensors.change(house, key, sensor, ifMatch));
    }

    @Operation(summary = "The names of a house's column maps")
    @GetMapping("/houses/{house}/column-maps")
    ColumnMapList listColumnMaps(@PathVariable String house) {
        return new ColumnMapList(maps.names(house));
    }

    @Operation(summary = "A column map")
    @GetMapping("/houses/{house}/column-maps/{name}")
    ResponseEntity<ColumnMap> getColumnMap(@PathVariable String house, @PathVariable String name) {
        return tagged(maps.get(house, name));
    }

    @Operation(summary = "Keep a column map")
    @PutMapping("/houses/{house}/column-maps/{name}")
    ResponseEntity<ColumnMap> putColumnMap(
            @PathVariable String house,
            @PathVariable String name,
            @RequestBody ColumnMap map,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch) {
        return tagged(maps.put(house, name, map, ifMatch));
    }

    private static ResponseEntity<Sensor> tagged(Sensor sensor) {
        return ResponseEntity.ok().eTag(EntityTag.of(sensor.version())).body(sensor);
    }

    private static ResponseEntity<ColumnMap> tagged(ColumnMaps.KeptColumnMap kept) {
        return ResponseEntity.ok().eTag(EntityTag.of(kept.version())).body(kept.map());
    }
}
