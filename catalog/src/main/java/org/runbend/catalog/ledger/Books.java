package org.runbend.catalog.ledger;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The pages of the ledger inside one transaction. What is written is seen by what is read after; a page that breaks a rule
 * (less than nothing, more reserved than there is) is refused.
 */
public interface Books {
    /** The movement of a request. */
    Optional<Movement> findRequest(String request);

    /** A movement by its number. */
    Optional<Movement> findMovement(long number);

    /** All movements in order. */
    List<Movement> movements();

    /** What a movement did, in order. */
    List<Line> lines(long movement);

    /** All holdings by number, those that are gone too. */
    List<Holding> holdings();

    /** A holding by its number. */
    Holding holding(long key);

    /** A piece by its id, on the shelf or gone. */
    Optional<Holding> findPiece(String id);

    /** Holdings of a kind and a product, in the order in which they came. */
    List<Holding> ofProduct(Kind kind, String product);

    /** Pieces that a movement brought. */
    List<Holding> madeBy(long movement);

    /** What is kept for an order, by number of the holding. */
    List<Reservation> reservationsOf(String order);

    /** How much is kept for an order, by number of the holding. */
    default Map<Long, Long> keptFor(String order) {
        return reservationsOf(order).stream().collect(Collectors.toMap(Reservation::holding, Reservation::amount));
    }

    /** All reservations, by order and holding. */
    List<Reservation> reservations();

    /** Orders that something of a holding is kept for, the last one first. */
    List<String> holdersOf(long holding);

    /** The last movement after another that counts and has a line of a holding; of stock-takes those alone that counted it. */
    Optional<Movement> lastAfter(long movement, long holding, boolean countsOnly);

    /** How far an order is. */
    OrderRecord order(String order);

    /** All orders, by number. */
    List<OrderRecord> orders();

    /** What a movement made of orders. */
    List<OrderRecord> orderChanges(long movement);

    /** What an order was before a movement. */
    OrderRecord orderBefore(String order, long movement);

    /** The last movement that counts and changed an order, of a kind if one is given. */
    Optional<Movement> lastOfOrder(String order, Optional<MovementKind> kind);

    /** Pieces that were cut for an order and are neither spoiled nor back. */
    List<Cut> cuts(String order);

    /** Boards and items that an order has taken: what is less by it. */
    List<Line> takenBy(String order);

    /** When to order anew, as last set. */
    List<ReorderPoint> reorderPoints();

    /** Begins a movement and gives its number. */
    long begin(Movement head);

    /** Writes a new holding with nothing on it; its number. */
    long create(Holding.Spec spec, long movement);

    /** Writes a line of a movement and does what it says. */
    void line(long movement, int number, Line line);

    /** Writes what a movement makes of an order. */
    void orderChange(long movement, OrderRecord order);

    /** Writes a cut. */
    void cut(Cut cut);

    /** Writes what a movement makes of a cut. */
    void fate(long movement, Cut cut, Fate fate);

    /** Writes when to order anew. */
    void reorderPoint(long movement, ReorderPoint point);

    /** The next number for pieces of a letter; none is given twice. */
    long nextNumber(String letter);
}
