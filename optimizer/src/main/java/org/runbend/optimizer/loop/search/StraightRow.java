package org.runbend.optimizer.loop.search;

import java.util.ArrayList;
import java.util.List;

/**
 * What the end of a straight piece costs in the configuration program: of two linked nodes one is passed straight along the link, the
 * other is not. With y for the link's charge: y >= straight at one - straight at the other.
 */
final class StraightRow {
    private final int link;
    private final int straight;
    private final int corner;

    private StraightRow(int link, int straight, int corner) {
        this.link = link;
        this.straight = straight;
        this.corner = corner;
    }

    /** All rows of a frontier; none where the ends of straight pieces cost nothing. */
    static List<StraightRow> all(Frontier frontier) {
        List<StraightRow> rows = new ArrayList<>();
        for (int t = 0; t < frontier.size() && frontier.straightCost().end() > 0; t++) {
            for (int h = 0; h < 2; h++) {
                int other = frontier.otherEnd(t, h);
                if (other >= 0) {
                    rows.add(new StraightRow(2 * t + h, t, other));
                    rows.add(new StraightRow(2 * t + h, other, t));
                }
            }
        }
        return rows;
    }

    /** The same row for other steps, given by the new step of each old one. */
    StraightRow moved(int[] newStep) {
        return new StraightRow(2 * newStep[link / 2] + link % 2, newStep[straight], newStep[corner]);
    }

    /** By how much values by 16 x step + legs, and charges by link, break it. */
    double violation(double[] values, double[] charges) {
        return values[16 * straight + legs()] - values[16 * corner + legs()] - charges[link];
    }

    /** The link as 2 x step + heading, 0 or 1, at its western or southern end. */
    int link() {
        return link;
    }

    /** Legs of a node that is passed straight along the link. */
    int legs() {
        return 5 << link % 2;
    }

    /** Step of the node passed straight. */
    int straight() {
        return straight;
    }

    /** Step of the other node. */
    int corner() {
        return corner;
    }
}
