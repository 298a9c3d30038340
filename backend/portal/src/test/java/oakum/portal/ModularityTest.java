package oakum.portal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.ApplicationModule;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.docs.Documenter;

/** The borders between the portal's modules. */
class ModularityTest {
    private static final ApplicationModules MODULES = ApplicationModules.of(Portal.class);

    @Test
    void modules_import_only_what_they_declare() {
        MODULES.verify();
    }

    @Test
    void every_module_declares_its_imports() {
        assertThat(MODULES.stream().map(m -> m.getBasePackage().getName())).isNotEmpty();
        MODULES.forEach(module -> assertThat(module.getBasePackage()
                        .getAnnotation(ApplicationModule.class)
                        .map(a -> a.allowedDependencies())
                        .orElse(new String[] {ApplicationModule.OPEN_TOKEN}))
                .as(module.getBasePackage().getName())
                .doesNotContain(ApplicationModule.OPEN_TOKEN));
    }

    /** The drawing cannot be old: it is made by the same test that verifies. */
    @Test
    void the_drawing_is_made() {
        new Documenter(MODULES, Documenter.Options.defaults().withOutputFolder("target/modules"))
                .writeModulesAsPlantUml();
    }
}
