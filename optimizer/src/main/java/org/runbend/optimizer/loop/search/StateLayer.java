package org.runbend.optimizer.loop.search;

import java.util.Arrays;
import java.util.List;

/** States of equal step with their least costs, in order of arrival, found again by open addressing. */
final class StateLayer {
    private final int words;
    private long[] keys;
    private long[] costs;
    private int[] parents;
    private byte[] legs;
    private int[] table;
    private int size;

    StateLayer(int words, int expected) {
        int capacity = Math.max(16, expected);
        this.words = words;
        keys = new long[capacity * words];
        costs = new long[capacity];
        parents = new int[capacity];
        legs = new byte[capacity];
        table = new int[Integer.highestOneBit(capacity) * 4];
    }

    int size() {
        return size;
    }

    /** The packed states, {@code words} longs each. */
    long[] keys() {
        return keys;
    }

    long cost(int i) {
        return costs[i];
    }

    int parent(int i) {
        return parents[i];
    }

    int legs(int i) {
        return legs[i];
    }

    /** Keeps the state at the lesser cost; among equals the first comer stays. */
    void offer(long[] key, int offset, long cost, int parent, int legsUsed) {
        int cell = cell(key, offset);
        int i = table[cell] - 1;
        if (i < 0) {
            i = append(key, offset);
            table[cell] = i + 1;
        } else if (costs[i] <= cost) {
            return;
        }
        costs[i] = cost;
        parents[i] = parent;
        legs[i] = (byte) legsUsed;
        if (2 * size > table.length) {
            rehash();
        }
    }

    /** Number of the state, or -1. */
    int find(long[] key, int offset) {
        return table[cell(key, offset)] - 1;
    }

    private int cell(long[] key, int offset) {
        int cell = hash(key, offset) & table.length - 1;
        while (table[cell] != 0 && !same(table[cell] - 1, key, offset)) {
            cell = cell + 1 & table.length - 1;
        }
        return cell;
    }

    private int hash(long[] key, int offset) {
        long hash = key[offset];
        for (int w = 1; w < words; w++) {
            hash = (hash ^ hash >>> 29) * 0x9E3779B97F4A7C15L + key[offset + w];
        }
        hash = (hash ^ hash >>> 32) * 0xD6E8FEB86659FD93L;
        return (int) (hash ^ hash >>> 32);
    }

    private boolean same(int i, long[] key, int offset) {
        for (int w = 0; w < words; w++) {
            if (keys[i * words + w] != key[offset + w]) {
                return false;
            }
        }
        return true;
    }

    private int append(long[] key, int offset) {
        if (size == costs.length) {
            resize(size + size / 2);
        }
        System.arraycopy(key, offset, keys, size * words, words);
        return size++;
    }

    private void resize(int capacity) {
        keys = Arrays.copyOf(keys, capacity * words);
        costs = Arrays.copyOf(costs, capacity);
        parents = Arrays.copyOf(parents, capacity);
        legs = Arrays.copyOf(legs, capacity);
    }

    private void rehash() {
        table = new int[2 * table.length];
        for (int i = 0; i < size; i++) {
            table[cell(keys, i * words)] = i + 1;
        }
    }

    /**
     * Legs by step of the way to a state.
     *
     * @param layers the states before each step
     * @param steps length of the answer; steps after the last are left out
     * @param step the last step of the way
     * @param lastLegs legs at that step
     * @param state number of the state before that step
     */
    static int[] wayTo(List<StateLayer> layers, int steps, int step, int lastLegs, int state) {
        int[] legs = new int[steps];
        legs[step] = lastLegs;
        int at = state;
        for (int t = step; t > 0; t--) {
            legs[t - 1] = layers.get(t).legs(at);
            at = layers.get(t).parent(at);
        }
        return legs;
    }

    /** Drops spare room and the table: no more {@link #offer} and {@link #find}. */
    void seal() {
        table = new int[0];
        resize(size);
    }

    /** Drops states and costs too; the way back stays. */
    void forgetStates() {
        keys = new long[0];
        costs = new long[0];
    }

    /** The states of least cost, at most so many, in the old order; ties go to the first comers. */
    StateLayer cheapest(int most) {
        return cheapest(most, costs);
    }

    /**
     * The states of least cost under a mask, blurred by a hash of the state so that the kept ones differ.
     *
     * @param mask the bits of the cost that count
     * @param blur bits of the hash that are added
     */
    StateLayer cheapestBlurred(int most, long mask, int blur) {
        long[] values = new long[size];
        for (int i = 0; i < size; i++) {
            values[i] = (costs[i] & mask) + (hash(keys, i * words) & blur);
        }
        return cheapest(most, values);
    }

    private StateLayer cheapest(int most, long[] values) {
        long[] sorted = Arrays.copyOf(values, size);
        Arrays.sort(sorted);
        long limit = sorted[most - 1];
        int ties = most;
        for (int i = 0; i < most; i++) {
            ties -= sorted[i] < limit ? 1 : 0;
        }
        StateLayer kept = new StateLayer(words, most);
        for (int i = 0; i < size; i++) {
            if (values[i] < limit || (values[i] == limit && ties-- > 0)) {
                kept.offer(keys, i * words, costs[i], parents[i], legs[i]);
            }
        }
        return kept;
    }
}
