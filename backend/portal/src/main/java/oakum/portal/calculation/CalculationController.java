package oakum.portal.calculation;

import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** The catalogue over HTTP. Whoever is signed in may compute; nothing is stored. */
@RestController
@RequestMapping("/api/v1/calculations")
class CalculationController {
    private final Calculations calculations;

    CalculationController(Calculations calculations) {
        this.calculations = calculations;
    }

    /** One line of the catalogue. */
    record Listed(String id, String version, String title, String purpose) {}

    @GetMapping
    List<Listed> listCalculations() {
        return calculations.all().stream()
                .map(c -> new Listed(c.id(), c.version(), c.title(), c.purpose()))
                .toList();
    }

    @GetMapping("/{id}")
    DeclarationJson readCalculation(@PathVariable String id) {
        return DeclarationJson.of(calculations.find(id));
    }

    @PostMapping("/{id}")
    AnswerJson calculate(@PathVariable String id, @RequestBody JsonNode inputs) {
        return AnswerJson.of(calculations.calculate(id, inputs));
    }
}
