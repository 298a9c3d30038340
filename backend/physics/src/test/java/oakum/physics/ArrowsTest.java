package oakum.physics;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.LinkedHashMap;
import java.util.Map;

/** The arrows inside physics: which package may import which. Whatever is not in the table is refused. */
@AnalyzeClasses(packages = "oakum.physics", importOptions = ImportOption.DoNotIncludeTests.class)
class ArrowsTest {
    private static final String[] GROUND = {"calculation", "numerics"};
    private static final Map<String, String[]> MAY_IMPORT = new LinkedHashMap<>();

    static {
        MAY_IMPORT.put("calculation", new String[] {});
        MAY_IMPORT.put("numerics", new String[] {});
        MAY_IMPORT.put("moistair", GROUND);
        MAY_IMPORT.put("duct", GROUND);
        MAY_IMPORT.put("airtightness", with("moistair"));
        MAY_IMPORT.put("housepressure", with("moistair", "airtightness", "duct"));
        MAY_IMPORT.put("filtration", with("moistair"));
        MAY_IMPORT.put("trend", with("moistair", "filtration"));
        MAY_IMPORT.put("weather", with("moistair"));
        MAY_IMPORT.put("material", with("moistair"));
        MAY_IMPORT.put("envelope", with("moistair", "material"));
        MAY_IMPORT.put("exposure", with("moistair", "weather"));
        MAY_IMPORT.put("mould", with("moistair"));
        MAY_IMPORT.put("wood", with("moistair"));
        MAY_IMPORT.put("rainscreen", with("moistair", "material", "wood"));
        MAY_IMPORT.put("fastening", with("wood"));
        MAY_IMPORT.put("controllayer", with("material", "envelope"));
        MAY_IMPORT.put(
                "hygrothermal",
                with("moistair", "weather", "material", "envelope", "exposure", "mould", "wood", "rainscreen"));
        MAY_IMPORT.put("catalogue", everythingBut("catalogue"));
    }

    @ArchTest
    static final ArchRule arrows_point_only_where_the_table_says = rule();

    private static String[] with(String... further) {
        String[] all = new String[GROUND.length + further.length];
        System.arraycopy(GROUND, 0, all, 0, GROUND.length);
        System.arraycopy(further, 0, all, GROUND.length, further.length);
        return all;
    }

    private static String[] everythingBut(String name) {
        return MAY_IMPORT.keySet().stream().filter(other -> !other.equals(name)).toArray(String[]::new);
    }

    private static ArchRule rule() {
        LayeredArchitecture layers = layeredArchitecture()
                .consideringOnlyDependenciesInAnyPackage("oakum.physics..")
                .withOptionalLayers(true);
        for (String name : MAY_IMPORT.keySet()) {
            layers = layers.layer(name).definedBy("oakum.physics." + name + "..");
        }
        for (Map.Entry<String, String[]> arrows : MAY_IMPORT.entrySet()) {
            layers = arrows.getValue().length == 0
                    ? layers.whereLayer(arrows.getKey()).mayNotAccessAnyLayer()
                    : layers.whereLayer(arrows.getKey()).mayOnlyAccessLayers(arrows.getValue());
        }
        return layers.ensureAllClassesAreContainedInArchitecture();
    }
}
