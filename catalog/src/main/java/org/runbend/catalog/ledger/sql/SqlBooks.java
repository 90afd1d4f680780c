package org.runbend.catalog.ledger.sql;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Cut;
import org.runbend.catalog.ledger.Fate;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.ledger.Line;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.MovementKind;
import org.runbend.catalog.ledger.OrderRecord;
import org.runbend.catalog.ledger.OrderState;
import org.runbend.catalog.ledger.ReorderPoint;
import org.runbend.catalog.ledger.Reservation;

/** The books in tables; the statements are those that SQLite and PostgreSQL both understand. */
final class SqlBooks implements Books {
    /** Neither taken back nor taking back. */
    private static final String LIVE =
            " m.undoes IS NULL AND NOT EXISTS (SELECT 1 FROM movement u WHERE u.undoes = m.number)";

    private static final String MOVEMENT =
            "SELECT m.*, (SELECT u.number FROM movement u WHERE u.undoes = m.number)" + " AS undone_by FROM movement m";
    private static final String CUT = "SELECT c.* FROM cut c JOIN movement m ON m.number = c.movement WHERE" + LIVE;

    private final Sql sql;

    SqlBooks(Sql sql) {
        this.sql = sql;
    }

    @Override
    public Optional<Movement> findRequest(String request) {
        return first(sql.rows(MOVEMENT + " WHERE m.request = ?", SqlBooks::movement, request));
    }

    @Override
    public Optional<Movement> findMovement(long number) {
        return first(sql.rows(MOVEMENT + " WHERE m.number = ?", SqlBooks::movement, number));
    }

    @Override
    public List<Movement> movements() {
        return sql.rows(MOVEMENT + " ORDER BY m.number", SqlBooks::movement);
    }

    private static Movement movement(Row r) {
        return new Movement(
                r.number("number"),
                MovementKind.of(r.text("kind")),
                r.text("holder"),
                r.text("why"),
                r.text("who"),
                r.text("made_at"),
                r.text("request"),
                r.text("content"),
                optional(r, "undoes"),
                optional(r, "undone_by"));
    }

    private static OptionalLong optional(Row r, String column) {
        return r.has(column) ? OptionalLong.of(r.number(column)) : OptionalLong.empty();
    }

    @Override
    public List<Line> lines(long movement) {
        return sql.rows("SELECT * FROM line WHERE movement = ? ORDER BY number", SqlBooks::line, movement);
    }

    private static Line line(Row r) {
        return new Line(
                r.number("holding"),
                r.number("amount"),
                r.number("uncertainty"),
                r.number("reserved"),
                r.text("holder"));
    }

    @Override
    public List<Holding> holdings() {
        return sql.rows("SELECT * FROM holding ORDER BY number", SqlBooks::holding);
    }

    @Override
    public Holding holding(long key) {
        return first(sql.rows("SELECT * FROM holding WHERE number = ?", SqlBooks::holding, key))
                .orElseThrow();
    }

    @Override
    public Optional<Holding> findPiece(String id) {
        return first(sql.rows("SELECT * FROM holding WHERE id = ?", SqlBooks::holding, id));
    }

    @Override
    public List<Holding> ofProduct(Kind kind, String product) {
        return sql.rows(
                "SELECT * FROM holding WHERE kind = ? AND product = ? ORDER BY number",
                SqlBooks::holding,
                kind.word(),
                product);
    }

    @Override
    public List<Holding> madeBy(long movement) {
        return sql.rows(
                "SELECT * FROM holding WHERE made_by = ? AND id IS NOT NULL ORDER BY number",
                SqlBooks::holding,
                movement);
    }

    private static Holding holding(Row r) {
        Holding.Spec spec = new Holding.Spec(
                kind(r), r.text("id"), r.text("product"), r.number("length"), r.text("batch"), r.text("label"));
        return new Holding(
                r.number("number"),
                spec,
                r.number("amount"),
                r.number("uncertainty"),
                r.number("reserved"),
                r.number("made_by"));
    }

    private static Kind kind(Row r) {
        return Kind.of(r.text("kind")).orElseThrow();
    }

    @Override
    public List<Reservation> reservationsOf(String order) {
        return sql.rows(
                "SELECT * FROM reservation WHERE holder = ? AND amount > 0 ORDER BY holding",
                SqlBooks::reservation,
                order);
    }

    @Override
    public List<Reservation> reservations() {
        return sql.rows("SELECT * FROM reservation WHERE amount > 0 ORDER BY holder, holding", SqlBooks::reservation);
    }

