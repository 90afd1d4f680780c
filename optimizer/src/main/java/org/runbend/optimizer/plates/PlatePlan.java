package org.runbend.optimizer.plates;

import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;

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
 * @param unused plates that the job names and the plan does not use
 * @param workCost what cutting the stock takes of a worker's time, at the catalog's rates or the usual ones
 * @param objectiveBound no plan for this coverage costs less in material and work together, if that was proved
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
        List<UnusedPlate> unused,
        long workCost,
        OptionalLong objectiveBound) {
    /** mm: no saw takes off less. */
    private static final double USED_UP = 0.01;

    /** Stock plates of a product and a length (mm) that are bought, not taken from the shelf. */
    public List<PlateCut> boughtPlates(String product, double length) {
        return stock.stream()
                .filter(c -> c.product().equals(product) && c.id().isEmpty() && Math.abs(c.length() - length) < USED_UP)
                .toList();
    }

    /** Copies the lists. */
    public PlatePlan {
        pieces = List.copyOf(pieces);
        stock = List.copyOf(stock);
        unused = List.copyOf(unused);
    }

    /** A plan whose work is not reckoned. */
    public PlatePlan(
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
            List<UnusedPlate> unused) {
        this(
                pieces,
                stock,
                kerf,
                plateable,
                plated,
                straight,
                bought,
                bound,
                proof,
                runByRun,
                unused,
                0,
                OptionalLong.empty());
    }

    /** What material and work cost together, minor units: what plates are chosen by. */
    public long objective() {
        return bought + workCost;
    }

    /** The same plan with a bound that was proved for a request that it fulfils too. */
    PlatePlan withBound(long other, String otherProof) {
        return new PlatePlan(
                pieces,
                stock,
                kerf,
                plateable,
                plated,
                straight,
                bought,
                Math.min(other, bought),
                otherProof,
                runByRun,
                unused,
                workCost,
                objectiveBound);
    }

    /** The different lengths of the pieces, longest first, mm. */
    public List<Double> lengths() {
        return pieces.stream()
                .map(PlatePiece::length)
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList();
    }

    /** How often the saw cuts: once for each piece, and not at the end of a stock plate that is used up to there. */
    public int sawCuts() {
        return sawCuts(stock, kerf);
    }

    static int sawCuts(List<PlateCut> stock, double kerf) {
        int cuts = 0;
        for (PlateCut s : stock) {
            double rest = s.length()
                    - s.cuts().stream().mapToDouble(Double::doubleValue).sum()
                    - kerf * (s.cuts().size() - 1);
            cuts += s.cuts().size() - (rest < USED_UP ? 1 : 0);
        }
        return cuts;
    }

    /** How often the saw's stop is set: once for each length that is cut; whole stock plates are not. */
    public int stopSettings() {
        return stopSettings(stock);
    }

    static int stopSettings(List<PlateCut> stock) {
        return (int) stock.stream()
                .filter(s -> s.cuts().size() > 1 || s.length() - s.cuts().get(0) >= USED_UP)
                .flatMap(s -> s.cuts().stream())
                .distinct()
                .count();
    }

    /** Plated length over straight length, 0 to 1; 0 where there is no straight pipe. */
    public double coverage() {
        return straight > 0 ? plated / straight : 0;
    }
}
