package org.runbend.optimizer.cutting.patterns;

import org.runbend.optimizer.cutting.CoverKnapsack;

/** The bound of the material alone: the stock used must be as long as all cuts together. */
final class CutMaterial {
    private final MergedCuts cuts;

    CutMaterial(MergedCuts cuts) {
        this.cuts = cuts;
    }

    /** No plan costs less. */
    long bound() {
        long need = 0;
        for (int i = 0; i < cuts.sizeCount(); i++) {
            need = Math.addExact(need, Math.multiplyExact(cuts.size(i), (long) cuts.count(i)));
        }
        CoverKnapsack knapsack = new CoverKnapsack(need);
        for (MergedCuts.Kind kind : cuts.kinds()) {
            knapsack.add(kind.capacity(), kind.cost(), kind.available());
        }
        return knapsack.bound().orElse(0);
    }
}
