package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The states that each node can have in some loop: none, two straight, four corners. Steps stand for nodes. */
final class Configurations {
    private final Frontier frontier;
    private final List<List<Integer>> legs = new ArrayList<>();
    private final List<Integer> portLinks = new ArrayList<>();

    Configurations(Frontier frontier) {
        this.frontier = frontier;
        for (int t = 0; t < frontier.size(); t++) {
            int step = t;
            legs.add(Arrays.stream(Frontier.LEGS)
                    .filter(mask -> isPossible(step, mask))
                    .boxed()
                    .toList());
            for (int h = 0; h < 4; h++) {
                if (frontier.portRank(t, h) >= 0) {
                    portLinks.add(4 * t + h);
                }
            }
        }
    }

    private boolean isPossible(int t, int mask) {
        if (mask == 0 && frontier.isWanted(t)) {
            return false;
        }
        for (int h = 0; h < 4; h++) {
            if ((mask >> h & 1) == 1 && frontier.otherEnd(t, h) < 0) {
                return false;
            }
        }
        return !frontier.isForbidden(t, mask) || isPortNode(t);
    }

    /** Whether a port pair may excuse a forbidden corner here. */
    private boolean isPortNode(int t) {
        for (int h = 0; h < 4; h++) {
            int other = frontier.otherEnd(t, h);
            if (other >= 0 && (frontier.portRank(t, h) >= 0 || frontier.portRank(other, h ^ 2) >= 0)) {
                return true;
            }
        }
        return false;
    }

    Frontier frontier() {
        return frontier;
    }

    /** The leg masks a node can have. */
    List<Integer> legs(int t) {
        return legs.get(t);
    }

    /** Links of the port pairs, as 4 x step + heading at the end decided first. */
    List<Integer> portLinks() {
        return portLinks;
    }

    /** Port links that a state uses and that are counted at this end. */
    int portUses(int t, int mask) {
        int uses = 0;
        for (int h = 0; h < 4; h++) {
            uses += (mask >> h & 1) == 1 && frontier.portRank(t, h) >= 0 ? 1 : 0;
        }
        return uses;
    }
}
