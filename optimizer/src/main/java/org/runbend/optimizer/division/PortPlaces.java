package org.runbend.optimizer.division;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.runbend.optimizer.lattice.PortPair;

/** How many loops can begin and end among port pairs at once: pairs that share no node. */
public final class PortPlaces {
    private PortPlaces() {}

    /**
     * Most pairs without a common node.
     *
     * <p>Method: a pair whose node is in no other pair can always be taken, so such pairs go first; on a rim, where pairs
     * follow each other in a row, this is exact.
     */
    public static int apart(List<PortPair> ports) {
        List<PortPair> left = new ArrayList<>(ports);
        int count = 0;
        while (!left.isEmpty()) {
            Map<Integer, Integer> uses = new HashMap<>();
            left.forEach(p -> {
                uses.merge(p.from(), 1, Integer::sum);
                uses.merge(p.to(), 1, Integer::sum);
            });
            PortPair taken = left.stream()
                    .filter(p -> Math.min(uses.get(p.from()), uses.get(p.to())) == 1)
                    .findFirst()
                    .orElse(left.get(0));
            left.removeIf(p -> touches(p, taken.from()) || touches(p, taken.to()));
            count++;
        }
        return count;
    }

    private static boolean touches(PortPair pair, int node) {
        return pair.from() == node || pair.to() == node;
    }
}
