package oakum.portal.people;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import oakum.portal.http.Cursor;
import oakum.portal.http.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reads the trail: backwards as an audit, forwards as a feed of changes. */
@Service
class Trail {
    private static final int PAGE = 200;
    /** Any number that nothing else in this database locks by. */
    private static final long NUMBERING_LOCK = 0x0a6b_6368_616e_6765L;

    private static final String LINE = "l.id, l.at, l.act, l.house_id, l.sentence, l.resource, a.account,"
            + " a.display_name, l.token_id is not null as by_token";

    private static final RowMapper<Line> ROW = (row, n) -> new Line(
            row.getLong(1),
            row.getTimestamp("at").toInstant(),
            row.getString("act"),
            row.getString("house_id"),
            row.getString("sentence"),
            row.getString("resource"),
            row.getString("account"),
            row.getString("display_name"),
            row.getBoolean("by_token"));

    private final JdbcClient jdbc;
    private final Access access;

    Trail(JdbcClient jdbc, Access access) {
        this.jdbc = jdbc;
        this.access = access;
    }

    /**
     * One act.
     *
     * @param number its place in the list
     * @param act kebab case
     * @param resource where to read what it made or changed, or null
     * @param byToken whether a machine spoke for the person
     */
    record Line(
            long number,
            Instant at,
            String act,
            @Nullable String houseId,
            String sentence,
            @Nullable String resource,
            String account,
            String displayName,
            boolean byToken) {}

    /**
     * What changed since a cursor.
     *
     * @param next the cursor for asking again; always there, and the same where nothing changed
     * @param more whether more stands ready now
     */
    record Changes(List<Line> items, String next, boolean more) {}

    /** The trail backwards, of all houses or of one. */
    @Transactional(readOnly = true)
    Page<Line> backwards(@Nullable String houseId, @Nullable String cursor) {
        access.require(Permission.VIEW_AUDIT);
        long before = Cursor.number(cursor);
        List<Line> lines = jdbc.sql("select " + LINE + """
                         from people.audit_line l join people.account a on a.id = l.account_id
                        where (:before = 0 or l.id < :before)
                          and (cast(:house as varchar) is null or l.house_id = :house)
                        order by l.id desc limit :limit
                        """)
                .param("before", before)
                .param("house", houseId)
                .param("limit", PAGE + 1)
                .query(ROW)
                .list();
        return Cursor.page(lines, PAGE, line -> Long.toString(line.number()));
    }

    /** Everything that changed in the houses that the caller may see, oldest first; each line exactly once. */
    @Transactional
    Changes since(@Nullable String cursor) {
        long after = Cursor.number(cursor);
        boolean all = access.seesAllHouses();
        Set<String> houses = access.sharedHouses();
        number();
        List<Line> lines = jdbc.sql("select c.number, " + LINE.substring(LINE.indexOf("l.at")) + """
                         from people.change c
                         join people.audit_line l on l.id = c.line_id
                         join people.account a on a.id = l.account_id
                        where c.number > :after and l.house_id is not null
                          and (:all or l.house_id = any(:houses))
                        order by c.number limit :limit
                        """)
                .param("after", after)
                .param("all", all)
                .param("houses", houses.toArray(new String[0]))
                .param("limit", PAGE + 1)
                .query(ROW)
                .list();
        boolean more = lines.size() > PAGE;
        List<Line> shown = more ? List.copyOf(lines.subList(0, PAGE)) : lines;
        long last = shown.isEmpty() ? after : shown.get(shown.size() - 1).number();
        return new Changes(shown, Cursor.after(Long.toString(last)), more);
    }

    /** Numbers what was committed since; lines of acts still running are not seen here and come next time. */
    private void number() {
        jdbc.sql("select pg_advisory_xact_lock(?)")
                .param(NUMBERING_LOCK)
                .query((row, n) -> 0)
                .list();
        jdbc.sql("""
                        with taken as (delete from people.line_to_number returning line_id)
                        insert into people.change (line_id) select line_id from taken order by line_id
                        """).update();
    }
}
