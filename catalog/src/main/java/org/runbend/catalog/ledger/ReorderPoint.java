package org.runbend.catalog.ledger;

/**
 * When to order a product anew.
 *
 * @param kind coil, plate, board or item
 * @param product part number
 * @param length of whole coils and plates, hundredths of mm; else 0
 * @param point order when fewer are free
 * @param pack how many come in a pack
 * @param least least order
 * @param days from order to delivery
 */
public record ReorderPoint(Kind kind, String product, long length, long point, long pack, long least, int days) {
    /** Checks the numbers. */
    public ReorderPoint {
        Entry.that(!kind.isPiece(), "only whole coils, plates, boards and items are ordered");
        Holding.Spec.lot(kind, product, length, "");
        Entry.that(point >= 0 && point <= Entry.MOST, "the point must be 0 to " + Entry.MOST);
        Entry.that(pack >= 1 && pack <= Entry.MOST, "a pack must hold 1 to " + Entry.MOST);
        Entry.that(least >= 0 && least <= Entry.MOST, "the least order must be 0 to " + Entry.MOST);
        Entry.that(days >= 0 && days <= 3650, "lead time must be 0 to 3650 days");
    }

    /** How many to order when so many are free: up to the point again, the least order, whole packs; 0 if none. */
    public long toOrder(long free) {
        if (free >= point) {
            return 0;
        }
        long wanted = Math.max(point - free, Math.max(1, least));
        return (wanted + pack - 1) / pack * pack;
    }
}
