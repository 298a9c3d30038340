package oakum.portal.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import oakum.portal.aftercare.Care;
import oakum.portal.aftercare.Filters;
import oakum.portal.aftercare.NewFilter;
import oakum.portal.aftercare.OfferedSlot;
import oakum.portal.aftercare.OwnerReportSent;
import oakum.portal.aftercare.OwnerReports;
import oakum.portal.aftercare.Stock;
import oakum.portal.aftercare.Visit;
import oakum.portal.aftercare.VisitClosing;
import oakum.portal.aftercare.VisitKind;
import oakum.portal.aftercare.Visits;
import oakum.portal.http.EntityTag;
import org.jspecify.annotations.Nullable;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/** Twelve houses in care: their filters, what is on the shelf, and what the record knows of H3's early filling. */
@Component
@Order(5)
class CareChapter implements DemoChapter {
    private static final String DEEP_4 = "16×25×4";
    private static final String DEEP_5 = "20×25×5";
    private static final String DEEP_5_SMALL = "20×20×5";
    private static final String GRADE = "MERV 13";

    private final Care care;
    private final Filters filters;
    private final Stock stock;
    private final Visits visits;
    private final OwnerReports reports;

    CareChapter(Care care, Filters filters, Stock stock, Visits visits, OwnerReports reports) {
        this.care = care;
        this.filters = filters;
        this.stock = stock;
        this.visits = visits;
        this.reports = reports;
    }

    /** A filter of the care list on the demo's day. */
    private record Followed(String house, String place, String size, int count, double load, double slopePerWeek) {}

    private static final List<Followed> CARE_LIST = List.of(
            new Followed("B01", "coast", DEEP_4, 1, 1.62, 0.030),
            new Followed("B02", "coast", DEEP_5_SMALL, 2, 1.41, 0.022),
            new Followed("B03", "coast", DEEP_4, 1, 1.78, 0.026),
            new Followed("B04", "coast", DEEP_5, 1, 1.20, 0.019),
            new Followed("B05", "north", DEEP_5_SMALL, 2, 1.55, 0.028),
            new Followed("B06", "north", DEEP_5, 1, 1.86, 0.024),
            new Followed("B07", "north", DEEP_4, 1, 1.33, 0.021),
            new Followed("B08", "north", DEEP_5_SMALL, 2, 1.70, 0.033),
            new Followed("B09", "valley", DEEP_5, 1, 1.48, 0.018),
            new Followed("B10", "valley", DEEP_5, 1, 1.92, 0.040),
            new Followed("B11", "valley", DEEP_4, 1, 1.09, 0.020));

