package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import java.util.List;
import org.runbend.optimizer.lattice.BlockGraph;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.Links;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.lattice.StraightCost;

/**
 * The steps of the frontier program: at step t one node is decided, that is, which two of its links the loop uses, or
 * none. A link is open between the steps of its two ends and holds a slot meanwhile.
 *
 * <p>Legs are a mask of two {@link Heading} indices, 0 for a node left out. A port link may be chosen as the loop's port
 * when its earlier end is decided. If its later end then has corners that only a port excuses, the choice stays pending
 * under a code of 2 to 15 until that end is decided; code 0 means no port yet, code 1 port settled.
 */
final class Frontier {
    static final int PORT_OPEN = 0;
    static final int PORT_SETTLED = 1;
    static final int[] LEGS = {0, 5, 10, 3, 6, 12, 9};

    /** Port codes: derived, four bits above a state, see {@link StateEncoding}. */
    private static final int CODES = 16;

    private final BlockGraph blockGraph;
    private final Links links;
    private final List<PortPair> ports;
    private final int[] order;
    private final int[] position;
    private final int[] slots;
    private final int[] earlier;
    private final int[] forbidden;
    private final int[] portCode;
    private final int[] portRank;
    private final long[] priceAfter;
    private final int[][] options;
    private int slotCount;
    private int lastPortStep = -1;
    private int lastWantedStep = -1;
    private int lastMustStep = -1;

    /** Lays out slots for the order; the ports are those of the block. More than 14 pending ports at once are refused. */
    Frontier(BlockGraph blockGraph, int[] order, List<PortPair> ports) {
        this(blockGraph, Links.of(blockGraph), order, ports);
    }

    /** The same for other links than the lattice's own; the order names the nodes that take part. */
    Frontier(BlockGraph blockGraph, Links links, int[] order, List<PortPair> ports) {
        this.blockGraph = blockGraph;
        this.links = links;
        this.ports = List.copyOf(ports);
        this.order = order.clone();
        int n = order.length;
        position = new int[blockGraph.size()];
        slots = new int[4 * n];
        earlier = new int[n];
        forbidden = new int[n];
        portCode = new int[4 * n];
        portRank = new int[4 * n];
        priceAfter = new long[n + 1];
        options = new int[16 * n][];
        Arrays.fill(position, -1);
        Arrays.fill(slots, -1);
        Arrays.fill(portRank, -1);
        for (int t = 0; t < n; t++) {
            position[order[t]] = t;
            lastMustStep = links.must(order[t]) == 0 ? lastMustStep : t;
        }
        for (int t = n - 1; t >= 0; t--) {
            priceAfter[t] = priceAfter[t + 1] + price(t);
        }
        for (int t = 0; t < n; t++) {
            lastWantedStep = isWanted(t) ? t : lastWantedStep;
            layOut(t);
        }
        assignSlots();
        ports.forEach(this::placePort);
        assignCodes();
    }

    /**
     * The same nodes in another order, for one of two sweeps that meet: a port may be left to the other sweep as long as
     * its link is open.
     */
    Frontier side(int[] other) {
        Frontier side = new Frontier(blockGraph, links, other, ports);
        for (PortPair port : ports) {
            int from = side.position[blockGraph.local(port.from())];
            int to = side.position[blockGraph.local(port.to())];
            side.lastPortStep = Math.max(side.lastPortStep, Math.max(from, to));
        }
        return side;
    }

    private void layOut(int t) {
        int present = 0;
        for (int h = 0; h < 4; h++) {
            int next = links.other(order[t], h);
            if (next >= 0) {
                present |= 1 << h;
                earlier[t] |= position[next] < t ? 1 << h : 0;
            }
        }
        for (Heading heading : Heading.values()) {
            if (!links.isExcused(order[t]) && !blockGraph.graph().bendAllowed(node(t), heading, heading.left())) {
                forbidden[t] |= 1 << cornerLegs(heading);
            }
        }
        for (int used = 0; used < 16; used++) {
            options[16 * t + used] = optionsFor(t, present, used);
        }
    }

    private static int cornerLegs(Heading heading) {
        return (1 << heading.index()) | (1 << heading.left().index());
    }

    private int[] optionsFor(int t, int present, int used) {
        int must = links.must(order[t]);
        return Arrays.stream(LEGS)
                .filter(legs -> (legs & ~present) == 0 && (legs & earlier[t]) == used && (legs & must) == must)
                .filter(legs -> legs != 0 || !isWanted(t))
                .toArray();
    }

    private void assignSlots() {
        boolean[] taken = new boolean[4 * order.length + 1];
        for (int t = 0; t < order.length; t++) {
            for (int h = 0; h < 4; h++) {
                if (isEarlier(t, h)) {
                    taken[slots[4 * t + h]] = false;
                }
            }
            for (int h = 0; h < 4; h++) {
                int later = otherEnd(t, h);
                if (later > t) {
                    int slot = firstFree(taken);
                    slots[4 * t + h] = slot;
                    slots[4 * later + links.back(order[t], h)] = slot;
                    slotCount = Math.max(slotCount, slot + 1);
                }
            }
        }
    }

    private static int firstFree(boolean[] taken) {
        int slot = 0;
        while (taken[slot]) {
            slot++;
        }
        taken[slot] = true;
        return slot;
    }

