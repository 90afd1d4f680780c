package org.runbend.export.batch;

import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.runbend.catalog.ledger.StockShort;
import org.runbend.export.data.Day;

/**
 * Nests a day and keeps stock for it. Where somebody took from the shelf meanwhile it is nested anew from what is there now; what no
 * other nesting could mend is said at once. Nothing is solved in a transaction.
 */
public final class DaySettling {
    /** How often stock is asked for. */
    private static final int TRIES = 3;

    private final Function<Shop, Day> nesting;
    private final Supplier<Shop> shelf;
    private final Consumer<Day> reserving;

    /**
     * How a day is settled.
     *
     * @param nesting nests the day from what is there, and writes it
     * @param shelf what is there now
     * @param reserving keeps stock for the day; {@link StockShort} where it does not suffice
     */
    public DaySettling(Function<Shop, Day> nesting, Supplier<Shop> shelf, Consumer<Day> reserving) {
        this.nesting = nesting;
        this.shelf = shelf;
        this.reserving = reserving;
    }

    /** The day for which stock is kept, begun with what was there before its floors were laid. */
    public Day settle(Shop first) {
        Shop shop = first;
        Day day = nesting.apply(shop);
        for (int attempt = 1; ; attempt++) {
            try {
                reserving.accept(day);
                return day;
            } catch (StockShort e) {
                if (attempt == TRIES) {
                    throw e;
                }
                Shop now = shelf.get();
                day = now.equals(shop) ? day : nesting.apply(now);
                shop = now;
            }
        }
    }
}
