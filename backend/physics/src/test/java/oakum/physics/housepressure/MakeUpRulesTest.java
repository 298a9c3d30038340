package oakum.physics.housepressure;

import static oakum.physics.checkrow.CheckRow.rel;
import static oakum.physics.checkrow.CheckRow.row;
import static oakum.physics.housepressure.TestHouse.CFM;
import static oakum.physics.housepressure.TestHouse.FOOT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Source;
import org.junit.jupiter.api.Test;

/** The rules of places: the Minnesota table, code triggers, and the table of limits. */
class MakeUpRulesTest {
    private static MakeUpTable.Result table(TableColumn column, double ft2, double hoodCfm, double nextCfm) {
        return MakeUpTable.CALCULATION
                .calculate(new MakeUpTable.Input(
                        column, ft2 * FOOT * FOOT, 0, true, hoodCfm * CFM, nextCfm * CFM, null, null))
                .output();
    }

    @Test
    void the_minnesota_table_comes_out_as_on_the_permit_form() {
        MakeUpTable.Result form = table(TableColumn.A, 4068, 300, 0);

        row("R-MUA-19", "permit form of a Minnesota city under Minn. R. 1346.0501, seen")
                .exactly(Math.round(form.leakageM3PerS() / CFM), 610L)
                .exactly(Math.round(form.exhaustM3PerS() / CFM), 375L)
                .exactly(Math.round(form.balanceM3PerS() / CFM), -235L)
                .exactly(form.makeUpM3PerS(), 0.0);
    }

    @Test
    void column_a_leaves_out_the_next_largest_exhaust_and_column_b_counts_it() {
        row("R-MUA-20", "Minn. R. 1346.0501 table 501.4.1, formula seen, computed by hand")
                .exactly(Math.round(table(TableColumn.A, 3000, 1200, 80).makeUpM3PerS() / CFM), 645L)
                .exactly(Math.round(table(TableColumn.B, 2400, 600, 110).makeUpM3PerS() / CFM), 487L);
    }

    private static MakeUpTrigger.Result irc2018(double cfm, Appliances appliances) {
        return MakeUpTrigger.CALCULATION
                .calculate(new MakeUpTrigger.Input(
                        cfm * CFM,
                        appliances,
                        400 * CFM,
                        null,
                        TriggerScope.ROOM_AIR_APPLIANCE,
                        TriggerAmount.WHOLE_EXHAUST,
                        "IRC M1503.6",
                        "2018",
                        null,
                        null))
                .output();
    }

    @Test
    void the_2018_rule_asks_only_where_an_appliance_takes_room_air() {
        MakeUpTrigger.Result electric = irc2018(600, Appliances.NONE);
        MakeUpTrigger.Result openFlue = irc2018(600, Appliances.ROOM_AIR);
        MakeUpTrigger.Result below = irc2018(390, Appliances.ROOM_AIR);

        row("R-MUA-23", "IRC M1503.6 (2018), text in a state and a city adoption, seen")
                .exactly(electric.required(), false)
                .exactly(codes(electric.notices()).contains("pressure-decides"), true)
                .exactly(openFlue.required(), true)
                .exactly(openFlue.makeUpM3PerS(), 600 * CFM)
                .exactly(below.required(), false)
                .exactly(codes(below.notices()).contains("pressure-decides"), true)
                .exactly(irc2018(600, Appliances.SEALED).required(), false);
        assertThat(irc2018(400, Appliances.ROOM_AIR).required())
                .as("in excess of 400 cfm")
                .isFalse();
    }

    @Test
    void a_local_rule_may_ask_only_for_the_difference_and_later_in_a_sealed_house() {
        assertThat(texas(500, Appliances.ROOM_AIR).makeUpM3PerS() / CFM).isCloseTo(100, within(1e-9));
        assertThat(texas(600, Appliances.NONE).required()).isFalse();
        assertThat(texas(700, Appliances.NONE).makeUpM3PerS() / CFM).isCloseTo(300, within(1e-9));
    }

    private static MakeUpTrigger.Result texas(double cfm, Appliances appliances) {
        return MakeUpTrigger.CALCULATION
                .calculate(new MakeUpTrigger.Input(
                        cfm * CFM,
                        appliances,
                        400 * CFM,
                        600 * CFM,
                        TriggerScope.EVERY_HOUSE,
                        TriggerAmount.ABOVE_THRESHOLD,
                        "local ordinance",
                        "as amended",
                        "one city in Texas",
                        "building official"))
                .output();
    }

    @Test
    void every_rule_names_its_edition_place_and_source() {
        assertThat(Rule.all()).hasSizeGreaterThan(20).allSatisfy(rule -> {
            assertThat(rule.id()).matches("[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(rule.edition()).isNotBlank();
            assertThat(rule.place()).isNotBlank();
            assertThat(rule.text()).endsWith(".");
            assertThat(rule.source().citation()).isNotBlank();
            assertThat(rule.value() == null).isEqualTo(rule.unit().isEmpty());
        });
        assertThat(Rule.all()).extracting(Rule::id).doesNotHaveDuplicates();
        for (RuleKind kind : RuleKind.values()) {
            assertThat(Rule.of(kind)).as(kind.label()).isNotEmpty();
        }
    }

    @Test
    void limits_stand_as_their_sources_say() {
        assertThat(Rule.find("csa-f300-test")).hasValueSatisfying(rule -> {
            assertThat(rule.value()).isEqualTo(25.0);
            assertThat(rule.edition()).isEqualTo("F300:22");
            assertThat(rule.source().status()).isEqualTo(Source.Status.SEEN);
        });
        assertThat(Rule.find("irc-2018-make-up"))
                .hasValueSatisfying(
                        rule -> row("R-MUA-23", "IRC M1503.6 (2018), seen").near(rule.value() / CFM, 400, rel(1e-5)));
        assertThat(Rule.find("radon-garage"))
                .hasValueSatisfying(rule -> assertThat(rule.source().status()).isEqualTo(Source.Status.PROPOSED));
    }

    private static List<String> codes(List<Notice> notices) {
        return notices.stream().map(Notice::code).toList();
    }
}
