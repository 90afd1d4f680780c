package org.runbend.optimizer.quote;

import java.util.List;
import org.runbend.catalog.product.StandardKit;

/**
 * What a floor needs, what can be bought loose for it, and the standard kits on offer. Lengths in hundredths of mm, prices in minor units.
 *
 * @param pipe part number of the pipe
 * @param pipeName what a person calls it
 * @param loops a cut of pipe for each loop, each from one coil
 * @param plates stock plates as the plan cuts them
 * @param parts everything else
 * @param coils coils sold, shortest first
 * @param shared whether pipe is charged by its share of a coil, else by whole coils
 * @param opened lengths of opened coils that the plan cuts from
 * @param stock stock plates sold
 * @param kits standard kits
 * @param madeToMeasure price of the plan's own box
 */
public record KitNeed(
        String pipe,
        String pipeName,
        List<LoopCut> loops,
        List<PlateCut> plates,
        List<Part> parts,
        List<LooseCoil> coils,
        boolean shared,
        List<Long> opened,
        List<LoosePlate> stock,
        List<StandardKit> kits,
        long madeToMeasure) {
    /** Copies the lists. */
    public KitNeed {
        loops = List.copyOf(loops);
        plates = List.copyOf(plates);
        parts = List.copyOf(parts);
        coils = List.copyOf(coils);
        opened = List.copyOf(opened);
        stock = List.copyOf(stock);
        kits = List.copyOf(kits);
    }

    /** What a cut of pipe is charged at by its share of the shortest coil sold that is at least as long, the longest if none is. */
    public long priceOfCut(long length) {
        LooseCoil like =
                coils.stream().filter(c -> c.length >= length).findFirst().orElse(coils.get(coils.size() - 1));
        return Math.round((double) like.price * length / like.length);
    }

    /**
     * Pipe of a loop.
     *
     * @param loop its name
     * @param length of the cut
     */
    public record LoopCut(String loop, long length) {}

    /**
     * A stock plate that is cut.
     *
     * @param product part number
     * @param length that cuts, saw and trim take of it: any plate at least so long will do
     * @param shelfPrice price of the offcut on the shelf that the plan takes for it; negative where it is a bought plate
     */
    public record PlateCut(String product, long length, long shelfPrice) {
        /** Whether it may come from the shelf. */
        public boolean isFromShelf() {
            return shelfPrice >= 0;
        }
    }

    /**
     * Equal things that are neither pipe nor plate.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param unit what one of it is
     * @param quantity how many are needed
     * @param price of one
     */
    public record Part(String sku, String name, String unit, long quantity, long price) {}

    /**
     * A coil as it is sold.
     *
     * @param length of it
     * @param price of the whole coil
     */
    public record LooseCoil(long length, long price) {}

    /**
     * A stock plate as it is sold.
     *
     * @param product part number
     * @param name what a person calls it
     * @param length of it
     * @param price of it
     */
    public record LoosePlate(String product, String name, long length, long price) {}
}
