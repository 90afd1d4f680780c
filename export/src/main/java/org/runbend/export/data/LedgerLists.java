package org.runbend.export.data;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Cut;
import org.runbend.catalog.ledger.Days;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Line;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.OrderRecord;
import org.runbend.catalog.ledger.Outcome;
import org.runbend.catalog.ledger.ReorderPoint;
import org.runbend.catalog.ledger.Reservation;

/** What the ledger tells, for people (a few columns, lengths as benches say them) and for programs (everything, mm). */
public final class LedgerLists {
    private static final double HUNDREDTHS = 100;

    private LedgerLists() {}

    private static Listing listing(String name, String columns, List<List<Object>> rows) {
        return new Listing(
                name,
                List.of(columns.split(", ", -1)).stream()
                        .map(Listing.Column::of)
                        .toList(),
                rows);
    }

    /**
     * Two forms of one list.
     *
     * @param forPeople a few columns
     * @param forPrograms all that is known
     */
    public record Both(Listing forPeople, Listing forPrograms) {}

    /** What is on the shelf. */
    public static Both stock(Books books) {
        Map<Long, List<String>> keepers = new TreeMap<>();
        for (Reservation r : books.reservations()) {
            keepers.computeIfAbsent(r.holding(), k -> new ArrayList<>()).add(r.order());
        }
        List<List<Object>> people = new ArrayList<>();
        List<List<Object>> programs = new ArrayList<>();
        for (Holding h : ordered(books.holdings())) {
            String keptFor = String.join(" ", keepers.getOrDefault(h.key(), List.of()));
            boolean piece = h.kind().isPiece();
            long length = piece ? h.amount() : h.spec().length();
            people.add(List.of(
                    h.kind().words(),
                    h.id(),
                    h.product(),
                    length == 0 ? "" : Held.length(length),
                    piece ? "" : Long.toString(h.amount()),
                    Held.amount(h.kind(), h.free()),
                    keptFor,
                    h.spec().batch(),
                    h.spec().label()));
            programs.add(List.of(
                    h.kind().word(),
                    h.id(),
                    h.product(),
                    length / HUNDREDTHS,
                    piece ? 1L : h.amount(),
                    number(h, h.free()),
                    number(h, h.reserved()),
                    h.uncertainty() / HUNDREDTHS,
                    keptFor,
                    h.spec().batch(),
                    h.spec().label()));
        }
        return new Both(
                listing("stock", "kind, id, product, length, number, free, kept for, batch, label", people),
                listing(
                        "stock",
                        "kind, id, product, length, quantity, free, reserved, uncertainty, reservedFor, batch, label",
                        programs));
    }

    /** Of a piece the length in mm, else the number. */
    private static Object number(Holding h, long amount) {
        return h.kind().isPiece() ? (Object) (amount / HUNDREDTHS) : (Object) amount;
    }

    /** By kind, product and length; pieces in the order of their ids. */
    private static List<Holding> ordered(List<Holding> holdings) {
        return holdings.stream()
                .filter(h -> h.amount() > 0)
                .sorted((a, b) -> {
                    int byKind = a.kind().compareTo(b.kind());
                    int byProduct = byKind != 0 ? byKind : a.product().compareTo(b.product());
                    int byLength = byProduct != 0
                            ? byProduct
                            : Long.compare(a.spec().length(), b.spec().length());
                    return byLength != 0 ? byLength : Long.compare(a.key(), b.key());
                })
                .toList();
    }

    /** Orders and how far they are. */
    public static Both orders(Books books) {
        List<List<Object>> rows = new ArrayList<>();
        for (OrderRecord o : books.orders()) {
            rows.add(List.of(o.order(), o.state().word(), o.fingerprint()));
        }
        List<List<Object>> people = rows.stream()
                .map(r -> List.of(r.get(0), r.get(1), shortened(r.get(2).toString())))
                .toList();
        return new Both(
                listing("orders", "order, state, plan", people), listing("orders", "order, state, fingerprint", rows));
    }

    private static String shortened(String fingerprint) {
        return fingerprint.substring(0, Math.min(8, fingerprint.length()));
    }

    /** What was cut for an order, or for all orders of a day. */
    public static Both cuts(Books books, String order) {
        List<List<Object>> people = new ArrayList<>();
        List<List<Object>> programs = new ArrayList<>();
        List<String> orders = Days.orders(books, order);
        List<Cut> cuts = (orders.isEmpty() ? List.of(order) : orders)
                .stream().flatMap(o -> books.cuts(o).stream()).toList();
        for (Cut c : cuts) {
            people.add(List.of(c.name(), c.product(), Held.length(c.length()), c.goesTo(), c.from(), c.batch()));
            programs.add(List.of(
                    c.name(), c.kind().word(), c.product(), c.length() / HUNDREDTHS, c.goesTo(), c.from(), c.batch()));
        }
        return new Both(
                listing("cuts", "cut, product, length, goes to, from, batch", people),
                listing("cuts", "cut, comesBackAs, product, length, goesTo, from, batch", programs));
    }

    /** Movements with what each did, those of an order or a piece if one is named. */
    public static Both history(Books books, String of) {
        return history(books, of, books.movements());
    }