    private static Reservation reservation(Row r) {
        return new Reservation(r.text("holder"), r.number("holding"), r.number("amount"));
    }

    @Override
    public List<String> holdersOf(long holding) {
        return sql.rows(
                "SELECT holder FROM reservation WHERE holding = ? AND amount > 0 ORDER BY movement DESC, holder",
                r -> r.text("holder"),
                holding);
    }

    @Override
    public Optional<Movement> lastAfter(long movement, long holding, boolean countsOnly) {
        return first(sql.rows(
                MOVEMENT + " WHERE m.number > ? AND" + LIVE + (countsOnly ? " AND m.kind = 'count'" : "")
                        + " AND EXISTS (SELECT 1 FROM line l WHERE l.movement = m.number AND l.holding = ?"
                        + (countsOnly ? " AND l.holder = ''" : "") // what orders lost by a count was not counted
                        + ")"
                        + " ORDER BY m.number DESC LIMIT 1",
                SqlBooks::movement,
                movement,
                holding));
    }

    @Override
    public OrderRecord order(String order) {
        return first(sql.rows(
                        "SELECT * FROM order_change WHERE holder = ? ORDER BY movement DESC LIMIT 1",
                        SqlBooks::order,
                        order))
                .orElseGet(() -> new OrderRecord(order, OrderState.UNKNOWN, ""));
    }

    @Override
    public List<OrderRecord> orders() {
        return sql.rows(
                "SELECT o.* FROM order_change o WHERE o.state <> 'unknown' AND o.movement ="
                        + " (SELECT MAX(p.movement) FROM order_change p WHERE p.holder = o.holder) ORDER BY o.holder",
                SqlBooks::order);
    }

    @Override
    public List<OrderRecord> orderChanges(long movement) {
        return sql.rows("SELECT * FROM order_change WHERE movement = ? ORDER BY holder", SqlBooks::order, movement);
    }

    @Override
    public OrderRecord orderBefore(String order, long movement) {
        return first(sql.rows(
                        "SELECT o.* FROM order_change o JOIN movement m ON m.number = o.movement"
                                + " WHERE o.holder = ? AND o.movement < ? AND" + LIVE
                                + " ORDER BY o.movement DESC LIMIT 1",
                        SqlBooks::order,
                        order,
                        movement))
                .orElseGet(() -> new OrderRecord(order, OrderState.UNKNOWN, ""));
    }

    private static OrderRecord order(Row r) {
        return new OrderRecord(r.text("holder"), OrderState.of(r.text("state")), r.text("fingerprint"));
    }

    @Override
    public Optional<Movement> lastOfOrder(String order, Optional<MovementKind> kind) {
        return first(sql.rows(
                MOVEMENT + " JOIN order_change o ON o.movement = m.number WHERE o.holder = ? AND" + LIVE
                        + " AND (? = '' OR m.kind = ?) ORDER BY m.number DESC LIMIT 1",
                SqlBooks::movement,
                order,
                kind.map(MovementKind::word).orElse(""),
                kind.map(MovementKind::word).orElse("")));
    }

    @Override
    public List<Cut> cuts(String order) {
        return sql.rows(
                CUT + " AND c.holder = ? AND NOT EXISTS (SELECT 1 FROM cut_fate f JOIN movement n ON n.number ="
                        + " f.movement WHERE f.cut_movement = c.movement AND f.cut_number = c.number"
                        + " AND NOT EXISTS (SELECT 1 FROM movement v WHERE v.undoes = n.number))"
                        + " ORDER BY c.movement, c.number",
                SqlBooks::cut,
                order);
    }

    private static Cut cut(Row r) {
        return new Cut(
                r.number("movement"),
                (int) r.number("number"),
                r.text("holder"),
                kind(r),
                r.text("product"),
                r.text("batch"),
                r.number("length"),
                r.text("goes_to"),
                r.text("cut_from"));
    }

    @Override
    public List<Line> takenBy(String order) {
        return sql.rows(
                "SELECT l.holding, SUM(l.amount) AS amount, 0 AS uncertainty, 0 AS reserved, l.holder FROM line l"
                        + " JOIN holding h ON h.number = l.holding"
                        + " WHERE l.holder = ? AND h.kind IN ('item', 'board')"
                        + " GROUP BY l.holding, l.holder HAVING SUM(l.amount) <> 0 ORDER BY l.holding",
                SqlBooks::line,
                order);
    }

