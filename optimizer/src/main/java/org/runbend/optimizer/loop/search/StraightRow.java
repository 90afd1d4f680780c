package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/**
 * What short pieces cost in the configuration program: a node that is passed straight, while neither of two nodes on its line to
 * both sides is, lies in a piece no longer than what is between them. With y for its charge: y >= straight here - straight at
 * one - straight at the other.
 */
final class StraightRow {
    private final int step;
    private final int axis;
    private final int before;
    private final int beyond;

    private StraightRow(int step, int axis, int before, int beyond) {
        this.step = step;
        this.axis = axis;
        this.before = before;
        this.beyond = beyond;
    }

    /** All rows of a frontier; none where short pieces cost nothing. */
    static List<StraightRow> all(Frontier frontier) {
        List<StraightRow> rows = new ArrayList<>();
        int most = frontier.mostShort();
        for (int t = 0; t < frontier.size() && most > 0; t++) {
            for (int axis = 0; axis < 2; axis++) {
                if (frontier.otherEnd(t, axis) < 0 || frontier.otherEnd(t, axis + 2) < 0) {
                    continue;
                }
                for (int i = 1; i <= most; i++) {
                    for (int j = 1; i + j <= most + 1; j++) {
                        rows.add(new StraightRow(t, axis, at(frontier, t, axis + 2, i), at(frontier, t, axis, j)));
                    }
                }
            }
        }
        return rows;
    }

    private static int at(Frontier frontier, int t, int h, int distance) {
        int at = t;
        for (int i = 0; i < distance && at >= 0; i++) {
            at = frontier.otherEnd(at, h);
        }
        return at;
    }

    /** The same row for other steps, given by the new step of each old one. */
    StraightRow moved(int[] newStep) {
        return new StraightRow(
                newStep[step], axis, before < 0 ? -1 : newStep[before], beyond < 0 ? -1 : newStep[beyond]);
    }

    /** By how much values by 16 x step + legs, and charges by 2 x step + axis, break it. */
    double violation(double[] values, double[] charges) {
        return values[16 * step + legs()]
                - (before < 0 ? 0 : values[16 * before + legs()])
                - (beyond < 0 ? 0 : values[16 * beyond + legs()])
                - charges[charge()];
    }

    /** The charge as 2 x step + axis. */
    int charge() {
        return 2 * step + axis;
    }

    /** Legs of a node that is passed straight along the axis. */
    int legs() {
        return 5 << axis;
    }

    /** Step of the node. */
    int step() {
        return step;
    }

    /** Step of the node to one side; -1 if there is none. */
    int before() {
        return before;
    }

    /** Step of the node to the other side; -1 if there is none. */
    int beyond() {
        return beyond;
    }
}
