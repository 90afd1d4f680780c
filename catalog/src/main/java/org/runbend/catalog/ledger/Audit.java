package org.runbend.catalog.ledger;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Adds all movements up once more and holds the sums against what the ledger says is there. */
public final class Audit {
    private Audit() {}

    /** What does not add up, a line each; empty if everything does. */
    public static String faults(StockLedger ledger) {
        return ledger.look(Audit::faults);
    }

    private static String faults(Books books) {
        Map<Long, Line> sums = new HashMap<>();
        Map<String, Long> kept = new TreeMap<>();
        Map<String, String> faults = new LinkedHashMap<>();
        long expected = 0;
        for (Movement m : books.movements()) {
            if (m.number() != ++expected) {
                faults.put("gap", "movement " + expected + " is missing");
                expected = m.number();
            }
            for (Line l : books.lines(m.number())) {
                sums.merge(l.holding(), l, Line::plus);
                kept.merge(l.holder() + " of holding " + l.holding(), l.reserved(), Long::sum);
            }
        }
        books.holdings().forEach(h -> check(h, sums.getOrDefault(h.key(), new Line(h.key(), 0, 0, 0, "")), faults));
        kept.values().removeIf(k -> k == 0);
        Map<String, Long> said = books.reservations().stream()
                .collect(Collectors.toMap(
                        r -> r.order() + " of holding " + r.holding(), Reservation::amount, (a, b) -> a, TreeMap::new));
        if (!kept.equals(said)) {
            faults.put("kept", "reservations are " + said + ", their movements add up to " + kept);
        }
        return String.join("\n", List.copyOf(faults.values()));
    }

    private static void check(Holding h, Line sum, Map<String, String> faults) {
        if (h.amount() != sum.amount() || h.uncertainty() != sum.uncertainty() || h.reserved() != sum.reserved()) {
            faults.put(
                    h.spec().words(),
                    h.spec().words() + ": the ledger has " + h.amount() + " (" + h.reserved()
                            + " kept), its movements add up to " + sum.amount() + " (" + sum.reserved() + " kept)");
        }
    }
}
