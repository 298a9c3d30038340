package oakum.portal.site;

import java.util.List;

/**
 * The cover checks of one house.
 *
 * @param notYetMade templates that this house has no check of
 * @param actions what this person may do now
 */
public record CoverChecksOfHouse(
        List<CoverCheckListed> checks, List<CoverCheckOffered> notYetMade, List<String> actions) {

    /** A template that may be made into a check of the house. */
    public record CoverCheckOffered(String code, String title, String coveredBy, int rowCount) {}
}
