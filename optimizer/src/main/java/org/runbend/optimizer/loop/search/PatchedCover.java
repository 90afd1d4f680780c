package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/** A first loop for wide blocks: a cycle cover, its cycles patched; cut off and solved again while cycles are left. */
final class PatchedCover {
    private final BlockProblem blockProblem;
    private final Configurations configurations;
    private final int rounds;
    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE;

    PatchedCover(BlockProblem blockProblem, int rounds) {
        this.blockProblem = blockProblem;
        this.configurations = new Configurations(blockProblem.frontier());
        this.rounds = rounds;
    }

    /** Legs by step of the best loop met, or empty. */
    int[] find() {
        List<ConnectivityCut> cuts = new ArrayList<>();
        CycleCover cover = new CycleCover(configurations);
        for (int round = 0; round < rounds; round++) {
            int[] legs = cover.solve(cuts);
            int before = cuts.size();
            for (int link : configurations.portLinks()) {
                if (legs.length > 0 && (legs[link / 4] >> (link % 4) & 1) == 1) {
                    patch(legs, link);
                    addCuts(legs, link, cuts);
                }
            }
            if (cuts.size() == before) {
                break;
            }
        }
        return best.clone();
    }

    private void patch(int[] cover, int portLink) {
        int[] loop = new CyclePatching(blockProblem.frontier(), cover, portLink).patch();
        if (isAllowed(loop, portLink) && blockProblem.objective(loop) < bestObjective) {
            best = loop;
            bestObjective = blockProblem.objective(loop);
        }
    }

    private boolean isAllowed(int[] loop, int portLink) {
        Frontier frontier = blockProblem.frontier();
        for (int t = 0; t < loop.length; t++) {
            boolean excused = t == portLink / 4 || t == frontier.otherEnd(portLink / 4, portLink % 4);
            if ((frontier.isForbidden(t, loop[t]) && !excused) || (loop[t] == 0 && frontier.isWanted(t))) {
                return false;
            }
        }
        return true;
    }

    /** One cut for each cycle beside the port's. */
    private void addCuts(int[] cover, int portLink, List<ConnectivityCut> cuts) {
        int[] cycles = new CyclePatching(blockProblem.frontier(), cover, portLink).cycles();
        for (int start = 0; start < cycles.length; start++) {
            if (cycles[start] == start && cycles[portLink / 4] != start) {
                boolean[] set = new boolean[cycles.length];
                for (int t = 0; t < set.length; t++) {
                    set[t] = cycles[t] == start;
                }
                cuts.add(new ConnectivityCut(set, start, portLink / 4));
            }
        }
    }
}
