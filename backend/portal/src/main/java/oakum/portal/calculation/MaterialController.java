package oakum.portal.calculation;

import io.swagger.v3.oas.annotations.Operation;
import java.util.Arrays;
import java.util.List;
import oakum.physics.material.Material;
import oakum.physics.material.MaterialLibrary;
import oakum.physics.material.MaterialProperty;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** The library of generic materials, to choose from. */
@RestController
@RequestMapping("/api/v1/materials")
class MaterialController {
    /**
     * One material.
     *
     * @param id as layers name it
     * @param sheet whether its vapour resistance belongs to the sheet as it is, whatever its thickness
     * @param conductivityWPerMK null where the library knows none: a membrane
     * @param values what is known of it, each property with where it comes from
     */
    record LibraryMaterial(
            String id,
            String label,
            boolean sheet,
            @Nullable Double conductivityWPerMK,
            @Nullable Double densityKgPerM3,
            List<KnownProperty> values) {}

    /** A property that the library knows. */
    record KnownProperty(String property, DeclarationJson.SourceJson source) {}

    @Operation(summary = "The library of generic materials")
    @GetMapping
    List<LibraryMaterial> listMaterials() {
        return MaterialLibrary.all().stream().map(MaterialController::shown).toList();
    }

    private static LibraryMaterial shown(Material material) {
        return new LibraryMaterial(
                material.id(),
                material.label(),
                material.isSheet(),
                material.knows(MaterialProperty.CONDUCTIVITY) ? material.conductivityWPerMK() : null,
                material.knows(MaterialProperty.DENSITY) ? material.densityKgPerM3() : null,
                Arrays.stream(MaterialProperty.values())
                        .filter(material::knows)
                        .map(property -> new KnownProperty(
                                property.name(), DeclarationJson.SourceJson.of(material.source(property))))
                        .toList());
    }
}
