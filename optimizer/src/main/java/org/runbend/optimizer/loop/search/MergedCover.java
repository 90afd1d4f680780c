package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/** A first loop for wide blocks: a cycle cover, its cycles merged; cut off and solved again while cycles are left. */
final class MergedCover {
    private final Setting setting;
    private final Configurations configurations;
    private final int rounds;
    private int[] best = {};
    private long bestObjective = Long.MAX_VALUE;

    MergedCover(Setting setting, int rounds) {
        this.setting = setting;
        this.configurations = new Configurations(setting.frontier());
        this.rounds = rounds;
    }

    /** Legs by step of the best loop met, or empty. */
    int[] find() {
        List<Cut> cuts = new ArrayList<>();
        CycleCover cover = new CycleCover(configurations);
        for (int round = 0; round < rounds; round++) {
            int[] legs = cover.solve(cuts);
            int before = cuts.size();
            for (int link : configurations.portLinks()) {
                if (legs.length > 0 && (legs[link / 4] >> (link % 4) & 1) == 1) {
                    merge(legs, link);
                    addCuts(legs, link, cuts);
                }
            }
            if (cuts.size() == before) {
                break;
            }
        }
        return best.clone();
    }

    private void merge(int[] cover, int portLink) {
        int[] loop = new CycleMerge(setting.frontier(), cover, portLink).merge();
        if (isAllowed(loop, portLink) && setting.objective(loop) < bestObjective) {
            best = loop;
            bestObjective = setting.objective(loop);
        }
    }

    private boolean isAllowed(int[] loop, int portLink) {
        Frontier frontier = setting.frontier();
        for (int t = 0; t < loop.length; t++) {
            boolean excused = t == portLink / 4 || t == frontier.otherEnd(portLink / 4, portLink % 4);
            if ((frontier.isForbidden(t, loop[t]) && !excused) || (loop[t] == 0 && frontier.isWanted(t))) {
                return false;
            }
        }
        return true;
    }

    /** One cut for each cycle beside the port's. */
    private void addCuts(int[] cover, int portLink, List<Cut> cuts) {
        int[] cycles = new CycleMerge(setting.frontier(), cover, portLink).cycles();
        for (int start = 0; start < cycles.length; start++) {
            if (cycles[start] == start && cycles[portLink / 4] != start) {
                boolean[] set = new boolean[cycles.length];
                for (int t = 0; t < set.length; t++) {
                    set[t] = cycles[t] == start;
                }
                cuts.add(new Cut(set, start, portLink / 4));
            }
        }
    }
}
