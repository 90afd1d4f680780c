package org.runbend.optimizer.cutting;

import java.util.List;

/**
 * What one stock piece gives.
 *
 * @param stock index into {@link CoverProblem#stock()}
 * @param pieces lengths cut from it, longest first, hundredths of mm
 * @param leftover hundredths of mm left after the pieces and a kerf for each piece, never below 0
 */
public record StockUse(int stock, List<Long> pieces, long leftover) {
    /** Copies the list. */
    public StockUse {
        pieces = List.copyOf(pieces);
    }
}
