package org.runbend.optimizer.cutting;

import java.util.Objects;
import java.util.Optional;

/**
 * A kind of stock that can be cut: a coil or bar as sold, or one opened coil or offcut with its own id.
 *
 * @param name what it is called on paper
 * @param length hundredths of mm, positive
 * @param cost minor units for one, 0 or more
 * @param available how many there are; {@link #ANY} when it can be bought in any number
 * @param id set for a single thing on the shelf
 */
public record Stock(String name, long length, long cost, int available, Optional<String> id) {
    /** Availability of stock that can be bought in any number. */
    public static final int ANY = Integer.MAX_VALUE;

    /** Longest length and highest cost accepted (a thousand km; ten billion minor units): sums stay far inside a long. */
    static final long GREATEST = 100_000_000_000L;

    /** Refuses a length that is not positive, a negative cost or a negative number. */
    public Stock {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(id, "id");
        Require.that(length > 0 && length <= GREATEST, "stock %s: length (%d) must be 1 to %d", name, length, GREATEST);
        Require.that(cost >= 0 && cost <= GREATEST, "stock %s: cost (%d) must be 0 to %d", name, cost, GREATEST);
        Require.that(available >= 0, "stock %s: available (%d) must not be negative", name, available);
    }

    /** Stock that can be bought in any number. */
    public static Stock bought(String name, long length, long cost) {
        return new Stock(name, length, cost, ANY, Optional.empty());
    }

    /** One opened coil or offcut from the shelf. */
    public static Stock single(String name, String id, long length, long cost) {
        return new Stock(name, length, cost, 1, Optional.of(id));
    }

    /** True when any number can be had. */
    public boolean unlimited() {
        return available == ANY;
    }
}
