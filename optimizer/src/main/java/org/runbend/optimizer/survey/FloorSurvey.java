package org.runbend.optimizer.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * Makes a floor of measured sides and diagonals.
 *
 * <p>Method: start values by {@link Triangulation}, least squares by {@link Adjustment} from the best of them. Of the floors
 * that fit, one whose sides do not cross is taken; if two different ones fit, the lengths do not fix the floor.
 *
 * <p>Convention: the first corner lies at the origin, the second on the positive x axis. Corners listed anticlockwise as
 * seen from above give a floor to the left of the first side (y over 0), those listed clockwise one to its right.
 *
 * <p>Source: least squares adjustment of trilateration and data snooping as in the textbooks of surveying (Ghilani,
 * Adjustment Computations, chapters on trilateration and on blunder detection).
 */
public final class FloorSurvey {
    /** A floor that fits as well as this, mm, could be the right one. */
    private static final double FITS = 5;
    /** Two floors are different if a corner of theirs is farther apart, mm. */
    private static final double DIFFERENT = 20;

    private static final int MOST_STARTS = 12;
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /**
     * The floor that fits best.
     *
     * @throws NotRigid if the lengths do not fix one floor
     */
    public SurveySolution adjust(SurveyProblem problem) {
        countEnough(problem);
        Adjustment adjustment = new Adjustment(problem);
        List<SurveySolution> fits = new Triangulation(problem)
                .starts().stream()
                        .filter(FloorSurvey::isSimple)
                        .limit(MOST_STARTS)
                        .flatMap(start -> adjustment.adjust(start).stream())
                        .filter(s -> isSimple(s.places()))
                        .sorted(Comparator.comparingDouble(SurveySolution::squares))
                        .toList();
        if (fits.isEmpty()) {
            throw new NotRigid(
                    "no floor without crossing sides has these lengths; are the corners listed in order round"
                            + " the floor?");
        }
        refuseTwins(problem, fits);
        return fits.get(0);
    }

    private static void countEnough(SurveyProblem problem) {
        int needed = problem.unknowns();
        if (problem.measurements().size() < needed) {
            throw new NotRigid(problem.corners().size() + " corners need at least " + needed + " lengths, better "
                    + (needed + 2) + "; there are " + problem.measurements().size());
        }
    }

    private static void refuseTwins(SurveyProblem problem, List<SurveySolution> fits) {
        List<Place> best = fits.get(0).places();
        for (SurveySolution other : fits.subList(1, fits.size())) {
            int corner = farthest(best, other.places());
            if (other.worst() <= FITS
                    && best.get(corner).distance(other.places().get(corner)) > DIFFERENT) {
                throw new NotRigid("corner " + problem.corners().get(corner)
                        + " may stand in two places with these lengths, measure one more diagonal from it");
            }
        }
    }

    private static int farthest(List<Place> a, List<Place> b) {
        int most = 0;
        for (int i = 1; i < a.size(); i++) {
            most = a.get(i).distance(b.get(i)) > a.get(most).distance(b.get(most)) ? i : most;
        }
        return most;
    }

    private static boolean isSimple(List<Place> floor) {
        List<Coordinate> ring = new ArrayList<>();
        floor.forEach(p -> ring.add(new Coordinate(p.x(), p.y())));
        ring.add(ring.get(0));
        return GEOMETRY.createPolygon(ring.toArray(Coordinate[]::new)).isValid();
    }
}
