package oakum.physics.rainscreen;

import static oakum.physics.checkrow.CheckRow.row;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import oakum.physics.calculation.Canonical;
import oakum.physics.calculation.Notice;
import oakum.physics.calculation.Verdict;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanTest {
    private static RainScreenPlan.Result plan(Map<String, String> changes) {
        Map<String, String> inputs = new LinkedHashMap<>(
                RainScreenPlan.CALCULATION.workedExamples().get(0).inputs());
        inputs.putAll(changes);
        return RainScreenPlan.CALCULATION
                .calculate(Canonical.read(RainScreenPlan.Input.class, inputs))
                .output();
    }

    private static List<String> broken(RainScreenPlan.Result result) {
        return result.checks().stream()
                .filter(check -> check.verdict() == Verdict.FAILS)
                .map(PlanCheck::id)
                .toList();
    }

    @Test
    void vertical_boards_on_one_layer_of_horizontal_battens_fail() {
        RainScreenPlan.Result result = plan(Map.of("support", "HORIZONTAL_BATTENS"));

        row("RS-9", "TDCA timber cladding design pages, seen")
                .exactly(broken(result), List.of("counter-battens"))
                .exactly(result.verdict(), Verdict.FAILS);
    }

    @Test
    void a_plan_that_keeps_every_rule_passes() {
        RainScreenPlan.Result result = plan(Map.of());

        assertThat(broken(result)).isEmpty();
        assertThat(result.verdict()).isEqualTo(Verdict.PASSES);
        assertThat(result.brokenCount()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        "boards, HORIZONTAL, support-crosses-boards",
        "support, VERTICAL_BATTENS, support-crosses-boards",
        "counterBattenM, 0.015, counter-batten-depth",
        "bevelled, false, batten-bevel",
        "battenM, 0.043, batten-thickness",
        "spacingM, 0.61, batten-spacing",
        "shortestBoardM, 0.4, reaches-two-supports",
        "boardWidthM, 0.08, board-proportion",
        "boardThicknessM, 0.018, board-proportion",
        "depthM, 0.019, cavity-depth",
        "bottomFreeM2PerM, 0.0014, bottom-opening",
        "topFreeM2PerM, 0.0014, top-opening",
        "bottom, OPEN_WITHOUT_MESH, bottom-mesh",
        "top, OPEN_WITHOUT_MESH, top-mesh",
        "top, SHUT, top-opening",
        "clearWayDown, false, way-down",
        "endDams, false, end-dams",
        "membrane, SEALED, membrane-edge",
        "membrane, BEHIND_FLASHING, membrane-edge",
        "secondMembrane, SEALED, second-membrane-edge"
    })
    void each_rule_is_broken_alone(String input, String value, String rule) {
        assertThat(broken(plan(Map.of(input, value)))).containsExactly(rule);
    }

    @Test
    void a_second_membrane_sealed_at_its_bottom_traps_water() {
        PlanCheck found = plan(Map.of("secondMembrane", "SEALED")).checks().stream()
                .filter(check -> check.id().equals("second-membrane-edge"))
                .findFirst()
                .orElseThrow();

        assertThat(found.reason()).isEqualTo("water behind it is trapped");
    }

    @Test
    void a_shut_bottom_neither_vents_nor_drains_and_a_wide_board_is_too_wide() {
        assertThat(broken(plan(Map.of("bottom", "SHUT")))).containsExactly("bottom-opening", "bottom-drains");
        assertThat(broken(plan(Map.of("boardWidthM", "0.16", "boardThicknessM", "0.027", "battenM", "0.06"))))
                .containsExactly("board-width");
        assertThat(broken(plan(Map.of("unseasonedOak", "true")))).containsExactly("batten-spacing");
        assertThat(broken(plan(Map.of("depthM", "0.009")))).containsExactly("cavity-depth", "drained-gap");
    }

    private static OpenJoints.Result joints(
            double jointM,
            @Nullable Boolean rated,
            @Nullable Double jointLimitM,
            @Nullable Double openLimit,
            @Nullable Double sunLimitD,
            double usedD) {
        return OpenJoints.CALCULATION
                .calculate(new OpenJoints.Input(jointM, .092, rated, jointLimitM, openLimit, sunLimitD, usedD, 10))
                .output();
    }

    @Test
    void open_joints_are_held_against_the_membranes_own_limits() {
        OpenJoints.Result good = joints(.008, true, .02, .2, 90.0, 60);
        OpenJoints.Result bad = joints(.008, false, .007, .07, 90.0, 85);
        OpenJoints.Result used = joints(.008, true, .02, .2, 90.0, 91);

        assertThat(good.openFraction()).isEqualTo(.08);
        assertThat(List.of(good.permanentSun(), good.joint(), good.openShare(), good.sunUntilClad()))
                .containsOnly(Verdict.PASSES);
        assertThat(good.leftD()).isEqualTo(30);
        assertThat(List.of(bad.permanentSun(), bad.joint(), bad.openShare(), bad.sunUntilClad()))
                .containsOnly(Verdict.FAILS);
        assertThat(bad.notices()).extracting(Notice::code).contains("membrane-not-for-open-joints");
        assertThat(used.notices()).extracting(Notice::code).contains("sun-days-used-up");
    }

    @Test
    void limits_that_are_not_known_are_asked_for() {
        OpenJoints.Result unknown = joints(.008, null, null, null, null, 20);

        assertThat(List.of(unknown.permanentSun(), unknown.joint(), unknown.openShare(), unknown.sunUntilClad()))
                .containsOnly(Verdict.NOT_PROVEN);
        assertThat(unknown.leftD()).isNull();
        assertThat(unknown.notices()).extracting(Notice::code).contains("ask-for-joint-limits", "ask-for-sun-days");
    }

    @Test
    void lapped_boards_ask_the_membrane_only_for_its_sun_days() {
        OpenJoints.Result lapped = joints(0, null, null, null, 90.0, 20);

        assertThat(List.of(lapped.permanentSun(), lapped.joint(), lapped.openShare(), lapped.sunUntilClad()))
                .containsOnly(Verdict.PASSES);
        assertThat(lapped.notices()).isEmpty();
    }
}
