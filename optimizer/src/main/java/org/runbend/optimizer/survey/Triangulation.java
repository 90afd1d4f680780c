package org.runbend.optimizer.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Start values: corner after corner is put where two circles about corners placed before cross. Each corner has two such
 * places, so a beam of part floors is kept, those first that miss the other measurements least.
 */
final class Triangulation {
    /** Enough for every choice at eight corners hung on two lengths each; floors with more diagonals need far fewer. */
    private static final int BEAM = 256;

    private final SurveyProblem problem;
    private final int corners;
    private final double[][] length;

    Triangulation(SurveyProblem problem) {
        this.problem = problem;
        this.corners = problem.corners().size();
        this.length = lengths();
    }

    /** Mean measured length of each pair of corners; 0 where none was taken. */
    private double[][] lengths() {
        double[][] sum = new double[corners][corners];
        int[][] count = new int[corners][corners];
        for (Measurement m : problem.measurements()) {
            sum[m.from()][m.to()] += m.length();
            sum[m.to()][m.from()] += m.length();
            count[m.from()][m.to()]++;
            count[m.to()][m.from()]++;
        }
        for (int i = 0; i < corners; i++) {
            for (int j = 0; j < corners; j++) {
                sum[i][j] /= Math.max(1, count[i][j]);
            }
        }
        return sum;
    }

    /**
     * Floors that fit roughly, the best first; each is right or its mirror image.
     *
     * @throws NotRigid if a corner cannot be placed
     */
    List<List<Place>> starts() {
        List<Integer> order = order();
        int a = order.get(0);
        int b = order.get(1);
        Place[] first = new Place[corners];
        first[a] = new Place(0, 0);
        first[b] = new Place(length[a][b], 0);
        List<Part> beam = List.of(new Part(first, 0));
        for (int corner : order.subList(2, corners)) {
            beam = beam.stream()
                    .flatMap(part -> placed(part, corner).stream())
                    .sorted(Comparator.comparingDouble(Part::misfit))
                    .limit(BEAM)
                    .toList();
        }
        return beam.stream().map(p -> List.of(p.places)).toList();
    }

    private List<Integer> order() {
        List<Integer> longest = List.of();
        for (Measurement m : problem.measurements()) {
            List<Integer> order = orderFrom(m.from(), m.to());
            if (order.size() == corners) {
                return order;
            }
            longest = order.size() > longest.size() ? order : longest;
        }
        for (int corner = 0; corner < corners; corner++) {
            if (!longest.contains(corner)) {
                throw new NotRigid("corner " + problem.corners().get(corner)
                        + " is not fixed: lengths to two corners that are fixed by others are wanted, measure one more"
                        + " diagonal from it");
            }
        }
        throw new NotRigid("no lengths were measured");
    }

    /** Corners in an order in which each has lengths to two before it, those with most lengths first; as far as it goes. */
    private List<Integer> orderFrom(int a, int b) {
        List<Integer> order = new ArrayList<>(List.of(a, b));
        Optional<Integer> next = next(order);
        while (next.isPresent()) {
            order.add(next.get());
            next = next(order);
        }
        return order;
    }

    private Optional<Integer> next(List<Integer> order) {
        int best = -1;
        long most = 1;
        for (int c = 0; c < corners; c++) {
            long count = order.contains(c) ? 0 : neighbours(order, c).size();
            if (count > most) {
                best = c;
                most = count;
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(best);
    }

    private List<Integer> neighbours(List<Integer> order, int corner) {
        return order.stream().filter(o -> length[o][corner] > 0).toList();
    }

    private List<Part> placed(Part part, int corner) {
        List<Integer> anchors = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            if (part.places[i] != null && length[i][corner] > 0) {
                anchors.add(i);
            }
        }
        Crossing crossing = widest(part, anchors, corner);
        List<Part> both = new ArrayList<>();
        both.add(with(part, corner, crossing.at(1), anchors));
        boolean isThird = part.placed() == 2;
        if (crossing.height() > 0 && !isThird) {
            both.add(with(part, corner, crossing.at(-1), anchors));
        }
        return both;
    }

    /** The two circles that cross at the widest angle, where an error of a length moves the corner least. */
    private Crossing widest(Part part, List<Integer> anchors, int corner) {
        Crossing best = null;
        for (int i : anchors) {
            for (int j : anchors.subList(anchors.indexOf(i) + 1, anchors.size())) {
                Crossing c = Crossing.of(part.places[i], length[i][corner], part.places[j], length[j][corner]);
                best = best == null || c.sine() > best.sine() ? c : best;
            }
        }
        return best;
    }

    private Part with(Part part, int corner, Place at, List<Integer> anchors) {
        Place[] places = part.places.clone();
        places[corner] = at;
        double misfit = part.misfit;
        for (int i : anchors) {
            double off = places[i].distance(at) - length[i][corner];
            misfit += off * off;
        }
        return new Part(places, misfit);
    }

    /** A floor with some corners still missing, and the sum of squares by which it misses lengths so far. */
    private static final class Part {
        private final Place[] places;
        private final double misfit;

        Part(Place[] places, double misfit) {
            this.places = places;
            this.misfit = misfit;
        }

        double misfit() {
            return misfit;
        }

        /** How many corners stand. The third one may stand on either side of the first two: that is but a mirror image. */
        long placed() {
            return Arrays.stream(places).filter(Objects::nonNull).count();
        }
    }

    /**
     * Two circles about p and q: where they cross, or come nearest to it.
     *
     * @param along distance of the foot from p towards q
     * @param height of the crossing over the line from p to q; 0 if they do not cross
     * @param sine of the angle at which they cross
     */
    private record Crossing(Place p, Place q, double along, double height, double sine) {
        static Crossing of(Place p, double fromP, Place q, double fromQ) {
            double base = Math.max(1e-6, p.distance(q));
            double along = (fromP * fromP - fromQ * fromQ + base * base) / (2 * base);
            double height = Math.sqrt(Math.max(0, fromP * fromP - along * along));
            return new Crossing(p, q, along, height, base * height / (fromP * fromQ));
        }

        Place at(int side) {
            double base = Math.max(1e-6, p.distance(q));
            double ux = (q.x() - p.x()) / base;
            double uy = (q.y() - p.y()) / base;
            return new Place(p.x() + along * ux - side * height * uy, p.y() + along * uy + side * height * ux);
        }
    }
}
