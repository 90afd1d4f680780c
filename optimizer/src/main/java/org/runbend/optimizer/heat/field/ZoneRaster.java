package org.runbend.optimizer.heat.field;

import org.runbend.optimizer.heat.output.PipeCoupling;

/**
 * What lies in each cell: floor or none, how well it carries heat sideways, how it hangs on the coolant.
 */
final class ZoneRaster {
    /** Pieces of a pipe's strip are no larger than this, mm. */
    private static final double PIECE = 1.0;

    final RasterFrame frame;
    final boolean[] floor;
    /** Sheet conductance within each cell. */
    final SheetRaster sheet;
    /** To the coolant, W/K. */
    final double[] coupling;
    /** Coupling times the coolant's excess over the room, W. */
    final double[] drive;
    /** Straight down from the coolant, W/K, and that times the coolant's excess over the outside, W. */
    double straightDown;

    private final FieldProblem problem;

    ZoneRaster(FieldProblem problem, RasterFrame frame) {
        this.problem = problem;
        this.frame = frame;
        int n = frame.columns() * frame.rows();
        floor = new boolean[n];
        sheet = new SheetRaster(problem, frame);
        coupling = new double[n];
        drive = new double[n];
        markFloor();
        problem.pipes().forEach(this::layPipe);
    }

    private void markFloor() {
        for (int row = 0; row < frame.rows(); row++) {
            for (int column = 0; column < frame.columns(); column++) {
                double x = frame.centreX(column);
                double y = frame.centreY(row);
                floor[row * frame.columns() + column] = problem.floor().contains(x, y)
                        && problem.holes().stream().noneMatch(h -> h.contains(x, y));
            }
        }
    }

    private void layPipe(PipeBand pipe) {
        double width = pipe.plated() ? problem.pipe().outer() : PipeCoupling.strip(problem.pipe());
        double resistance = pipe.plated()
                ? PipeCoupling.inPlate(problem.pipe(), problem.contact())
                : PipeCoupling.inGroove(problem.pipe(), problem.contact());
        double down = pipe.plated()
                ? PipeCoupling.downFromPlate(problem.stack(), problem.pipe(), problem.spacing())
                : PipeCoupling.downFromGroove(problem.stack(), problem.pipe(), problem.spacing());
        Band band = pipe.band(width);
        double conductance = band.length() / 1000 / resistance;
        Strewing.over(band, PIECE, (x, y, part, along) -> {
            int cell = frame.at(x, y);
            if (cell < 0 || !floor[cell]) {
                return;
            }
            double coolant = pipe.from() + along * (pipe.to() - pipe.from());
            coupling[cell] += part * conductance;
            drive[cell] += part * conductance * (coolant - problem.room());
        });
        straightDown += band.length() / 1000 * down * ((pipe.from() + pipe.to()) / 2 - problem.outside());
        if (!pipe.plated()) {
            shield(pipe.band(problem.spacing()), band.length() / 1000 * down);
        }
    }

    /** What a groove's own loss keeps off the floor beside it goes into the plane instead of straight down. */
    private void shield(Band beside, double straight) {
        double up = problem.stack().up();
        double all = up + problem.stack().down(problem.pipe().outer());
        double kept = PipeCoupling.SHIELDED * straight * (problem.room() - problem.outside()) * all / up;
        Strewing.over(beside, frame.cell(), (x, y, part, along) -> {
            int cell = frame.at(x, y);
            if (cell >= 0 && floor[cell]) {
                drive[cell] += part * kept;
                straightDown -= part * kept;
            }
        });
    }
}