    @Override
    public void tell(DemoFirm.Telling telling) {
        telling.on(LocalDate.of(2024, 9, 12), 9, 0, "office", () -> {
            care.place(new Care.Place("valley", DayOfWeek.WEDNESDAY));
            care.place(new Care.Place("coast", DayOfWeek.WEDNESDAY));
            care.place(new Care.Place("north", DayOfWeek.TUESDAY));
            care.take(new Care.HouseInCare("H3", "coast", LocalDate.of(2024, 9, 12)));
        });
        doneVisit(
                telling,
                VisitKind.DAYS_30,
                LocalDate.of(2024, 10, 12),
                "Controls settled; two registers opened further.");
        doneVisit(
                telling,
                VisitKind.MONTHS_11,
                LocalDate.of(2025, 8, 12),
                "Tightness 0.51, 6 % above handover; look again at 24 months.");
        telling.on(LocalDate.of(2026, 1, 27), 12, 0, "office", this::filterOfH3);
        telling.on(
                LocalDate.of(2026, 4, 13),
                9,
                0,
                "office",
                () -> filters.event(
                        "H3",
                        new Filters.HouseEvent(
                                LocalDate.of(2026, 4, 9), LocalDate.of(2026, 4, 11), "board repaired and sanded")));
        telling.on(LocalDate.of(2026, 5, 4), 9, 0, "office", () -> {
            Visit due = visitOfH3(VisitKind.MONTHS_24);
            visits.plan(due.id(), LocalDate.of(2026, 7, 20), EntityTag.of(due.version()));
        });
        telling.on(LocalDate.of(2026, 5, 13), 18, 40, "owner", () -> {
            OfferedSlot offered = reports.slots("H3").slots().get(0);
            reports.report(
                    "H3",
                    new OwnerReportSent(
                            "Between two floor boards there is a gap as wide as a coin. It opened in February and has not"
                                    + " closed.",
                            "bedroom 2",
                            List.of(),
                            new OfferedSlot.ChosenSlot(offered.day(), offered.half()),
                            null));
        });
        telling.on(DemoFirm.TODAY, 6, 0, "office", () -> {
            CARE_LIST.forEach(this::follow);
            care.trip(new Care.Trip("north", LocalDate.of(2026, 6, 9), "the principal is there for H2's cladding"));
            stock.count(new Stock.StockCount(DEEP_4, GRADE, "B2", 2), null);
            stock.count(new Stock.StockCount(DEEP_5, GRADE, "B3", 5), null);
            stock.count(new Stock.StockCount(DEEP_5_SMALL, GRADE, "B4", 3), null);
            for (int week = 0; week < DemoFilter.LOAD_BY_WEEK.length; week++) {
                filters.sample("H3", "deep", LocalDate.of(2026, 1, 27).plusWeeks(week), DemoFilter.LOAD_BY_WEEK[week]);
            }
        });
    }

    private void doneVisit(DemoFirm.Telling telling, VisitKind kind, LocalDate day, String note) {
        telling.on(day, 15, 0, "office", () -> {
            Visit due = visitOfH3(kind);
            visits.close(due.id(), new VisitClosing(day, List.of(), note));
        });
    }

    private Visit visitOfH3(VisitKind kind) {
        return visits.list().stream()
                .filter(v -> v.house().equals("H3") && v.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private void filterOfH3() {
        filters.add(
                "H3",
                new NewFilter(
                        "deep",
                        "mechanical room, return side",
                        DEEP_4,
                        1,
                        GRADE,
                        "B2",
                        LocalDate.of(2026, 1, 27),
                        21.4,
                        7.7,
                        DemoFilter.CLEAN_HIGH_PA,
                        7.8,
                        DemoRecords.cfm(450),
                        DemoRecords.cfm(200),
                        63.0,
                        "filter.drop",
                        null));
    }

    /** Weekly loads along the line that leads to the load of the demo's day. */
    private void follow(Followed f) {
        care.take(new Care.HouseInCare(f.house(), f.place(), null));
        LocalDate fitted = DemoFirm.TODAY.minusDays(Math.round((f.load() - 1) / f.slopePerWeek() * 7));
        filters.add(f.house(), filter(f, fitted, null));
        for (int week = 11; week >= 0; week--) {
            LocalDate day = DemoFirm.TODAY.minusWeeks(week);
            if (!day.isBefore(fitted)) {
                filters.sample(f.house(), "deep", day, f.load() - week * f.slopePerWeek());
            }
        }
    }

    private static NewFilter filter(Followed f, LocalDate fitted, @Nullable String sensor) {
        boolean four = f.size().equals(DEEP_4);
        double high = four ? 21.4 : 13.5;
        double low = four ? 7.7 : 5.2;
        String shelf = four ? "B2" : f.size().equals(DEEP_5) ? "B3" : "B4";
        double flow = DemoRecords.cfm(four ? 450 : 600);
        return new NewFilter(
                "deep",
                "mechanical room, return side",
                f.size(),
                f.count(),
                GRADE,
                shelf,
                fitted,
                high,
                low,
                high,
                low,
                flow,
                flow * 0.45,
                null,
                sensor,
                null);
    }
}
