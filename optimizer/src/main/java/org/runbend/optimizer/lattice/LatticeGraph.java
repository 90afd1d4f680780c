package org.runbend.optimizer.lattice;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Nodes of a square lattice and the links that pipe may follow. Immutable. Nodes are numbered from 0 in the order they
 * were added; a price is what leaving the node out costs, in the unit in
 * which {@link #turnCost} says what a turn costs.
 */
public final class LatticeGraph {
    private final int[] columns;
    private final int[] rows;
    private final int[] prices;
    private final int[] neighbours;
    private final byte[] forbiddenCorners;
    private final boolean[] wanted;
    private final boolean[] crowded;
    private final boolean stiff;
    private final byte[] returns;
    private final int turnCost;
    private final StraightCost straightCost;

    private LatticeGraph(Builder builder) {
        this.columns = Arrays.copyOf(builder.columns, builder.size);
        this.rows = Arrays.copyOf(builder.rows, builder.size);
        this.prices = Arrays.copyOf(builder.prices, builder.size);
        this.neighbours = Arrays.copyOf(builder.neighbours, 4 * builder.size);
        this.forbiddenCorners = Arrays.copyOf(builder.forbiddenCorners, builder.size);
        this.wanted = Arrays.copyOf(builder.wanted, builder.size);
        this.crowded = Arrays.copyOf(builder.crowded, builder.size);
        this.stiff = builder.stiff;
        this.returns = Arrays.copyOf(builder.returns, builder.size);
        this.turnCost = builder.turnCost;
        this.straightCost = builder.straightCost;
    }

    /** An empty builder. */
    public static Builder builder() {
        return new Builder();
    }

    /** A builder that holds all of this graph. */
    public Builder copy() {
        return copy(IntStream.range(0, size()).toArray());
    }

    /**
     * Some nodes as a graph of their own: links within, and all else as it was.
     *
     * @param nodes in ascending order; the first becomes node 0
     */
    public LatticeGraph part(int[] nodes) {
        return copy(nodes).build();
    }

    /** The only place where a graph is copied, so that nothing that holds for it gets lost. */
    private Builder copy(int[] nodes) {
        Builder copy = new Builder();
        int[] number = new int[size()];
        Arrays.fill(number, -1);
        for (int n : nodes) {
            number[n] = copy.addNode(columns[n], rows[n], prices[n]);
        }
        for (int n : nodes) {
            for (int h = 0; h < 4; h++) {
                int next = neighbours[4 * n + h];
                copy.neighbours[4 * number[n] + h] = next < 0 ? -1 : number[next];
            }
            copy.forbiddenCorners[number[n]] = forbiddenCorners[n];
            copy.wanted[number[n]] = wanted[n];
            copy.crowded[number[n]] = crowded[n];
            copy.returns[number[n]] = returns[n];
        }
        copy.stiff = stiff;
        copy.turnCost = turnCost;
        copy.straightCost = straightCost;
        return copy;
    }

    /** Number of nodes. */
    public int size() {
        return columns.length;
    }

    /** Column of a node. */
    public int column(int node) {
        return columns[node];
    }

    /** Row of a node; rows grow to the north. */
    public int row(int node) {
        return rows[node];
    }

    /** Price of leaving the node out; 0 where nobody misses it. */
    public int price(int node) {
        return prices[node];
    }

    /** What a turn costs, in the unit of the prices. */
    public int turnCost() {
        return turnCost;
    }

    /** What straight pieces cost, in the unit of the prices. */
    public StraightCost straightCost() {
        return straightCost;
    }

    /** Whether the loop must pass the node, whatever it costs. */
    public boolean isWanted(int node) {
        return wanted[node];
    }

    /** Whether a corner is unwelcome there, where a loop without it is as good. */
    public boolean isCrowded(int node) {
        return crowded[node];
    }

    /** Whether pipe cannot turn at two nodes in a row, but in the return bends that are allowed. */
    public boolean isStiff() {
        return stiff;
    }

    /**
     * Whether stiff pipe has room for a return bend over the link that leaves the node in a direction, its legs on one
     * side of it.
     */
    public boolean returnAllowed(int node, Heading along, Heading side) {
        boolean forth = along == Heading.EAST || along == Heading.NORTH;
        int end = forth ? node : neighbour(node, along);
        return (returns[end] & returnBit(forth ? along : along.opposite(), side)) != 0;
    }

    private static int returnBit(Heading along, Heading side) {
        return 1 << ((along == Heading.EAST ? 0 : 2) + (along.left() == side ? 0 : 1));
    }

    /** The linked neighbour in that direction, or -1. */
    public int neighbour(int node, Heading heading) {
        return neighbours[4 * node + heading.index()];
    }

    /** Whether two nodes are linked. */
    public boolean linked(int a, int b) {
        for (Heading heading : Heading.values()) {
            if (neighbour(a, heading) == b) {
                return true;
            }
        }
        return false;
    }

    /** Heading of the link from one node to another; unlinked nodes are refused. */
    public Heading headingTo(int from, int to) {
        for (Heading heading : Heading.values()) {
            if (neighbour(from, heading) == to) {
                return heading;
            }
        }
        throw new IllegalArgumentException("nodes " + from + " and " + to + " are not linked");
    }

    /** Whether pipe may leave the node by both legs; true for a straight passage, false only for a forbidden corner. */
    public boolean bendAllowed(int node, Heading legA, Heading legB) {
        return (forbiddenCorners[node] & cornerBit(legA, legB)) == 0;
    }

    private static int cornerBit(Heading legA, Heading legB) {
        if (legA.left() == legB) {
            return 1 << legA.index();
        }
        return legB.left() == legA ? 1 << legB.index() : 0;
    }

    /** Collects nodes, links and forbidden corners. */
    public static final class Builder {
        private int size;
        private int[] columns = new int[64];
        private int[] rows = new int[64];
        private int[] prices = new int[64];
        private int[] neighbours = new int[256];
        private byte[] forbiddenCorners = new byte[64];
        private boolean[] wanted = new boolean[64];
        private boolean[] crowded = new boolean[64];
        private byte[] returns = new byte[64];
        private boolean stiff;
        private int turnCost = 1;
        private StraightCost straightCost = StraightCost.NONE;
        private final Map<Long, Integer> taken = new HashMap<>();

        private Builder() {}

        /** Adds a node and returns its number; a place may be taken once and a price must be 0 to 1,000,000. */
        public int addNode(int column, int row, int leaveOutPrice) {
            checkPrice(leaveOutPrice);
            if (taken.putIfAbsent(((long) column << 32) ^ (row & 0xffff_ffffL), size) != null) {
                throw new IllegalArgumentException("two nodes at column " + column + ", row " + row);
            }
            makeRoom();
            columns[size] = column;
            rows[size] = row;
            prices[size] = leaveOutPrice;
            Arrays.fill(neighbours, 4 * size, 4 * size + 4, -1);
            return size++;
        }

        private void makeRoom() {
            if (size == columns.length) {
                columns = Arrays.copyOf(columns, 2 * size);
                rows = Arrays.copyOf(rows, 2 * size);
                prices = Arrays.copyOf(prices, 2 * size);
                neighbours = Arrays.copyOf(neighbours, 8 * size);
                forbiddenCorners = Arrays.copyOf(forbiddenCorners, 2 * size);
                wanted = Arrays.copyOf(wanted, 2 * size);
                crowded = Arrays.copyOf(crowded, 2 * size);
                returns = Arrays.copyOf(returns, 2 * size);
            }
        }

        /** Gives every node that costs something when left out another price. */
        public Builder price(int leaveOutPrice) {
            for (int n = 0; n < size; n++) {
                prices[n] = prices[n] > 0 ? checkPrice(leaveOutPrice) : 0;
            }
            return this;
        }

        private static int checkPrice(int leaveOutPrice) {
            if (leaveOutPrice < 0 || leaveOutPrice > 1_000_000) {
                throw new IllegalArgumentException("leaveOutPrice (" + leaveOutPrice + ") must be 0 to 1000000");
            }
            return leaveOutPrice;
        }

        /** Says what a turn costs in the unit of the prices; 1 until then. */
        public Builder turnCost(int cost) {
            if (cost < 1 || cost > 1000) {
                throw new IllegalArgumentException("turnCost (" + cost + ") must be 1 to 1000");
            }
            turnCost = cost;
            return this;
        }

        /** Says what straight pieces cost, in the unit of the prices, the link of the port being a link like any other. */
        public Builder straightCost(StraightCost cost) {
            straightCost = Objects.requireNonNull(cost, "cost");
            return this;
        }

        /** The node at a place, or -1. */
        public int nodeAt(int column, int row) {
            return taken.getOrDefault(((long) column << 32) ^ (row & 0xffff_ffffL), -1);
        }

        /** Links two nodes one step apart, both ways; linking twice does no harm. */
        public Builder link(int a, int b) {
            Heading heading = Heading.ofStep(columns[check(b)] - columns[check(a)], rows[b] - rows[a]);
            neighbours[4 * a + heading.index()] = b;
            neighbours[4 * b + heading.opposite().index()] = a;
            return this;
        }

        /** Forbids the corner between two legs at right angles. */
        public Builder forbidBend(int node, Heading legA, Heading legB) {
            int bit = cornerBit(legA, legB);
            if (bit == 0) {
                throw new IllegalArgumentException("legs " + legA + " and " + legB + " make no corner");
            }
            forbiddenCorners[check(node)] |= (byte) bit;
            return this;
        }

        /** Forbids turns at two nodes in a row, but in the return bends that are allowed. */
        public Builder stiff() {
            stiff = true;
            return this;
        }

        /** Allows stiff pipe a return bend over the link to the east or north of a node, its legs on one side of it. */
        public Builder allowReturn(int node, Heading along, Heading side) {
            returns[check(node)] |= (byte) returnBit(along, side);
            return this;
        }

        /** Takes the link between two nodes away, if there is one. */
        public Builder unlink(int a, int b) {
            for (int h = 0; h < 4; h++) {
                neighbours[4 * check(a) + h] = neighbours[4 * a + h] == b ? -1 : neighbours[4 * a + h];
                neighbours[4 * check(b) + h] = neighbours[4 * b + h] == a ? -1 : neighbours[4 * b + h];
            }
            return this;
        }

        /** Whether two nodes are linked so far. */
        public boolean linked(int a, int b) {
            return Arrays.stream(neighbours, 4 * check(a), 4 * a + 4).anyMatch(n -> n == b);
        }

        /** The nodes that a node is linked to so far. */
        public int[] neighbours(int node) {
            return Arrays.stream(neighbours, 4 * check(node), 4 * node + 4)
                    .filter(n -> n >= 0)
                    .toArray();
        }

        /** Asks that the loop pass the node, whatever it costs. */
        public Builder want(int node) {
            wanted[check(node)] = true;
            return this;
        }

        /** Says that a corner is unwelcome at the node, where a loop without it is as good. */
        public Builder crowd(int node) {
            crowded[check(node)] = true;
            return this;
        }

        private int check(int node) {
            if (node < 0 || node >= size) {
                throw new IllegalArgumentException("no node " + node + " among " + size);
            }
            return node;
        }

        /** The graph of what was added so far. */
        public LatticeGraph build() {
            return new LatticeGraph(this);
        }
    }
}
