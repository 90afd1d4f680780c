package org.runbend.catalog.product;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A fitting, tool or consumable that goes into the box by a rule.
 *
 * @param sku part number
 * @param name what a person calls it
 * @param unit what one of it is, such as piece, roll, pair
 * @param cost minor units of the catalog's currency
 * @param price minor units
 * @param weight kg of one
 * @param per what the rule counts
 * @param amount how many for each one counted; the sum is rounded up to whole items
 * @param forPipes part numbers of the pipes it fits; empty: all
 * @param cable of a floor sensor, mm, if it is known
 */
public record Item(
        String sku,
        String name,
        String unit,
        long cost,
        long price,
        double weight,
        Per per,
        double amount,
        List<String> forPipes,
        OptionalDouble cable) {
    /** What the number of an item follows. */
    public enum Per {
        /** Each kit. */
        KIT,
        /** Each loop. */
        LOOP,
        /** Each place where pipe comes through floor, cover or wall: a flow and a return for each loop. */
        PORT,
        /** Each end of a piece of pipe, where it is joined to a valve; a loop is one piece. */
        JOINT,
        /** Each quarter bend (a return bend counts two). */
        BEND,
        /** Each metre of straight run. */
        METRE_OF_RUN,
        /** Each metre of pipe on the floor. */
        METRE_OF_PIPE,
        /** Each plate piece. */
        PLATE_PIECE,
        /** Each floor sensor that the job asks for. */
        SENSOR,
        /** Once where grooves are routed by hand; not where boards come routed by a machine. */
        HAND_ROUTING,
        /** Only when another rule asks for it, such as a bending aid. */
        ON_DEMAND
    }

    /** Checks that nothing is negative. */
    public Item {
        Require.that(cost >= 0 && price >= 0, "item %s: cost and price must not be negative", sku);
        Require.that(weight >= 0, "item %s: weight must not be negative", sku);
        Require.that(amount > 0 && amount <= 1000, "item %s: amount %s must be over 0 and at most 1000", sku, amount);
        Require.that(
                cable.isEmpty() || per == Per.SENSOR, "item %s: only a floor sensor (per: sensor) has a cable", sku);
        forPipes = List.copyOf(forPipes);
    }

    /** Whether this item goes with the pipe of the given part number. */
    public boolean fits(String pipeSku) {
        return forPipes.isEmpty() || forPipes.contains(pipeSku);
    }

    /** Whole number of items for a count of what the rule counts; rounded up, with 1e-9 forgiven for noise. */
    public long quantityFor(double counted) {
        return (long) Math.ceil(amount * counted - 1e-9);
    }
}
