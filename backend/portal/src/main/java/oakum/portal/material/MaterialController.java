package oakum.portal.material;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import oakum.physics.calculation.Fields;
import oakum.physics.material.MaterialInput;
import oakum.portal.calculation.FieldJson;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;

@RestController
@RequestMapping("/api/v1/materials")
class MaterialController {
    private static final String EXAMPLE = """
            {"id": "hemp-board", "label": "Hemp board", "densityKgPerM3": 90, "heatCapacityJPerKgK": 2100,
             "conductivityWPerMK": 0.041, "resistanceFactors": [{"humidityFraction": 0.25, "resistanceFactor": 4}],
             "diffusionThicknesses": [], "sorption": [], "source": "data sheet of March 2026", "status": "SEEN"}""";

    private final Materials materials;

    MaterialController(Materials materials) {
        this.materials = materials;
    }

    /** One page of materials, and what this person may do with them. */
    record MaterialPage(List<MaterialJson> items, @Nullable String next, List<String> actions) {}

    @Operation(
            summary = "The materials that layers may name; those that come with the portal first, then the firm's own",
            description = "all=true also lists own materials that are superseded or withdrawn.")
    @GetMapping
    MaterialPage listMaterials(
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(defaultValue = "200") int limit,
            @RequestParam(defaultValue = "false") boolean all) {
        Page<MaterialJson> page = materials.page(cursor, limit, all);
        return new MaterialPage(page.items(), page.next(), materials.actions());
    }

    @Operation(summary = "The declared fields of an own material, as a form needs them")
    @GetMapping("/fields")
    List<FieldJson> listMaterialFields() {
        return FieldJson.of(Fields.of(MaterialInput.class));
    }

    @Operation(summary = "One material, also one that is offered no longer")
    @GetMapping("/{id}")
    MaterialJson getMaterial(@PathVariable String id) {
        return materials.get(id);
    }

    @Operation(
            summary = "Add an own material from its data sheet",
            description =
                    "Its id becomes own-<short name>@ and 8 hex digits of its content, so that whatever names it always"
                            + " means these values. A changed data sheet is another id and is offered in place of the"
                            + " earlier one, which stays readable. Sent again, nothing doubles: 200 with the same id.",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content =
                                    @Content(
                                            mediaType = "application/json",
                                            schema = @Schema(implementation = MaterialInput.class),
                                            examples = @ExampleObject(EXAMPLE))))
    @PostMapping
    ResponseEntity<MaterialJson> addMaterial(@RequestBody MaterialInput typed) {
        Materials.Sent sent = materials.add(typed);
        var at = UriComponentsBuilder.fromPath("/api/v1/materials/{id}")
                .build(sent.material().id());
        return sent.added()
                ? ResponseEntity.created(at).body(sent.material())
                : ResponseEntity.ok().location(at).body(sent.material());
    }

    @Operation(summary = "Offer an own material no longer; it stays readable")
    @PostMapping("/{id}/withdrawal")
    MaterialJson withdrawMaterial(@PathVariable String id) {
        return materials.withdraw(id);
    }
}
