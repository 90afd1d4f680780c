package org.runbend.optimizer.choice;

import java.util.List;
import java.util.OptionalLong;
import org.runbend.optimizer.plan.KitPlan;

/**
 * What plans of one floor are compared by, each rounded as it is shown, so that a difference that counts can be seen.
 *
 * @param bends quarter bends laid
 * @param leftOut places of the lattice not served; 0 for every plan where the one asked lies on no lattice
 * @param served share of the heated floor served, in tenths of %
 * @param pipe to cut, tails and allowance included, in cm
 * @param plated share of the straight pipe that has plates, in tenths of %
 * @param weight of the box, in tenths of kg
 * @param price of the box, minor units
 * @param uneven how far warmth differs over the floor, in tenths of %; see {@link Unevenness}
 * @param fitsCoil whether at most a tenth of the coils cut is left over
 * @param minutes of work to cut and fit the kit, whole ones; see {@link org.runbend.optimizer.plan.KitWork}
 * @param watts heat into the room, W, to three figures; none where the job does not say what heat is reckoned with
 */
public record PlanFigures(
        int bends,
        int leftOut,
        long served,
        long pipe,
        long plated,
        long weight,
        long price,
        long uneven,
        boolean fitsCoil,
        long minutes,
        OptionalLong watts) {
    /** What may be left of coils that a plan fits (own limit). */
    private static final double LEFT = 0.1;

    /**
     * The figures of a plan.
     *
     * @param onLattice whether the plan asked lies on a lattice, so that places left out can be compared
     */
    static PlanFigures of(KitPlan plan, boolean onLattice) {
        return new PlanFigures(
                plan.loops().stream()
                        .mapToInt(l -> l.breakdown().quarterBends())
                        .sum(),
                onLattice
                        ? plan.loops().stream()
                                .mapToInt(KitPlan.LoopPlan::leftOut)
                                .sum()
                        : 0,
                Math.round(10 * plan.served()),
                Math.round(plan.loops().stream()
                                .mapToLong(KitPlan.LoopPlan::cutLength)
                                .sum()
                        / 10.0),
                Math.round(1000 * plan.plates().coverage()),
                Math.round(10 * plan.weight()),
                plan.total(),
                Math.round(1000 * Unevenness.of(plan)),
                fitsCoil(plan),
                plan.work().minutes(),
                watts(plan));
    }

    private static OptionalLong watts(KitPlan plan) {
        return plan.heat().map(h -> OptionalLong.of(threeFigures(h.upward()))).orElse(OptionalLong.empty());
    }

    private static long threeFigures(double watts) {
        double step = Math.max(1, Math.pow(10, Math.floor(Math.log10(Math.max(1, Math.abs(watts)))) - 2));
        return Math.round(Math.rint(watts / step) * step);
    }

    private static boolean fitsCoil(KitPlan plan) {
        double left = plan.coils().coils().stream().mapToDouble(c -> c.left()).sum();
        return left
                <= LEFT
                        * plan.coils().coils().stream()
                                .mapToDouble(c -> c.length())
                                .sum();
    }

    /** Whether this is at least as good in everything and better in something. */
    public boolean dominates(PlanFigures other) {
        List<Long> mine = costs();
        List<Long> theirs = other.costs();
        boolean better = false;
        for (int i = 0; i < mine.size(); i++) {
            if (mine.get(i) > theirs.get(i)) {
                return false;
            }
            better |= mine.get(i) < theirs.get(i);
        }
        return better;
    }

    /** Everything that counts, less is better. */
    private List<Long> costs() {
        return List.of(
                (long) bends,
                (long) leftOut,
                -served,
                pipe,
                -plated,
                weight,
                price,
                uneven,
                fitsCoil ? 0L : 1L,
                minutes,
                -watts.orElse(0));
    }
}
