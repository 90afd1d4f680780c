package org.runbend.optimizer.plates;

import java.util.List;

/**
 * Plates for all loops of a job. Lengths in mm, money in minor units of the catalog's currency.
 *
 * @param pieces pieces in their places, in order of flow
 * @param stock stock plates and how they are cut
 * @param kerf what the saw takes per cut
 * @param plateable sum of all stretches
 * @param plated sum of all pieces, counted once for each groove
 * @param straight straight pipe of all loops
 * @param bought cost of the stock plates
 * @param bound no plan for this coverage costs less
 * @param proof how the bound was proved
 * @param runByRun cost if each stretch is cut by itself and the rest scrapped, at the same coverage
 * @param remarks what a person should know, one sentence each
 */
public record PlatePlan(
        List<PlatePiece> pieces,
        List<PlateCut> stock,
        double kerf,
        double plateable,
        double plated,
        double straight,
        long bought,
        long bound,
        String proof,
        long runByRun,
        List<String> remarks) {
    /** Copies the lists. */
    public PlatePlan {
        pieces = List.copyOf(pieces);
        stock = List.copyOf(stock);
        remarks = List.copyOf(remarks);
    }

    /** Plated length over straight length, 0 to 1; 0 where there is no straight pipe. */
    public double coverage() {
        return straight > 0 ? plated / straight : 0;
    }
}
