package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;

/** A biconnected block with the port pairs that open it. */
record PortBlock(BiconnectedBlock block, List<PortPair> ports) {
    /** The blocks that a loop of the problem may lie in, the one worth most (sum of prices, then size) first. */
    static List<PortBlock> of(LoopProblem problem) {
        List<PortBlock> found = new ArrayList<>();
        for (BiconnectedBlock block : BiconnectedBlock.all(problem.graph())) {
            List<PortPair> ports = problem.ports().stream()
                    .filter(port -> block.contains(port.from()) && block.contains(port.to()))
                    .toList();
            if (!ports.isEmpty() && block.holdsAllWanted(problem.graph())) {
                found.add(new PortBlock(block, ports));
            }
        }
        found.sort(Comparator.comparingLong((PortBlock b) -> b.block.price(problem.graph()))
                .thenComparingInt(b -> b.block.size())
                .reversed());
        return found;
    }

    /** Whether a loop through the port lies in the block. */
    boolean holds(PortPair port) {
        return ports.contains(port);
    }

    /** The block ready to be laid. */
    BlockProblem blockProblem(LoopProblem problem) {
        return new BlockProblem(problem, block, ports);
    }
}
