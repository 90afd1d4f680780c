package org.runbend.optimizer.heat;

import java.util.List;
import org.runbend.optimizer.heat.flow.LoopPath;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A loop as heat and flow see it.
 *
 * @param name for a paper
 * @param strips what its pipe lies in
 * @param path what its coolant passes, tails included
 * @param tails length of both tails, mm
 */
public record HeatedLoop(String name, List<PipeStrip> strips, LoopPath path, double tails) {
    /** Checks that some pipe lies on the floor. */
    public HeatedLoop {
        strips = List.copyOf(strips);
        Within.rule(strips.stream().anyMatch(s -> s.length() > 0), "%s: no pipe lies on the floor", name);
        Within.range("tails of " + name, tails, 0, path.length() + 1e-6, "mm");
    }
}
