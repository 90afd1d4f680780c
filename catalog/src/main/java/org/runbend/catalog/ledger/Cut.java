package org.runbend.catalog.ledger;

/**
 * A piece that was cut for an order and is neither spoiled nor back on the shelf.
 *
 * @param movement that cut it
 * @param number of the cut in that movement, from 1
 * @param order for which it was cut
 * @param kind what it is when it comes back: an opened coil or an offcut
 * @param product part number
 * @param batch batch number; empty if none is known
 * @param length hundredths of mm
 * @param goesTo its place in the kit
 * @param from the id or kind of what it was cut from
 */
public record Cut(
        long movement,
        int number,
        String order,
        Kind kind,
        String product,
        String batch,
        long length,
        String goesTo,
        String from) {
    /** As benches name it. */
    public String name() {
        return movement + "/" + number;
    }
}
