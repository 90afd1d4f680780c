package org.runbend.optimizer.floor;

import java.util.List;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Support;

/**
 * What the lattice has to respect. Sizes in mm.
 *
 * @param outline corners in order
 * @param keepOuts what no pipe may touch
 * @param unheated where heat is pointless; pipe may cross
 * @param port where flow and return come through
 * @param reach how far from the port the loop may begin and end
 * @param spacing centre to centre of neighbouring runs
 * @param edge centreline to outline
 * @param radius radius at which corners are laid
 * @param angle direction of the lattice, degrees
 * @param leftOutPrice price of a heated node left out, and of what else laying is decided by
 * @param supports what pipe crosses square or not at all; their width that of the groove included
 * @param pipeRules where pipe may not, or must, go
 * @param mostPorts port pairs kept at most, the nearest to the port
 * @param entry how pipe comes onto the floor
 */
public record FloorProblem(
        List<Point> outline,
        List<KeepOut> keepOuts,
        List<Shape.Polygon> unheated,
        Point port,
        double reach,
        double spacing,
        double edge,
        double radius,
        double angle,
        PlacePrice leftOutPrice,
        List<Support> supports,
        List<PipeRule> pipeRules,
        int mostPorts,
        Entry entry) {
    /** Pairs that a single loop chooses from; chosen, not measured. */
    public static final int PORTS = 8;

    /** Copies the lists and checks the sizes. */
    public FloorProblem {
        outline = List.copyOf(outline);
        keepOuts = List.copyOf(keepOuts);
        unheated = List.copyOf(unheated);
        supports = List.copyOf(supports);
        pipeRules = List.copyOf(pipeRules);
        if (!(spacing > 0 && edge >= 0 && reach > 0 && radius > 0 && radius <= spacing + 1e-9)) {
            throw new IllegalArgumentException(
                    "spacing, edge, reach and radius must be positive, radius at most one spacing");
        }
    }

    /** Whether the pipe is too stiff for half circles from run to run. */
    public boolean isStiff() {
        return radius > spacing / 2 + 1e-6;
    }

    /** A floor without supports and rules for pipe, a place left out at so many turns. */
    public FloorProblem(
            List<Point> outline,
            List<KeepOut> keepOuts,
            List<Shape.Polygon> unheated,
            Point port,
            double reach,
            double spacing,
            double edge,
            double radius,
            double angle,
            int leftOutPrice) {
        this(
                outline,
                keepOuts,
                unheated,
                port,
                reach,
                spacing,
                edge,
                radius,
                angle,
                PlacePrice.turns(leftOutPrice),
                List.of(),
                List.of(),
                PORTS,
                Entry.FREE);
    }

    /** The same floor without a word on where pipe comes through. */
    public FloorProblem withFreeEntry() {
        return new FloorProblem(
                outline,
                keepOuts,
                unheated,
                port,
                reach,
                spacing,
                edge,
                radius,
                angle,
                leftOutPrice,
                supports,
                pipeRules,
                mostPorts,
                Entry.FREE);
    }
}