    private void placePort(PortPair port) {
        int a = position[blockGraph.local(port.from())];
        int b = position[blockGraph.local(port.to())];
        int t = Math.min(a, b);
        int h = blockGraph.graph().headingTo(node(t), node(Math.max(a, b))).index();
        if (portRank[4 * t + h] < 0 || port.rank() < portRank[4 * t + h]) {
            portRank[4 * t + h] = port.rank();
        }
        lastPortStep = Math.max(lastPortStep, t);
    }

    /** Gives each port link whose later end needs excuse a code that no other open one has. */
    private void assignCodes() {
        boolean[] taken = new boolean[CODES + 4 * order.length];
        taken[PORT_OPEN] = true;
        taken[PORT_SETTLED] = true;
        for (int t = 0; t < order.length; t++) {
            for (int h = 0; h < 4; h++) {
                if (isEarlier(t, h) && portCode[4 * t + h] > PORT_SETTLED) {
                    taken[portCode[4 * t + h]] = false;
                }
            }
            for (int h = 0; h < 4; h++) {
                if (portRank[4 * t + h] >= 0) {
                    assignCode(t, h, taken);
                }
            }
        }
    }

    private void assignCode(int t, int h, boolean[] taken) {
        int later = otherEnd(t, h);
        int back = h ^ 2;
        boolean excuseNeeded = false;
        for (int legs : LEGS) {
            excuseNeeded |= (legs >> back & 1) == 1 && isForbidden(later, legs);
        }
        int code = excuseNeeded ? firstFree(taken) : PORT_SETTLED;
        if (code >= CODES) {
            throw new IllegalArgumentException("more than 14 port pairs are open at once; offer fewer");
        }
        portCode[4 * t + h] = code;
        portCode[4 * later + back] = excuseNeeded ? code : 0;
    }

    int size() {
        return order.length;
    }

    int slotCount() {
        return slotCount;
    }

    /** Local number of the node decided at a step. */
    int local(int t) {
        return order[t];
    }

    /** A link by step and heading at the end decided first, given by local number and heading at any end. */
    int linkOf(int localLink) {
        int t = position[localLink / 4];
        int h = localLink % 4;
        return otherEnd(t, h) > t ? 4 * t + h : 4 * otherEnd(t, h) + (h ^ 2);
    }

    /** Step at which a local number is decided, or -1. */
    int step(int local) {
        return position[local];
    }

    /** Graph node decided at a step. */
    int node(int t) {
        return blockGraph.node(order[t]);
    }

    /** Whether column and row of the node add up to an even number; linked nodes differ in this. */
    boolean isEven(int t) {
        return (blockGraph.column(order[t]) + blockGraph.row(order[t])) % 2 == 0;
    }

    /** What a turn costs. */
    int turnCost() {
        return blockGraph.graph().turnCost();
    }

    /** What straight pieces cost. */
    StraightCost straightCost() {
        return blockGraph.graph().straightCost();
    }

    /** Whether straight pieces cost anything. */
    boolean pricesPieces() {
        return !straightCost().isNone();
    }

    /** For a leg out of a window, nodes passed straight outside before the first turn; -1 for a link of the lattice. */
    int straightsOutside(int t, int h) {
        return links.straights(order[t], h);
    }

    long price(int t) {
        return blockGraph.graph().price(node(t));
    }

    /** Whether the loop must pass the node of a step. */
    boolean isWanted(int t) {
        return blockGraph.graph().isWanted(node(t));
    }

    /** Whether a corner is unwelcome at step t, where a loop without it is as good. */
    boolean isCrowded(int t) {
        return blockGraph.graph().isCrowded(node(t));
    }

    /** Whether every node that the loop must pass is decided at or before a step. */
    boolean mayCloseAt(int t) {
        return t >= lastWantedStep && t >= lastMustStep;
    }

    /** Sum of the prices of the nodes decided at or after a step. */
    long priceFrom(int t) {
        return priceAfter[t];
    }

    /** Step of the node that a link leads to, or -1. */
    int otherEnd(int t, int h) {
        int next = links.other(order[t], h);
        return next < 0 ? -1 : position[next];
    }

    /** Heading of a link at its other end. */
    int headingBack(int t, int h) {
        return links.back(order[t], h);
    }

    boolean isEarlier(int t, int h) {
        return (earlier[t] >> h & 1) == 1;
    }

    /** Mask of the headings whose nodes are already decided. */
    int earlier(int t) {
        return earlier[t];
    }

    int slot(int t, int h) {
        return slots[4 * t + h];
    }

    /** The legs a node can take when those earlier links are used; straight ones first. */
    int[] options(int t, int used) {
        return options[16 * t + used];
    }

    boolean isForbidden(int t, int legs) {
        return (forbidden[t] >> legs & 1) == 1;
    }

    /** Rank of the port that can be chosen at this step over that link, or -1. */
    int portRank(int t, int h) {
        return portRank[4 * t + h];
    }

    /** Code after the port is chosen over that link, or the pending code that ends with it. */
    int portCode(int t, int h) {
        return portCode[4 * t + h];
    }

    /** Last step at which a port can still be chosen. */
    int lastPortStep() {
        return lastPortStep;
    }

    static boolean isCorner(int legs) {
        return legs != 0 && legs != 5 && legs != 10;
    }
}
