package org.runbend.optimizer.job;

import java.util.List;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.Routing;
import org.runbend.catalog.product.SpreaderPlate;

/**
 * The groove that the pipe of a job lies in, as the workshop routs it. Sizes in mm.
 *
 * @param width on straights: pipe, plate on both sides and play
 * @param bendWidth at bends: pipe and the play there, never under the width
 * @param depth pipe, the plate under it and play
 * @param pad diameter of the round pocket where the pipe goes through the floor; 0 for none
 * @param leastWeb what must stay between two grooves, and between a pocket and the edge of the floor
 */
public record Groove(double width, double bendWidth, double depth, double pad, double leastWeb) {
    /** The groove for pipe of 16 mm and a plate of 0.5 mm, where pipe or plate of a job could not be read. */
    public static final Groove USUAL = new Groove(17.5, 20, 16.5, 32, 10);

    /** The groove for a pipe and the thickest of some plates. */
    public static Groove of(Pipe pipe, List<SpreaderPlate> plates, Routing routing) {
        double plate =
                plates.stream().mapToDouble(SpreaderPlate::thickness).max().orElse(0);
        double width = pipe.outer() + 2 * plate + routing.play();
        double bendWidth = Math.max(width, pipe.outer() + routing.bendPlay());
        return new Groove(
                width, bendWidth, pipe.outer() + plate + routing.depthPlay(), routing.pad(), routing.leastWeb());
    }

    /** From the centreline to the edge of the groove where it is widest, pockets left aside. */
    public double half() {
        return bendWidth / 2;
    }
}
