package oakum.portal.aftercare;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import oakum.portal.commissioning.CleanMarkMeasured;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The clean marks of all filters: those that are or were in force, and what signed drop sheets measured. */
@Component
class CleanMarks {
    private final JdbcClient jdbc;

    CleanMarks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Keeps what is in force from a day on; another mark of that day is replaced. */
    void inForce(String house, String filter, LocalDate on, CleanMark mark) {
        jdbc.sql("""
                        insert into aftercare.clean_mark values (?, ?, ?, ?, ?)
                        on conflict (house, filter, marked_on) do update set high_pa = excluded.high_pa,
                            low_pa = excluded.low_pa""").params(house, filter, on, mark.highPa(), mark.lowPa()).update();
    }

    /** Keeps what a signed sheet measured, whether its filter is followed yet or not. */
    void keep(CleanMarkMeasured measured) {
        jdbc.sql("""
                        insert into aftercare.measured_mark (house, filter, measured_at, airflow_m3_per_s, drop_pa,
                            linear_pa_s_per_m, square_pa_s2_per_m2, face_area_m2, density_kg_per_m3)
                        values (:house, :filter, :at, :flow, :drop, :linear, :square, :area, :density)
                        on conflict (house, filter, measured_at) do update set
                            airflow_m3_per_s = excluded.airflow_m3_per_s, drop_pa = excluded.drop_pa,
                            linear_pa_s_per_m = excluded.linear_pa_s_per_m,
                            square_pa_s2_per_m2 = excluded.square_pa_s2_per_m2,
                            face_area_m2 = excluded.face_area_m2, density_kg_per_m3 = excluded.density_kg_per_m3""")
                .params(Map.of(
                        "house", measured.houseId(),
                        "filter", measured.filterId(),
                        "at", measured.measuredAt().atOffset(ZoneOffset.UTC),
                        "flow", measured.airflowM3PerS(),
                        "drop", measured.dropPa(),
                        "linear", measured.linearPaSPerM(),
                        "square", measured.squarePaS2PerM2(),
                        "area", measured.faceAreaM2(),
                        "density", measured.densityKgPerM3()))
                .update();
    }

    /** The latest that a signed sheet measured of a filter, not before a moment. */
    Optional<CleanMarkMeasured> measured(String house, String filter, Instant since) {
        return jdbc.sql("""
                        select * from aftercare.measured_mark where house = ? and filter = ? and measured_at >= ?
                        order by measured_at desc limit 1""")
                .params(house, filter, since.atOffset(ZoneOffset.UTC))
                .query(CleanMarks::measured)
                .optional();
    }

    private static CleanMarkMeasured measured(ResultSet row, int number) throws SQLException {
        return new CleanMarkMeasured(
                row.getString("house"),
                row.getString("filter"),
                row.getDouble("airflow_m3_per_s"),
                row.getDouble("drop_pa"),
                row.getDouble("linear_pa_s_per_m"),
                row.getDouble("square_pa_s2_per_m2"),
                row.getDouble("face_area_m2"),
                row.getDouble("density_kg_per_m3"),
                row.getObject("measured_at", OffsetDateTime.class).toInstant());
    }
}
