package oakum.physics.calculation;

/**
 * What can hurt someone, shown where the number is shown.
 *
 * @param subject one word set into the rule of the box: Combustion, Electrical, Mould
 * @param text plain sentences that defer to local codes and licensed trades
 */
public record Caution(String subject, String text) {
    /** Stands under every result. */
    public static final Caution MODEL_LIMITS = new Caution(
            "Model limits",
            "Calculated with the stated inputs; real houses vary. The result is for decisions by a competent person.");

    public static final Caution CODE_AUTHORITY = new Caution(
            "Code authority",
            "The code official's decision overrides this page. Numbers from model codes may differ from the code adopted"
                    + " here.");
}
