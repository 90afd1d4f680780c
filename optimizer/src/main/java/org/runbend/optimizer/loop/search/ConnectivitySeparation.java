package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds connectivity cuts that fractional node states violate: by least cuts between the port and each other node, nodes joined by
 * fully used links taken together.
 *
 * <p>Source: separation by least cuts, Padberg and Rinaldi, An efficient algorithm for the minimum capacity cut problem,
 * Mathematical Programming 47, 1990; augmenting paths of Ford and Fulkerson 1956; from memory.
 */
final class ConnectivitySeparation {
    /** A link is wholly used: derived, one less the tolerance of the linear solver. */
    private static final double FULL = 1 - 1e-6;

    /** By how much a cut must be violated to be added: chosen, not measured. */
    private static final double LEAST_VIOLATION = 0.02;

    private final Frontier frontier;
    private final List<Integer> portLinks;
    private final int most;

    private double[] capacity = {};
    private double[] empty = {};
    private int[] group = {};
    private List<List<Integer>> members = List.of();

    ConnectivitySeparation(Configurations configurations, int most) {
        this.frontier = configurations.frontier();
        this.portLinks = configurations.portLinks();
        this.most = most;
    }

    /** Violated cuts for values by 16 x step + legs; none if there are none. */
    List<ConnectivityCut> separate(double[] values) {
        load(values);
        join();
        int root = root();
        List<ConnectivityCut> cuts = new ArrayList<>();
        boolean[] covered = new boolean[frontier.size()];
        for (List<Integer> together : members) {
            if (together.isEmpty() || group[together.get(0)] == group[root] || cuts.size() >= most) {
                continue;
            }
            int inner = together.get(0);
            for (int t : together) {
                inner = empty[t] < empty[inner] ? t : inner;
            }
            double need = 2 - 2 * empty[inner] - 2 * empty[root] - LEAST_VIOLATION;
            if (need > 0 && !covered[inner]) {
                separate(root, inner, need, cuts, covered);
            }
        }
        return cuts;
    }

    private void load(double[] values) {
        int n = frontier.size();
        capacity = new double[4 * n];
        empty = new double[n];
        for (int t = 0; t < n; t++) {
            empty[t] = values[16 * t];
            for (int legs : Frontier.LEGS) {
                for (int h = 0; h < 4; h++) {
                    capacity[4 * t + h] += (legs >> h & 1) == 1 ? values[16 * t + legs] : 0;
                }
            }
        }
    }

    private void join() {
        int n = frontier.size();
        group = new int[n];
        Arrays.fill(group, -1);
        members = new ArrayList<>();
        for (int start = 0; start < n; start++) {
            if (group[start] >= 0) {
                continue;
            }
            List<Integer> together = new ArrayList<>(List.of(start));
            group[start] = members.size();
            for (int q = 0; q < together.size(); q++) {
                for (int h = 0; h < 4; h++) {
                    int t = together.get(q);
                    int other = frontier.otherEnd(t, h);
                    if (other >= 0 && group[other] < 0 && capacity[4 * t + h] > FULL) {
                        group[other] = members.size();
                        together.add(other);
                    }
                }
            }
            members.add(together);
        }
    }

    /** An end of the port link that is used most. */
    private int root() {
        int best = portLinks.get(0);
        for (int link : portLinks) {
            best = capacity[link] > capacity[best] ? link : best;
        }
        int t = best / 4;
        int other = frontier.otherEnd(t, best % 4);
        return empty[other] < empty[t] ? other : t;
    }

    /** Sends flow from the root to the inner node's group until the need is met; if it cannot be, adds the cut. */
    private void separate(int root, int inner, double need, List<ConnectivityCut> cuts, boolean[] covered) {
        double[] residual = capacity.clone();
        double sent = 0;
        while (sent < need) {
            int[] from = search(residual, root, group[inner]);
            int end = endIn(from, group[inner]);
            if (end < 0) {
                break;
            }
            sent += push(residual, from, end, group[root], need - sent);
        }
        if (sent < need) {
            boolean[] set = sinkSide(residual, inner);
            for (int t = 0; t < set.length; t++) {
                covered[t] |= set[t];
            }
            cuts.add(new ConnectivityCut(set, inner, root));
        }
    }

    /** Breadth first over links with capacity left; for each node reached the link by which, -2 within its group. */
    private int[] search(double[] residual, int root, int goal) {
        int[] from = new int[frontier.size()];
        Arrays.fill(from, -1);
        int[] queue = new int[frontier.size()];
        int filled = enter(group[root], -2, from, queue, 0);
        for (int q = 0; q < filled; q++) {
            int t = queue[q];
            if (group[t] == goal) {
                return from;
            }
            for (int h = 0; h < 4; h++) {
                int other = frontier.otherEnd(t, h);
                if (other >= 0 && from[other] == -1 && residual[4 * t + h] > 1e-9) {
                    filled = enter(group[other], -2, from, queue, filled);
                    from[other] = 4 * t + h;
                }
            }
        }
        return from;
    }

    private int enter(int entered, int mark, int[] from, int[] queue, int filled) {
        int next = filled;
        for (int member : members.get(entered)) {
            from[member] = mark;
            queue[next++] = member;
        }
        return next;
    }

    private int endIn(int[] from, int goal) {
        for (int t : members.get(goal)) {
            if (from[t] >= 0) {
                return t;
            }
        }
        return -1;
    }

    /** Pushes along the way back from a node to the root's group, at most so much. */
    private double push(double[] residual, int[] from, int end, int rootGroup, double most) {
        double amount = most;
        for (int t = end; t >= 0; t = entrance(from, from[t] / 4, rootGroup)) {
            amount = Math.min(amount, residual[from[t]]);
        }
        for (int t = end; t >= 0; t = entrance(from, from[t] / 4, rootGroup)) {
            int link = from[t];
            residual[link] -= amount;
            residual[4 * t + (link % 4 ^ 2)] += amount;
        }
        return amount;
    }

    /** The node by which a node's group was entered, or -1 for the root's. */
    private int entrance(int[] from, int t, int rootGroup) {
        return group[t] == rootGroup ? -1 : endIn(from, group[t]);
    }

    /** All nodes from which the inner node can still be reached. */
    private boolean[] sinkSide(double[] residual, int inner) {
        boolean[] side = new boolean[frontier.size()];
        int[] queue = new int[frontier.size()];
        int filled = 0;
        for (int t : members.get(group[inner])) {
            side[t] = true;
            queue[filled++] = t;
        }
        for (int q = 0; q < filled; q++) {
            for (int h = 0; h < 4; h++) {
                int other = frontier.otherEnd(queue[q], h);
                if (other >= 0 && !side[other] && residual[4 * other + (h ^ 2)] > 1e-9) {
                    for (int t : members.get(group[other])) {
                        side[t] = true;
                        queue[filled++] = t;
                    }
                }
            }
        }
        return side;
    }
}
