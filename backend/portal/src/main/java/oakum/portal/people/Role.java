package oakum.portal.people;

/** What somebody is to the firm or to one house. */
public enum Role {
    PRINCIPAL("principal"),
    DESIGNER("designer"),
    SITE_LEAD("site lead"),
    MECHANICAL_CONTRACTOR("mechanical contractor"),
    OFFICE_MANAGER("office manager"),
    OWNER("owner"),
    CONSULTANT("consultant");

    private final String label;

    Role(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
