package oakum.portal.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumberTextTest {
    @ParameterizedTest
    @CsvSource({
        "1,1",
        "-0.6,-0.6",
        "+3.,3",
        ".5,0.5",
        "1e3,1000",
        "2.5E-1,0.25",
        "' 7.026666666666669947',7.02666666666667"
    })
    void reads_numbers(String text, double number) throws Unreadable {
        assertThat(new NumberText('.').parse(text)).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "NaN",
                "nan",
                "Infinity",
                "-inf",
                "null",
                "NA",
                "-",
                ".",
                "1e",
                "e5",
                "1.2.3",
                "1,5",
                "0x10",
                "1d",
                "1f",
                "--1",
                "1 000",
                "²",
                "٣"
            })
    void refuses_what_is_no_number(String text) {
        assertThatThrownBy(() -> new NumberText('.').parse(text)).isInstanceOf(Unreadable.class);
    }

    @ParameterizedTest
    @CsvSource({"'21,5',21.5", "'-0,25',-0.25", "7,7"})
    void reads_a_decimal_comma_where_that_is_said(String text, double number) throws Unreadable {
        assertThat(new NumberText(',').parse(text)).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(strings = {"21.5", "1.234,5"})
    void refuses_a_point_where_the_comma_is_the_decimal_sign(String text) {
        assertThatThrownBy(() -> new NumberText(',').parse(text)).hasMessageContaining("decimal=.");
    }
}
