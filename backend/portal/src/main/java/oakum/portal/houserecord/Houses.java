package oakum.portal.houserecord;

import java.util.List;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;

/** The houses of the firm. Every method asks who is calling. */
public interface Houses {
    /**
     * One house.
     *
     * @throws oakum.portal.http.Problem 404 where there is none that the caller may see
     */
    HouseView find(String id);

    /** Every house that the caller may see, by id. */
    List<HouseView> visible();

    /**
     * A page of them.
     *
     * @param after the id after which the page begins, or null
     * @param limit rows, 1 to 200
     */
    Page<HouseView> page(@Nullable String after, int limit);

    /**
     * Opens the record of a house.
     *
     * @param id capital letter, then up to 15 capitals, digits or hyphens
     * @throws oakum.portal.http.Problem 422 where the id has another form, 409 where it is taken
     */
    HouseView create(String id, HouseMeasures measures, String reason);
}
