package org.runbend.export.data;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.runbend.catalog.ledger.Books;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Kind;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.shelf.Remnant;

/**
 * Unopened coils on the shelf in lengths that the catalog does not list. They have no price as a whole, so they are cut like opened
 * coils, by the metre, and what is left stays in the workshop. Coils in a listed length cost what a new one costs, lying there or not.
 */
public final class UnopenedCoils {
    /** A job has no more loops. */
    private static final int MOST = 6;

    private static final double HUNDREDTHS = 100;

    private UnopenedCoils() {}

    /** Those of a pipe that are free, or kept for an order: at most 6 of each length. */
    public static List<Remnant> of(Books books, String order, Pipe pipe) {
        Map<Long, Long> kept = books.keptFor(order);
        Map<Long, Integer> free = new HashMap<>();
        List<Remnant> coils = new ArrayList<>();
        for (Holding h : books.ofProduct(Kind.COIL, pipe.sku())) {
            long others = h.reserved() - kept.getOrDefault(h.key(), 0L);
            for (long n = h.amount() - others; n > 0 && !isListed(pipe, h.spec().length()); n--) {
                int number = free.merge(h.spec().length(), 1, Integer::sum);
                if (number > MOST) {
                    break;
                }
                coils.add(Remnant.unopened(pipe.sku(), h.spec().length() / HUNDREDTHS, number));
            }
        }
        return coils;
    }

    /** Whether a catalog sells coils of a length, hundredths of mm. */
    public static boolean isListed(Pipe pipe, long length) {
        return pipe.coils().stream().anyMatch(c -> Math.round(c.length() * HUNDREDTHS) == length);
    }
}
