package oakum.portal.aftercare;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import oakum.portal.http.EntityTag;
import oakum.portal.http.Problem;
import oakum.portal.people.Access;
import oakum.portal.people.Audit;
import oakum.portal.people.Permission;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Filters on the shelf, by exact size and grade, and what to order. */
@Service
public class Stock {
    private static final int SPARE = 1;

    private final JdbcClient jdbc;
    private final Rounds rounds;
    private final Filters filters;
    private final Access access;
    private final Audit audit;

    Stock(JdbcClient jdbc, Rounds rounds, Filters filters, Access access, Audit audit) {
        this.jdbc = jdbc;
        this.rounds = rounds;
        this.filters = filters;
        this.access = access;
        this.audit = audit;
    }

    /** A line of the shelf list. */
    public record StockCount(
            String size, String grade, @Nullable String shelfPlace, int onShelf) {}

    /**
     * What there is and what is needed.
     *
     * @param need filters of the rounds of the next eight weeks
     * @param spare kept beside the need
     * @param windowsLater filters whose window opens within the eight weeks but whose round comes later or not yet
     * @param order how many to order
     * @param houses the houses that use this size; with one house only, a size to think about
     * @param version of the shelf line, or null where there is none yet
     */
    public record StockLine(
            String size,
            String grade,
            @Nullable String shelfPlace,
            int onShelf,
            int need,
            int spare,
            int windowsLater,
            int order,
            List<String> houses,
            @Nullable Long version) {}

    /** The shelf list up to a day. */
    public record StockList(LocalDate until, List<StockLine> items, List<String> actions) {}

    private static final class Need {
        int soon;
        int later;
        final Set<String> houses = new TreeSet<>();
    }

    private record Key(String size, String grade) implements Comparable<Key> {
        @Override
        public int compareTo(Key other) {
            int bySize = size.compareTo(other.size);
            return bySize == 0 ? grade.compareTo(other.grade) : bySize;
        }
    }

    private record Line(StockCount count, long version) {}

    /** The shelf list with the need of the next eight weeks. */
    @Transactional(readOnly = true)
    public StockList list() {
        access.require(Permission.PLAN_AFTERCARE);
        Rounds.RoundList planned = rounds.list();
        LocalDate until = planned.today().plusDays(RoundPlanner.HORIZON_DAYS);
        Set<String> soon = new TreeSet<>();
        planned.proposed().stream()
                .filter(r -> !r.day().isAfter(until))
                .flatMap(r -> r.filters().stream())
                .forEach(f -> soon.add(f.house() + "/" + f.filter()));
        planned.kept().stream()
                .filter(r -> !r.day().isAfter(until))
                .flatMap(r -> r.visits().stream())
                .forEach(v -> v.filters().forEach(f -> soon.add(v.house() + "/" + f)));
        Map<Key, Need> needs = new TreeMap<>();
        for (FilterFollowUp filter : filters.list()) {
            Need need = needs.computeIfAbsent(new Key(filter.size(), filter.grade()), k -> new Need());
            need.houses.add(filter.house());
            LocalDate opens = filter.windowOpensOn();
            if (soon.contains(filter.house() + "/" + filter.filter())) {
                need.soon += filter.count();
            } else if (opens != null && !opens.isAfter(until)) {
                need.later += filter.count();
            }
        }
        Map<Key, Line> shelf = new TreeMap<>();
        lines().forEach(l -> shelf.put(new Key(l.count().size(), l.count().grade()), l));
        Set<Key> keys = new TreeSet<>(needs.keySet());
        keys.addAll(shelf.keySet());
        List<StockLine> items = new ArrayList<>();
        for (Key key : keys) {
            Need need = needs.getOrDefault(key, new Need());
            Line line = shelf.get(key);
            int onShelf = line == null ? 0 : line.count().onShelf();
            int spare = need.houses.isEmpty() ? 0 : SPARE;
            items.add(new StockLine(
                    key.size(),
                    key.grade(),
                    line == null ? null : line.count().shelfPlace(),
                    onShelf,
                    need.soon,
                    spare,
                    need.later,
                    Math.max(0, need.soon + spare - onShelf),
                    List.copyOf(need.houses),
                    line == null ? null : line.version()));
        }
        return new StockList(until, items, List.of("count-stock"));
    }

    /**
     * Keeps a count of the shelf. A first count needs no {@code If-Match}.
     *
     * @throws Problem 422 for a count below zero, 412 and 428 as everywhere
     */
    @Transactional
    public StockCount count(StockCount count, @Nullable String ifMatch) {
        access.require(Permission.PLAN_AFTERCARE);
        if (count.onShelf() < 0 || count.onShelf() > 10_000) {
            throw Problem.unprocessable(
                    "stock", "onShelf", "A shelf holds 0 to 10000; it was " + count.onShelf() + ".");
        }
        if (count.size().isBlank() || count.grade().isBlank()) {
            throw Problem.unprocessable("stock", "size", "A line has a size and a grade.");
        }
        Optional<Line> before = lines().stream()
                .filter(l -> l.count().size().equals(count.size())
                        && l.count().grade().equals(count.grade()))
                .findFirst();
        before.ifPresent(line -> EntityTag.require(ifMatch, line.version()));
        int kept = jdbc.sql("""
                        insert into aftercare.stock (size, grade, shelf_place, on_shelf)
                        values (:size, :grade, :shelf, :onShelf)
                        on conflict (size, grade) do update set shelf_place = excluded.shelf_place,
                            on_shelf = excluded.on_shelf, version = aftercare.stock.version + 1
                        where aftercare.stock.version = :version""")
                .param("size", count.size())
                .param("grade", count.grade())
                .param("shelf", count.shelfPlace(), java.sql.Types.VARCHAR)
                .param("onShelf", count.onShelf())
                .param("version", before.map(Line::version).orElse(-1L))
                .update();
        if (kept == 0) {
            EntityTag.require(ifMatch, before.map(Line::version).orElse(-1L) + 1);
        }
        audit.record("stock-counted", null, count.size() + " " + count.grade() + ": " + count.onShelf() + ".");
        return count;
    }

    private List<Line> lines() {
        return jdbc.sql("select * from aftercare.stock order by size, grade")
                .query((row, n) -> new Line(
                        new StockCount(
                                row.getString("size"),
                                row.getString("grade"),
                                row.getString("shelf_place"),
                                row.getInt("on_shelf")),
                        row.getLong("version")))
                .list();
    }
}
