package org.runbend.catalog.ledger;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * Days of several orders: stock is kept under the day's name, and its orders are confirmed and cut with it. Once they are cut each goes
 * its own way: it is spoiled, packed, sent and returned by itself.
 */
public final class Days {
    private Days() {}

    /** The orders of a day as its last reservation or cutting left them; empty if it is the name of one order. */
    public static List<String> orders(Books books, String day) {
        return books.lastOfOrder(day, Optional.empty())
                .filter(m -> m.order().equals(day))
                .map(m -> ofDay(books.orderChanges(m.number()), day))
                .orElse(List.of());
    }

    /** Those that a movement took as far as the day; others have left it. */
    private static List<String> ofDay(List<OrderRecord> changes, String day) {
        Optional<OrderState> far = changes.stream()
                .filter(c -> c.order().equals(day))
                .map(OrderRecord::state)
                .findFirst();
        return changes.stream()
                .filter(c ->
                        !c.order().equals(day) && far.filter(c.state()::equals).isPresent())
                .map(OrderRecord::order)
                .toList();
    }

    /**
     * No order is cut twice, nor by itself while a day keeps stock for it.
     *
     * @throws LedgerRefused if the day cannot have these orders, whatever is on the shelf
     */
    public static void check(Books books, String day, Collection<String> orders) {
        for (String order : orders) {
            Entry.that(!order.equals(day), "a day " + day + " holds an order of that name: rename the day");
            OrderRecord now = books.order(order);
            if (now.state().isCut()) {
                throw new LedgerRefused("order " + order + " of day " + day + " is "
                        + now.state().word()
                        + " already: take its file out of the day's folder and do the batch again");
            }
            if (now.state() == OrderState.CONFIRMED && !orders(books, order).isEmpty()) {
                throw new LedgerRefused(
                        "order " + order + " of day " + day + " is a day itself: give one of the two another name");
            }
            dayOf(books, now).filter(d -> !d.equals(day)).ifPresent(d -> {
                throw new LedgerRefused("order " + order + " of day " + day + " is one of day " + d
                        + " too: take its file out of one of the folders and do that batch again");
            });
        }
        dayOf(books, books.order(day)).ifPresent(d -> {
            throw new LedgerRefused("order " + day + " is cut with day " + d
                    + ": confirm that, or take its file out of the day's folder and do the batch again");
        });
    }

    /** The day that keeps stock for an order, which is cut with it; empty once it is cut, or where it keeps its own. */
    public static Optional<String> dayOf(Books books, OrderRecord order) {
        return order.state() == OrderState.CONFIRMED
                ? books.lastOfOrder(order.order(), Optional.empty())
                        .map(Movement::order)
                        .filter(o -> !o.equals(order.order()))
                : Optional.empty();
    }

    /** What was cut as a day is changed order by order. */
    static void checkNew(Books books, OrderRecord now) {
        if (now.state().isCut() && !orders(books, now.order()).isEmpty()) {
            throw new LedgerRefused("day " + now.order() + " is " + now.state().word()
                    + ": plan a changed order of it by itself with plan --was, and confirm that kit");
        }
    }

    static void checkNoDay(Books books, OrderRecord now) {
        List<String> orders = orders(books, now.order());
        if (!orders.isEmpty()) {
            throw new LedgerRefused(now.order() + " is a day: name one of its orders: " + String.join(", ", orders));
        }
    }

    /** Orders that were of the day and are no longer give back what is kept; so do its own, which the day now keeps for. */
    static void leave(Posting posting, OrderRecord now, KitUse use) {
        if (now.state() == OrderState.CONFIRMED) {
            orders(posting.books(), now.order()).stream()
                    .filter(o -> !use.orders().containsKey(o))
                    .forEach(o -> quoted(posting, o, now.order()));
        }
        use.orders().keySet().forEach(posting::releaseAll);
    }

    /** What is kept for an order of a day is the day's. */
    static void checkOwn(Books books, OrderRecord now) {
        dayOf(books, now).ifPresent(d -> {
            throw new LedgerRefused("what is kept for order " + now.order() + " is day " + d
                    + "'s: take its file out of the day's folder and do the batch again, or release " + d);
        });
    }

    /** Nothing is kept for an order any more; nor, if it is a day, for its orders. */
    static void lose(Posting posting, String order) {
        orders(posting.books(), order).forEach(o -> quoted(posting, o, order));
        posting.releaseAll(order);
        posting.stateOf(order, OrderState.QUOTED, posting.books().order(order).fingerprint());
    }

    /** An order that the day keeps stock for, and no other nor itself, is no longer one of it. */
    private static void quoted(Posting posting, String order, String day) {
        OrderRecord now = posting.books().order(order);
        if (dayOf(posting.books(), now).filter(day::equals).isPresent()) {
            posting.stateOf(order, OrderState.QUOTED, now.fingerprint());
        }
    }

    static void members(Posting posting, KitUse use, OrderState state) {
        use.orders().forEach((order, fingerprint) -> posting.stateOf(order, state, fingerprint));
    }
}
