package org.runbend.optimizer.boards;

import java.util.List;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Role;

/**
 * A layer of boards that was cut before its floor changed. Sizes in mm.
 *
 * @param role what it is there for
 * @param material the board of the catalog
 * @param name what a person calls it
 * @param thickness mm
 * @param depth of the grooves in it; 0 where it has none
 * @param parts as they lie on the floor
 * @param joints where parts meet
 */
public record CutLayer(
        Role role, String material, String name, double thickness, double depth, List<Part> parts, List<Joint> joints) {
    private static final double SAME = 0.05;

    /** Copies the lists. */
    public CutLayer {
        parts = List.copyOf(parts);
        joints = List.copyOf(joints);
    }

    /** Whether a layer is for the same and of the same board. */
    boolean isLike(Layer layer) {
        return role == layer.role()
                && material.equals(layer.material())
                && Math.abs(thickness - layer.thickness()) < SAME;
    }

    /** Whether grooves of a depth are as deep as in it. */
    boolean isRouted(double deep) {
        return role != Role.ROUTED || Math.abs(depth - deep) < SAME;
    }
}
