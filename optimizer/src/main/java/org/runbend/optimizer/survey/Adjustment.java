package org.runbend.optimizer.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;

/**
 * Least squares from start values: minimise the sum of (measured - distance)^2 over the coordinates, the first corner
 * fixed at the origin and the second on the x axis.
 *
 * <p>Redundancy shares are the diagonal of I - J (J'J)^-1 J' at the solution (Baarda 1968), J being the matrix of
 * derivatives; from its singular vectors U they are 1 - |row of U|^2.
 */
final class Adjustment {
    private static final double TOLERANCE = 1e-13;
    private static final int MOST_ROUNDS = 500;
    /** A change of shape that moves no length by more than this share of itself is free to happen. */
    private static final double LOOSE = 0.01;

    private final SurveyProblem problem;

    Adjustment(SurveyProblem problem) {
        this.problem = problem;
    }

    /**
     * The floor that fits best near the start; empty if the search runs astray, as it may from a start far off.
     *
     * @throws NotRigid if a small change of the floor's shape changes no length
     */
    Optional<SurveySolution> adjust(List<Place> start) {
        try {
            return Optional.of(solution(optimum(start).getPoint().toArray()));
        } catch (MathIllegalStateException e) {
            return Optional.empty();
        }
    }

    private Optimum optimum(List<Place> start) {
        double[] x = coordinates(SurveyFrame.of(start, problem.clockwise()));
        double[] measured =
                problem.measurements().stream().mapToDouble(Measurement::length).toArray();
        return new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(TOLERANCE)
                .withParameterRelativeTolerance(TOLERANCE)
                .withOrthoTolerance(TOLERANCE)
                .optimize(new LeastSquaresBuilder()
                        .start(x)
                        .target(measured)
                        .model(this::distances, p -> jacobian(p).getData())
                        .maxEvaluations(MOST_ROUNDS)
                        .maxIterations(MOST_ROUNDS)
                        .build());
    }

    private SurveySolution solution(double[] x) {
        List<Place> places = SurveyFrame.of(places(x), problem.clockwise());
        RealMatrix jacobian = jacobian(coordinates(places));
        SingularValueDecomposition svd = new SingularValueDecomposition(jacobian);
        double[] sizes = svd.getSingularValues();
        if (sizes[problem.unknowns() - 1] < LOOSE) {
            throw new NotRigid("the lengths leave the floor loose: corner "
                    + problem.corners().get(loosest(svd)) + " can move without changing any, measure one more diagonal"
                    + " from it");
        }
        List<Residual> residuals = new ArrayList<>();
        for (int i = 0; i < problem.measurements().size(); i++) {
            Measurement m = problem.measurements().get(i);
            double[] row = svd.getU().getRow(i);
            double held = 0;
            for (int k = 0; k < problem.unknowns(); k++) {
                held += row[k] * row[k];
            }
            double adjusted = places.get(m.from()).distance(places.get(m.to()));
            residuals.add(new Residual(m, m.length() - adjusted, Math.max(0, 1 - held)));
        }
        return new SurveySolution(places, residuals);
    }

    private int loosest(SingularValueDecomposition svd) {
        double[] motion = svd.getV().getColumn(problem.unknowns() - 1);
        List<Place> moved = places(motion);
        int most = 1;
        for (int i = 2; i < moved.size(); i++) {
            Place origin = new Place(0, 0);
            most = moved.get(i).distance(origin) > moved.get(most).distance(origin) + 1e-9 ? i : most;
        }
        return most;
    }

    /** Unknown 0 is x of the second corner, then come x and y of the third and so on. */
    private static double[] coordinates(List<Place> places) {
        double[] x = new double[2 * places.size() - 3];
        x[0] = places.get(1).x();
        for (int i = 2; i < places.size(); i++) {
            x[2 * i - 3] = places.get(i).x();
            x[2 * i - 2] = places.get(i).y();
        }
        return x;
    }

    private List<Place> places(double[] x) {
        List<Place> places = new ArrayList<>(List.of(new Place(0, 0), new Place(x[0], 0)));
        for (int i = 2; i < problem.corners().size(); i++) {
            places.add(new Place(x[2 * i - 3], x[2 * i - 2]));
        }
        return places;
    }

    private double[] distances(double[] x) {
        List<Place> places = places(x);
        return problem.measurements().stream()
                .mapToDouble(m -> places.get(m.from()).distance(places.get(m.to())))
                .toArray();
    }

    private RealMatrix jacobian(double[] x) {
        List<Place> places = places(x);
        double[][] rows = new double[problem.measurements().size()][x.length];
        for (int i = 0; i < rows.length; i++) {
            Measurement m = problem.measurements().get(i);
            Place a = places.get(m.from());
            Place b = places.get(m.to());
            double d = Math.max(1e-9, a.distance(b));
            enter(rows[i], m.from(), (a.x() - b.x()) / d, (a.y() - b.y()) / d);
            enter(rows[i], m.to(), (b.x() - a.x()) / d, (b.y() - a.y()) / d);
        }
        return MatrixUtils.createRealMatrix(rows);
    }

    private static void enter(double[] row, int corner, double dx, double dy) {
        if (corner == 1) {
            row[0] = dx;
        } else if (corner > 1) {
            row[2 * corner - 3] = dx;
            row[2 * corner - 2] = dy;
        }
    }
}
