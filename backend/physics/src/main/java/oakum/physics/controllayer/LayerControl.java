package oakum.physics.controllayer;

import oakum.physics.calculation.Entry;
import org.jspecify.annotations.Nullable;

/**
 * One thing that a layer controls.
 *
 * @param second whether it only helps the layer that is counted on; null for no
 */
public record LayerControl(
        @Entry(label = "Control") Control control,

        @Entry(label = "Second line only", help = "It helps; another layer of this assembly is counted on.") @Nullable
        Boolean second) {
    /** The layer that is counted on. */
    public static LayerControl first(Control control) {
        return new LayerControl(control, null);
    }

    boolean carries(Control asked) {
        return control == asked && !Boolean.TRUE.equals(second);
    }
}
