package org.runbend.optimizer.loop.search;

import java.util.Arrays;

/** The states of the pass from the last node back at one step, to be found by the links that they use. */
final class BidirectionalJoin {
    private final int step;
    private final StateEncoding early;
    private final StateEncoding late;
    private final StateLayer states;
    private final int units;
    /** Open links in one order, by their slots in either pass. */
    private final int[] earlySlots;

    private final int[] lateSlots;
    private final int[] linkOfEarly;
    private final int[] linkOfLate;
    /** Open port link by pending code; -1 for none. */
    private final int[] earlyPending = new int[16];

    private final int[] latePending = new int[16];
    private final StateLayer groups;
    private int[] heads = new int[16];
    private final int[] rest;
    private final long[] key = new long[2];
    private final int[] mates;
    private final StraightJoin straight;
    private long joint;

    BidirectionalJoin(
            Frontier forward, Frontier backward, int step, StateEncoding early, OneWaySweep second, int units) {
        this.step = step;
        this.early = early;
        this.late = second.encoding();
        this.states = second.before(forward.size() - step);
        this.units = units;
        int[] open = openLinks(forward, step);
        earlySlots = new int[open.length];
        lateSlots = new int[open.length];
        linkOfEarly = new int[forward.slotCount()];
        linkOfLate = new int[backward.slotCount()];
        mates = new int[open.length];
        straight = new StraightJoin(forward.straightCost());
        Arrays.fill(earlyPending, -1);
        Arrays.fill(latePending, -1);
        for (int k = 0; k < open.length; k++) {
            int t = open[k] / 4;
            int h = open[k] % 4;
            int back = forward.size() - 1 - forward.otherEnd(t, h);
            int reverse = forward.headingBack(t, h);
            earlySlots[k] = forward.slot(t, h);
            lateSlots[k] = backward.slot(back, reverse);
            linkOfEarly[earlySlots[k]] = k;
            linkOfLate[lateSlots[k]] = k;
            if (forward.portRank(t, h) >= 0) {
                earlyPending[forward.portCode(t, h)] = k;
                latePending[backward.portCode(back, reverse)] = k;
            }
        }
        groups = new StateLayer(2, states.size() / 4);
        rest = new int[states.size()];
        group();
    }

    private static int[] openLinks(Frontier forward, int step) {
        int[] open = new int[4 * step];
        int count = 0;
        for (int t = 0; t < step; t++) {
            for (int h = 0; h < 4; h++) {
                if (forward.otherEnd(t, h) >= step) {
                    open[count++] = 4 * t + h;
                }
            }
        }
        return Arrays.copyOf(open, count);
    }

    int step() {
        return step;
    }

    /** Chains the states of each group, those of least reduced cost first. */
    private void group() {
        long[] sorted = new long[states.size()];
        for (int i = 0; i < sorted.length; i++) {
            sorted[i] = BoundedCost.reduced(states.cost(i)) << 23 | i;
        }
        Arrays.sort(sorted);
        for (int s = sorted.length - 1; s >= 0; s--) {
            int i = (int) (sorted[s] & (1 << 23) - 1);
            int at = i * (late.words() + 1);
            key[0] = mask(late, states.keys(), at, lateSlots);
            key[1] = states.keys()[at + late.words()];
            int group = groups.find(key, 0);
            if (group < 0) {
                groups.offer(key, 0, 0, -1, 0);
                group = groups.size() - 1;
                heads = group == heads.length ? Arrays.copyOf(heads, 2 * group) : heads;
                heads[group] = -1;
            }
            rest[i] = heads[group];
            heads[group] = i;
        }
    }

    private static long mask(StateEncoding encoding, long[] states, int at, int[] slots) {
        long mask = 0;
        for (int k = 0; k < slots.length; k++) {
            if (encoding.mate(states, at, slots[k]) >= 0) {
                mask |= 1L << k;
            }
        }
        return mask;
    }

    /** A state of the other pass that makes one loop of the given one whose shape costs at most so much; -1 if there is none. */
    int partner(long[] state, long cost, long target) {
        key[0] = mask(early, state, 0, earlySlots);
        key[1] = units - state[early.words()];
        int group = groups.find(key, 0);
        if (group < 0 || key[0] == 0) {
            return -1;
        }
        for (int k = 0; k < mates.length; k++) {
            int mate = early.mate(state, 0, earlySlots[k]);
            mates[k] = mate < 0 ? -1 : linkOfEarly[mate];
        }
        long shape = BoundedCost.shape(cost);
        int code = StateEncoding.code(state, 0);
        for (int i = heads[group]; i >= 0; i = rest[i]) {
            int at = i * (late.words() + 1);
            joint = 0;
            if (shape + BoundedCost.shape(states.cost(i)) <= target
                    && portsAgree(code, StateEncoding.code(states.keys(), at))
                    && isOneLoop(key[0], at)
                    && shape + BoundedCost.shape(states.cost(i)) + joint(state, at) <= target) {
                return i;
            }
        }
        return -1;
    }

    /** Cost of the shape of a state and the partner last found for it. */
    long shape(long cost, int partner) {
        return BoundedCost.shape(cost) + BoundedCost.shape(states.cost(partner)) + joint;
    }

    /** What straight pieces cost that lie over the links where the two states meet. */
    private long joint(long[] state, int at) {
        if (!straight.counts()) {
            return 0;
        }
        int start = Long.numberOfTrailingZeros(key[0]);
        straight.begin();
        for (int round = 0; round < 2; round++) {
            int link = start;
            do {
                int over = mates[link];
                straight.pass(
                        early.label(state, 0, earlySlots[link]), early.label(state, 0, earlySlots[over]), round == 1);
                straight.cross(
                        early.label(state, 0, earlySlots[over]),
                        late.label(states.keys(), at, lateSlots[over]),
                        round == 1);
                int next = linkOfLate[late.mate(states.keys(), at, lateSlots[over])];
                straight.pass(
                        late.label(states.keys(), at, lateSlots[over]),
                        late.label(states.keys(), at, lateSlots[next]),
                        round == 1);
                straight.cross(
                        late.label(states.keys(), at, lateSlots[next]),
                        early.label(state, 0, earlySlots[next]),
                        round == 1);
                link = next;
            } while (link != start);
        }
        joint = straight.cost();
        return joint;
    }

    private boolean portsAgree(int earlyCode, int lateCode) {
        if (earlyCode == Frontier.PORT_OPEN || lateCode == Frontier.PORT_OPEN) {
            return earlyCode != lateCode;
        }
        return earlyCode > Frontier.PORT_SETTLED
                && lateCode > Frontier.PORT_SETTLED
                && earlyPending[earlyCode] == latePending[lateCode];
    }

    private boolean isOneLoop(long mask, int at) {
        int start = Long.numberOfTrailingZeros(mask);
        int link = start;
        int passed = 0;
        do {
            link = linkOfLate[late.mate(states.keys(), at, lateSlots[mates[link]])];
            passed += 2;
        } while (link != start);
        return passed == Long.bitCount(mask);
    }
}
