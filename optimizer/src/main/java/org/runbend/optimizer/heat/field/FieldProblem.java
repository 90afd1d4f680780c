package org.runbend.optimizer.heat.field;

import java.util.List;
import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Plate;
import org.runbend.optimizer.heat.output.Stack;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * A floor as it was built, for its temperatures.
 *
 * @param cell edge of a cell, mm
 * @param floor its outline
 * @param holes where no floor is
 * @param plates pieces of plate, as strips beside the pipe's axis
 * @param pipes pieces of pipe
 * @param stack layers
 * @param pipe pipe
 * @param plate sheet of the plates
 * @param contact between coolant and plate
 * @param spacing of the pipes, mm
 * @param room degrees C
 * @param outside degrees C
 */
public record FieldProblem(
        double cell,
        Ring floor,
        List<Ring> holes,
        List<Band> plates,
        List<PipeBand> pipes,
        Stack stack,
        PipeWall pipe,
        Plate plate,
        Contact contact,
        double spacing,
        double room,
        double outside) {
    /** More cells than this take more memory than a small computer has. */
    private static final double MOST = 1e6;

    /** Checks ranges and the number of cells. */
    public FieldProblem {
        holes = List.copyOf(holes);
        plates = List.copyOf(plates);
        pipes = List.copyOf(pipes);
        Within.range("cell of the raster", cell, 1, 100, "mm");
        Within.range("spacing of the pipes", spacing, 10, 2000, "mm");
        Within.range("temperature of the room", room, -60, 80, "degrees C");
        Within.range("temperature outside", outside, -80, 80, "degrees C");
        RasterFrame frame = RasterFrame.of(floor, cell);
        Within.rule(
                frame.size() <= MOST,
                "cells of %s mm make a raster of %s x %s: too many, take larger cells",
                cell,
                frame.columns(),
                frame.rows());
    }
}
