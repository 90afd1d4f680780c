package org.runbend.optimizer.loop.search;

/**
 * Everything that can be done with one node in one state. One object serves one thread; the state handed to the sink is
 * overwritten by the next call.
 */
final class StateExpansion {
    /** Receives what a state leads to. */
    interface Sink {
        /** Whether the step's node may have those legs at all; asked before anything is worked out. */
        default boolean wants(int legs) {
            return true;
        }

        /** A further state; the cost is that of this step, the port rank -1 unless a port was chosen now. */
        void next(long[] state, long cost, int legs, int portRank);

        /** The loop closes at this step's cost; the rest is the price of all nodes not yet decided, which stay out. */
        void closed(long cost, long rest, int legs);
    }

    private final Frontier frontier;
    private final StateEncoding encoding;
    private final long[] next;
    private final Sink sink;
    private final StraightPieces pieces;

    private long[] from = {};
    private int offset;
    private int step;

    StateExpansion(Frontier frontier, StateEncoding encoding, Sink sink) {
        this(frontier, encoding, sink, 0);
    }

    /** For states that are followed by so many further words, which are handed on as they are. */
    StateExpansion(Frontier frontier, StateEncoding encoding, Sink sink, int furtherWords) {
        this.frontier = frontier;
        this.encoding = encoding;
        this.sink = sink;
        this.next = new long[encoding.words() + furtherWords];
        this.pieces = new StraightPieces(frontier, encoding);
    }

    /** The straight pieces that the state last handed to the sink has closed. */
    StraightPieces pieces() {
        return pieces;
    }

    /** Decides the node of a step in the state at {@code states[at...]}. */
    void expand(long[] states, int at, int t) {
        from = states;
        offset = at;
        step = t;
        int used = usedLinks();
        if (Integer.bitCount(used) > 2) {
            return;
        }
        int code = StateEncoding.code(states, at);
        for (int legs : frontier.options(t, used)) {
            if (!sink.wants(legs)) {
                continue;
            }
            if (code > Frontier.PORT_SETTLED && pendingEndsHere(code, legs)) {
                emit(legs, Frontier.PORT_SETTLED, -1);
            } else {
                decide(legs, code);
            }
        }
    }

    private int usedLinks() {
        int used = 0;
        int earlier = frontier.earlier(step);
        for (int h = 0; h < 4; h++) {
            if ((earlier >> h & 1) == 1 && encoding.mate(from, offset, frontier.slot(step, h)) >= 0) {
                used |= 1 << h;
            }
        }
        return used;
    }

    private boolean pendingEndsHere(int code, int legs) {
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1 && frontier.isEarlier(step, h) && frontier.portCode(step, h) == code) {
                return true;
            }
        }
        return false;
    }

    private void decide(int legs, int code) {
        boolean missed = code == Frontier.PORT_OPEN && step >= frontier.lastPortStep();
        if (!missed && !frontier.isForbidden(step, legs)) {
            emit(legs, code, -1);
        }
        if (code != Frontier.PORT_OPEN || step > frontier.lastPortStep()) {
            return;
        }
        for (int h = 0; h < 4; h++) {
            if ((legs >> h & 1) == 1 && frontier.portRank(step, h) >= 0) {
                emit(legs, frontier.portCode(step, h), frontier.portRank(step, h));
            }
        }
    }

    private void emit(int legs, int code, int portRank) {
        System.arraycopy(from, offset, next, 0, next.length);
        StateEncoding.setCode(next, code);
        if (legs == 0) {
            pieces.none();
            sink.next(next, frontier.price(step), legs, portRank);
            return;
        }
        boolean open = connect(legs);
        long cost = (Frontier.isCorner(legs) ? frontier.turnCost() : 0) + pieces.follow(from, offset, next, step, legs);
        if (open) {
            sink.next(next, cost, legs, portRank);
        } else if (code == Frontier.PORT_SETTLED && encoding.isEmpty(next) && frontier.mayCloseAt(step)) {
            sink.closed(cost, frontier.priceFrom(step + 1), legs);
        }
    }

    /** Joins the two legs; false if that closes a cycle. Earlier slots are freed before later ones are written. */
    private boolean connect(int legs) {
        int slotA = frontier.slot(step, Integer.numberOfTrailingZeros(legs));
        int slotB = frontier.slot(step, 31 - Integer.numberOfLeadingZeros(legs));
        int endA = release(legs & -legs, slotA);
        int endB = release(Integer.highestOneBit(legs), slotB);
        if (endA < 0 && endB < 0) {
            endA = slotA;
            endB = slotB;
        } else if (endA < 0) {
            endA = slotA;
        } else if (endB < 0) {
            endB = slotB;
        } else if (endA == slotB) {
            return false;
        }
        encoding.setMate(next, endA, endB);
        encoding.setMate(next, endB, endA);
        return true;
    }

    /** Frees an earlier link's slot and returns the other end of its piece; -1 for a later link. */
    private int release(int heading, int slot) {
        if ((frontier.earlier(step) & heading) == 0) {
            return -1;
        }
        int mate = encoding.mate(from, offset, slot);
        encoding.setMate(next, slot, -1);
        return mate;
    }
}
