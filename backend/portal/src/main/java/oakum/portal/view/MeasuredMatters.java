package oakum.portal.view;

import java.util.ArrayList;
import java.util.List;
import oakum.physics.calculation.Unit;
import oakum.physics.calculation.Verdict;
import oakum.portal.commissioning.Compared;
import oakum.portal.commissioning.MeasurementShown;
import oakum.portal.commissioning.SettingToWork;
import oakum.portal.commissioning.SheetListed;
import oakum.portal.houserecord.HouseView;
import oakum.portal.houserecord.Stage;
import oakum.portal.view.StartPage.StartMatter;
import org.springframework.stereotype.Component;

/** What was measured and does not fit, and what is still to be measured. */
@Component
class MeasuredMatters {
    private final SettingToWork settingToWork;

    MeasuredMatters(SettingToWork settingToWork) {
        this.settingToWork = settingToWork;
    }

    /** Latest measurements that fail or prove nothing, where nobody has accepted them. */
    List<StartMatter> misfits(Sight sight) {
        List<StartMatter> matters = new ArrayList<>();
        for (HouseView house : sight.houses()) {
            for (SheetListed sheet : settingToWork.list(house.id())) {
                if (sheet.measurementCount() > 0 && sheet.verdict() != Verdict.PASSES && !sheet.signed()) {
                    MeasurementShown latest = settingToWork
                            .get(house.id(), sheet.sheet())
                            .measurements()
                            .get(0);
                    boolean fails = sheet.verdict() == Verdict.FAILS;
                    matters.add(new StartMatter(
                            fails ? "over" : "look",
                            fails ? "Fails" : "Not proven",
                            house.id(),
                            sheet.title(),
                            href(house, sheet),
                            finding(sight.shown(), latest),
                            List.of(),
                            "Measured " + sight.day(house, latest.takenAt()) + " by the " + latest.person() + ", "
                                    + latest.occasionLabel() + "."));
                }
            }
        }
        return matters;
    }

    private static String finding(Shown shown, MeasurementShown latest) {
        List<String> said = new ArrayList<>();
        for (Compared value : latest.outcome().values()) {
            if (value.verdict() != null && value.verdict() != Verdict.PASSES) {
                said.add(sentence(shown, value));
            }
        }
        said.addAll(latest.outcome().findings());
        return Words.say(said.stream().limit(2).toArray(String[]::new));
    }

    private static String sentence(Shown shown, Compared value) {
        Unit unit = value.unit().id();
        Double max = value.max();
        Double min = value.min();
        String limit = max != null && value.measured() > max
                ? ", at most " + shown.value(max, unit)
                : min != null && value.measured() < min
                        ? ", at least " + shown.value(min, unit)
                        : ": the uncertainty spans the limit";
        return value.label() + " " + shown.value(value.measured(), unit) + limit;
    }

    /** Sheets that nobody has measured as-left and signed, of houses that are being closed up or set to work. */
    List<StartMatter> toMeasure(Sight sight) {
        List<StartMatter> matters = new ArrayList<>();
        for (HouseView house : sight.between(Stage.CLOSE_UP, Stage.HANDOVER).houses()) {
            for (SheetListed sheet : settingToWork.list(house.id())) {
                if (!sheet.signed()) {
                    matters.add(new StartMatter(
                            sheet.verdict() == Verdict.FAILS ? "over" : "open",
                            sheet.measurementCount() == 0 ? "To measure" : said(sheet),
                            house.id(),
                            sheet.title(),
                            href(house, sheet),
                            sheet.measurementCount() == 0
                                    ? "Nothing is measured yet."
                                    : "Measured " + Words.count(sheet.measurementCount(), "time", "times")
                                            + ", not signed as-left.",
                            List.of(),
                            ""));
                }
            }
        }
        return matters;
    }

    private static String said(SheetListed sheet) {
        String label = sheet.verdictLabel();
        return label == null
                ? "To sign"
                : label.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + label.substring(1);
    }

    private static String href(HouseView house, SheetListed sheet) {
        return "/houses/" + house.id() + "/setting-to-work/" + sheet.sheet();
    }
}