    /** The same of some movements alone. */
    public static Both history(Books books, String of, List<Movement> movements) {
        Map<Long, Holding> holdings =
                books.holdings().stream().collect(Collectors.toMap(Holding::key, h -> h, (a, b) -> a, TreeMap::new));
        List<List<Object>> people = new ArrayList<>();
        List<List<Object>> programs = new ArrayList<>();
        for (Movement m : movements) {
            List<Line> lines = books.lines(m.number());
            boolean wanted = of.isEmpty()
                    || m.order().equals(of)
                    || lines.stream().anyMatch(l -> {
                        Holding h = holdings.get(l.holding());
                        return h.id().equals(of)
                                || h.product().equals(of)
                                || l.holder().equals(of);
                    });
            if (wanted) {
                people.add(List.of(m.number(), m.at(), m.who(), words(m), changes(lines, holdings), m.why()));
                programs(m, lines, holdings, programs);
            }
        }
        return new Both(
                listing("history", "movement, when, who, what, change, why", people),
                listing(
                        "history",
                        "movement, when, who, kind, order, why, request, undoes, undoneBy, product, holding, amount,"
                                + " reserved, for",
                        programs));
    }

    private static String words(Movement m) {
        String what = m.kind().word() + (m.order().isEmpty() ? "" : " " + m.order());
        if (m.undoes().isPresent()) {
            return what + " (movement " + m.undoes().getAsLong() + ")";
        }
        return m.undoneBy().isPresent() ? what + ", undone by " + m.undoneBy().getAsLong() : what;
    }

    private static String changes(List<Line> lines, Map<Long, Holding> holdings) {
        if (lines.isEmpty()) {
            return "";
        }
        return lines.size() == 1 ? change(lines.get(0), holdings) : lines.size() + " lines";
    }

    private static String change(Line l, Map<Long, Holding> holdings) {
        Holding h = holdings.get(l.holding());
        long by = l.amount() != 0 ? l.amount() : l.reserved();
        String amount = (by > 0 ? "+" : "") + Held.amount(h.kind(), by);
        return amount
                + (l.amount() == 0 && l.reserved() != 0 ? " kept, " : " ")
                + h.spec().words();
    }

    private static void programs(Movement m, List<Line> lines, Map<Long, Holding> holdings, List<List<Object>> rows) {
        List<Object> head = List.of(
                m.number(),
                m.at(),
                m.who(),
                m.kind().word(),
                m.order(),
                m.why(),
                m.request(),
                m.undoes().isPresent() ? m.undoes().getAsLong() : 0L,
                m.undoneBy().isPresent() ? m.undoneBy().getAsLong() : 0L);
        if (lines.isEmpty()) {
            rows.add(joined(head, List.of("", "", 0L, 0L, "")));
        }
        for (Line l : lines) {
            Holding h = holdings.get(l.holding());
            String name = h.id().isEmpty() ? h.spec().words() : h.id();
            rows.add(joined(
                    head, List.of(h.product(), name, number(h, l.amount()), number(h, l.reserved()), l.holder())));
        }
    }

    private static List<Object> joined(List<Object> a, List<Object> b) {
        List<Object> all = new ArrayList<>(a);
        all.addAll(b);
        return all;
    }

    /** What is to be ordered: free stock is under its point. */
    public static Both reorder(Books books) {
        List<List<Object>> people = new ArrayList<>();
        List<List<Object>> programs = new ArrayList<>();
        for (ReorderPoint p : books.reorderPoints()) {
            List<Holding> lots = books.ofProduct(p.kind(), p.product()).stream()
                    .filter(h -> h.spec().length() == p.length())
                    .toList();
            long there = lots.stream().mapToLong(Holding::amount).sum();
            long free = lots.stream().mapToLong(Holding::free).sum();
            long order = p.toOrder(free);
            if (order > 0) {
                String length = p.kind().hasLength() ? Held.length(p.length()) : "";
                people.add(
                        List.of(p.kind().words(), p.product(), length, order, there, free, p.point(), (long) p.days()));
                programs.add(List.of(
                        p.kind().word(),
                        p.product(),
                        p.length() / HUNDREDTHS,
                        order,
                        there,
                        free,
                        p.point(),
                        p.pack(),
                        p.least(),
                        (long) p.days()));
            }
        }
        return new Both(
                listing("reorder", "kind, product, length, order, there, free, point, days", people),
                listing("reorder", "kind, product, length, order, quantity, free, point, pack, least, days", programs));
    }

    /** What came of a request, as JSON. */
    public static String outcome(Outcome outcome) {
        try {
            JsonOut out = new JsonOut().open();
            out.whole("movement", outcome.movement().number())
                    .text("kind", outcome.movement().kind().word())
                    .text("order", outcome.movement().order())
                    .text("request", outcome.movement().request())
                    .flag("changed", outcome.isNew());
            out.list("onTheShelf", outcome.made(), h -> out.text("id", h.id())
                    .text("kind", h.kind().word())
                    .text("product", h.product())
                    .number("length", h.amount() / HUNDREDTHS)
                    .text("batch", h.spec().batch())
                    .text("label", h.spec().label()));
            out.texts("notes", outcome.notes());
            return new String(out.close().finish(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
