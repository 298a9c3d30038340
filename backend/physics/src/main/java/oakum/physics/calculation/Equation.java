package oakum.physics.calculation;

/**
 * One printed equation.
 *
 * @param number its number within the calculation, from 1
 * @param text the equation in plain characters, with the symbols of the declaration
 * @param mathml the same in MathML, the inside of a {@code math} element; empty where the plain text serves
 * @param source where it comes from
 */
public record Equation(int number, String text, String mathml, Source source) {
    public static Equation of(int number, String text, Source source) {
        return new Equation(number, text, "", source);
    }
}
