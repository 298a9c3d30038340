package oakum.physics.catalogue;

import java.util.List;
import java.util.Optional;
import oakum.physics.calculation.Calculation;

/** Every calculation, in printed order. */
public final class Catalogue {
    /** Add a calculation here and nowhere else. */
    public static final List<Calculation<?, ?>> ALL = List.of();

    private Catalogue() {}

    public static Optional<Calculation<?, ?>> find(String id) {
        return ALL.stream().filter(calculation -> calculation.id().equals(id)).findFirst();
    }
}
