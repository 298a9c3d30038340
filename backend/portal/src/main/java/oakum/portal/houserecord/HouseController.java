package oakum.portal.houserecord;

import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.List;
import oakum.portal.calculation.FieldJson;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Page;
import oakum.portal.http.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** Houses and their parts over HTTP. */
@RestController
@RequestMapping("/api/v1")
@Tag(name = "House record")
class HouseController {
    private final HouseStore houses;
    private final RecordStore record;

    HouseController(HouseStore houses, RecordStore record) {
        this.houses = houses;
        this.record = record;
    }

    /**
     * A house to be opened.
     *
     * @param reason why, or null
     */
    record HouseCreation(
            String id,
            @Schema(implementation = HouseMeasures.class) JsonNode house,
            @Nullable String reason) {}

    /** A house's name, place and measures to be saved. */
    record HouseSaving(
            @Schema(implementation = HouseMeasures.class) JsonNode house, String reason) {}

    /** A part to be saved. */
    record PartSaving(
            @Schema(
                    oneOf = {
                        EnclosurePart.class,
                        AirPart.class,
                        HeatPart.class,
                        MoisturePart.class,
                        WaterPart.class,
                        SensorsPart.class
                    })
            JsonNode document,

            String reason) {}

    /** What stands in a part. */
    record PartType(String part, String title, List<FieldJson> fields) {
        static PartType of(PartKind kind) {
            return new PartType(kind.key(), kind.title(), FieldJson.of(kind.fields()));
        }
    }

    @GetMapping("/houses")
    Page<HouseView> listHouses(
            @RequestParam(required = false) @Nullable String cursor, @RequestParam(defaultValue = "50") int limit) {
        return houses.page(cursor, limit);
    }

    @PostMapping("/houses")
    ResponseEntity<HouseView> createHouse(@RequestBody HouseCreation creation) {
        HouseView made = houses.create(creation.id(), creation.house(), creation.reason());
        return ResponseEntity.status(HttpStatus.CREATED)
                .eTag(EntityTag.of(made.version()))
                .body(made);
    }

    @GetMapping("/houses/{house}")
    ResponseEntity<HouseView> getHouse(@PathVariable String house) {
        HouseView found = houses.find(house);
        return ResponseEntity.ok().eTag(EntityTag.of(found.version())).body(found);
    }

    @PutMapping("/houses/{house}")
    ResponseEntity<HouseView> changeHouse(
            @PathVariable String house,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody HouseSaving saving) {
        HouseView changed = houses.change(house, saving.house(), ifMatch, saving.reason());
        return ResponseEntity.ok().eTag(EntityTag.of(changed.version())).body(changed);
    }

    @GetMapping("/houses/{house}/parts/{part}")
    ResponseEntity<PartView> getPart(@PathVariable String house, @PathVariable String part) {
        return tagged(record.part(house, kind(part)));
    }

    @PutMapping("/houses/{house}/parts/{part}")
    ResponseEntity<PartView> savePart(
            @PathVariable String house,
            @PathVariable String part,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestBody PartSaving saving) {
        return tagged(record.save(house, kind(part), saving.document(), ifMatch, saving.reason()));
    }

    @GetMapping("/houses/{house}/parts/{part}/revisions")
    List<PartView> listPartRevisions(@PathVariable String house, @PathVariable String part) {
        return record.revisions(house, kind(part));
    }

    @GetMapping("/houses/{house}/parts/{part}/revisions/{revision}")
    PartView getPartRevision(@PathVariable String house, @PathVariable String part, @PathVariable int revision) {
        return record.revision(house, kind(part), revision);
    }

    @GetMapping("/houses/{house}/parts/{part}/differences")
    List<ValueDifference> listPartDifferences(
            @PathVariable String house, @PathVariable String part, @RequestParam int from, @RequestParam int to) {
        return record.differences(house, kind(part), from, to);
    }

    @GetMapping("/part-types")
    List<PartType> listPartTypes() {
        return Arrays.stream(PartKind.values()).map(PartType::of).toList();
    }

    @GetMapping("/part-types/{part}")
    PartType getPartType(@PathVariable String part) {
        return PartType.of(kind(part));
    }

    private static ResponseEntity<PartView> tagged(PartView part) {
        return ResponseEntity.ok().eTag(EntityTag.of(part.revision())).body(part);
    }

    private static PartKind kind(String part) {
        return PartKind.find(part).orElseThrow(() -> Problem.notFound("part", part));
    }
}
