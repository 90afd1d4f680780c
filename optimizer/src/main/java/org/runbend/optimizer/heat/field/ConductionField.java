package org.runbend.optimizer.heat.field;

import java.util.BitSet;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.ConjugateGradient;
import org.hipparchus.linear.RealVector;
import org.runbend.optimizer.heat.quantity.Within;

/**
 * Steady heat conduction in the plane of the plates: div(k grad t) = Uu (t - room) + Ud (t - outside) - g (coolant - t), with k the sheet
 * conductance of plate and cover, g the coupling of the pipe ({@link org.runbend.optimizer.heat.output.PipeCoupling}). Finite volumes
 * on square cells of half the size asked for; no heat passes the outline. The surface follows upwards: room + (t - room) Uu / alpha, so a thin hot line over
 * a pipe's crown (up to 7 % of the excess under 6 mm of cover) is left out.
 *
 * <p>Solver: conjugate gradients of Hipparchus (Hestenes and Stiefel 1952) with Jacobi's preconditioner. A floor loses heat
 * everywhere, so the matrix is well conditioned at any size and the solver needs no fill-in: some hundred passes over the cells.
 */
public final class ConductionField {
    private static final int MOST_PASSES = 20_000;
    private static final double EXACT = 1e-9;

    /** The temperatures. */
    public FieldSolution solve(FieldProblem problem) {
        RasterFrame wanted = RasterFrame.of(problem.floor(), problem.cell());
        ZoneRaster raster = new ZoneRaster(problem, wanted.halved());
        BitSet floor = new BitSet(raster.floor.length);
        for (int i = 0; i < raster.floor.length; i++) {
            floor.set(i, raster.floor[i]);
        }
        Within.rule(!floor.isEmpty(), "cells of %s mm are too large for this floor", problem.cell());
        double up = problem.stack().up();
        double down = problem.stack().down(problem.pipe().outer());
        double area = raster.frame.area();
        double outside = down * (problem.outside() - problem.room()) * area;
        double[] load = new double[raster.floor.length];
        floor.stream().forEach(i -> load[i] = raster.drive[i] + outside);
        double[] excess = solve(new ConductionOperator(raster, up + down), load);
        return read(problem, raster, wanted, excess);
    }

    private static double[] solve(ConductionOperator matrix, double[] load) {
        RealVector b = new ArrayRealVector(load, false);
        if (b.getLInfNorm() == 0) {
            return load;
        }
        return new ConjugateGradient(MOST_PASSES, EXACT, false)
                .solve(matrix, matrix.jacobi(), b)
                .toArray();
    }

    private static FieldSolution read(FieldProblem problem, ZoneRaster raster, RasterFrame wanted, double[] excess) {
        double area = raster.frame.area();
        double up = problem.stack().up();
        double down = problem.stack().down(problem.pipe().outer());
        double given = 0;
        double sum = 0;
        int cells = 0;
        for (int i = 0; i < excess.length; i++) {
            if (raster.floor[i]) {
                given += raster.drive[i] - raster.coupling[i] * excess[i];
                sum += excess[i];
                cells++;
            }
        }
        double colder = (problem.room() - problem.outside()) * cells;
        FieldSolution.Balance balance =
                new FieldSolution.Balance(given, up * area * sum, down * area * (sum + colder), raster.straightDown);
        return FieldSolution.of(
                wanted,
                raster.floor,
                excess,
                problem.room(),
                up / problem.stack().surface(),
                balance);
    }
}
