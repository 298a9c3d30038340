package oakum.portal.houserecord;

import java.util.List;
import java.util.Map;
import oakum.portal.houserecord.standing.Binding;
import oakum.portal.houserecord.standing.Relied;
import org.jspecify.annotations.Nullable;

/**
 * A calculation with its inputs drawn from the record of a house.
 *
 * @param calculation its id
 * @param assembly which assembly it is about, or null where it is about the house
 * @param bindings where each input comes from; a proof is kept with the same ones
 * @param inputs pointer to canonical text, as a proof keeps them
 * @param relied which inputs came from the record, and from where
 */
public record FilledCalculation(
        String calculation,
        @Nullable String assembly,
        List<Binding> bindings,
        Map<String, String> inputs,
        List<Relied> relied) {}