    @Override
    public List<ReorderPoint> reorderPoints() {
        return sql.rows(
                "SELECT p.* FROM reorder_point p JOIN movement m ON m.number = p.movement WHERE" + LIVE
                        + " AND NOT EXISTS (SELECT 1 FROM reorder_point q JOIN movement m2 ON m2.number = q.movement"
                        + " WHERE q.kind = p.kind AND q.product = p.product AND q.length = p.length"
                        + " AND q.movement > p.movement"
                        + " AND NOT EXISTS (SELECT 1 FROM movement v WHERE v.undoes = m2.number))"
                        + " ORDER BY p.kind, p.product, p.length",
                r -> new ReorderPoint(
                        kind(r),
                        r.text("product"),
                        r.number("length"),
                        r.number("point"),
                        r.number("pack"),
                        r.number("least"),
                        (int) r.number("days")));
    }

    @Override
    public long begin(Movement head) {
        long number = next("movement");
        sql.change(
                "INSERT INTO movement (number, kind, holder, why, who, made_at, request, content, undoes)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, "
                        + (head.undoes().isPresent() ? head.undoes().getAsLong() : "NULL")
                        + ")",
                number,
                head.kind().word(),
                head.order(),
                head.why(),
                head.who(),
                head.at(),
                head.request(),
                head.content());
        return number;
    }

    private long next(String table) {
        return sql.rows("SELECT COALESCE(MAX(number), 0) + 1 AS next FROM " + table, r -> r.number("next"))
                .get(0);
    }

    @Override
    public long create(Holding.Spec spec, long movement) {
        long number = next("holding");
        if (spec.kind().isPiece()) {
            sql.change(
                    "INSERT INTO holding (number, id, kind, product, length, batch, label, made_by)"
                            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                    number,
                    spec.id(),
                    spec.kind().word(),
                    spec.product(),
                    spec.length(),
                    spec.batch(),
                    spec.label(),
                    movement);
        } else {
            sql.change(
                    "INSERT INTO holding (number, kind, product, length, batch, label, made_by)"
                            + " VALUES (?, ?, ?, ?, ?, ?, ?)",
                    number,
                    spec.kind().word(),
                    spec.product(),
                    spec.length(),
                    spec.batch(),
                    spec.label(),
                    movement);
        }
        return number;
    }

    @Override
    public void line(long movement, int number, Line line) {
        sql.change(
                "INSERT INTO line (movement, number, holding, amount, uncertainty, reserved, holder)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)",
                movement,
                (long) number,
                line.holding(),
                line.amount(),
                line.uncertainty(),
                line.reserved(),
                line.holder());
    }

    @Override
    public void orderChange(long movement, OrderRecord order) {
        sql.change(
                "INSERT INTO order_change (movement, holder, state, fingerprint) VALUES (?, ?, ?, ?)",
                movement,
                order.order(),
                order.state().word(),
                order.fingerprint());
    }

    @Override
    public void cut(Cut cut) {
        sql.change(
                "INSERT INTO cut (movement, number, holder, kind, product, batch, length, goes_to, cut_from)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                cut.movement(),
                (long) cut.number(),
                cut.order(),
                cut.kind().word(),
                cut.product(),
                cut.batch(),
                cut.length(),
                cut.goesTo(),
                cut.from());
    }

    @Override
    public void fate(long movement, Cut cut, Fate fate) {
        sql.change(
                "INSERT INTO cut_fate (movement, cut_movement, cut_number, fate) VALUES (?, ?, ?, ?)",
                movement,
                cut.movement(),
                (long) cut.number(),
                fate.word());
    }

    @Override
    public void reorderPoint(long movement, ReorderPoint point) {
        sql.change(
                "INSERT INTO reorder_point (movement, kind, product, length, point, pack, least, days)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                movement,
                point.kind().word(),
                point.product(),
                point.length(),
                point.point(),
                point.pack(),
                point.least(),
                (long) point.days());
    }

    @Override
    public long nextNumber(String letter) {
        long last = first(sql.rows("SELECT last FROM piece_number WHERE letter = ?", r -> r.number("last"), letter))
                .orElse(0L);
        if (last == 0) {
            sql.change("INSERT INTO piece_number (letter, last) VALUES (?, 1)", letter);
        } else {
            sql.change("UPDATE piece_number SET last = ? WHERE letter = ?", last + 1, letter);
        }
        return last + 1;
    }

    private static <T> Optional<T> first(List<T> rows) {
        return rows.isEmpty() ? Optional.empty() : Optional.of(rows.get(0));
    }
}
