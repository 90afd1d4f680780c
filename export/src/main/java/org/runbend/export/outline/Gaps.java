package org.runbend.export.outline;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Finds out which gaps keep a line open, and which tolerance would close it. */
final class Gaps {
    private static final double[] TRIALS = {1, 2, 3, 5, 10, 20, 50, 100};
    private static final int MOST_PIECES = 20_000;
    private static final int MOST_NAMED = 5;

    private Gaps() {}

    /** What would close a line: the line, the gaps in it as they were drawn, widest first, and the tolerance, mm. */
    record Closing(Contour contour, List<Gap> gaps, double tolerance) {
        String words() {
            String places = gaps.stream()
                    .limit(MOST_NAMED)
                    .map(g -> FloorReading.n(width(g)) + " mm at " + FloorReading.shown(g.a()))
                    .collect(Collectors.joining(", "));
            String more = gaps.size() > MOST_NAMED ? " and " + (gaps.size() - MOST_NAMED) + " more" : "";
            return (gaps.size() == 1 ? "a gap of " : "gaps of ") + places + more + "; close "
                    + (gaps.size() == 1 ? "it" : "them") + ", or say --tolerance " + FloorReading.n(tolerance);
        }
    }

    /** As a person would say it: to a thousandth of a millimetre. */
    private static double width(Gap gap) {
        return Math.rint(gap.width() * 1000) / 1000;
    }

    /** The largest closed line of more than an area that lines make with the least of some tolerances up to a limit. */
    static Optional<Closing> closing(List<Piece> pieces, double tolerance, double most, double leastArea) {
        if (pieces.isEmpty() || pieces.size() > MOST_PIECES) {
            return Optional.empty();
        }
        for (double trial : TRIALS) {
            if (trial > tolerance && trial <= most) {
                Optional<Closing> found = with(pieces, trial, leastArea);
                if (found.isPresent()) {
                    return Optional.of(tightened(pieces, found.get(), leastArea));
                }
            }
        }
        return Optional.empty();
    }

    /** The same with a tolerance just over the widest gap, if that does. */
    private static Closing tightened(List<Piece> pieces, Closing found, double leastArea) {
        double widest = found.gaps.stream().mapToDouble(Gap::width).max().orElse(found.tolerance);
        double tight = Math.ceil(10 * widest + 1 - 1e-6) / 10;
        return tight > OutlineRequest.MOST_TOLERANCE
                ? found
                : with(pieces, tight, leastArea)
                        .filter(c -> c.gaps.size() == found.gaps.size())
                        .orElse(found);
    }

    private static Optional<Closing> with(List<Piece> pieces, double tolerance, double leastArea) {
        Joining joined = new Joining(pieces, tolerance);
        Chaining chaining = new Chaining(joined);
        chaining.run();
        Optional<Contour> largest = chaining.contours().stream()
                .max(Comparator.comparingDouble(c -> c.box().width() * c.box().height()))
                .filter(c -> c.area() > leastArea);
        return largest.map(c -> {
            List<Gap> gaps = new ArrayList<>();
            joined.met().stream()
                    .filter(g -> g.width() > Contour.SAME && isOn(g, c, tolerance))
                    .forEach(gaps::add);
            gaps.sort(Comparator.comparingDouble(Gap::width)
                    .reversed()
                    .thenComparingDouble(g -> g.a().x())
                    .thenComparingDouble(g -> g.a().y()));
            return new Closing(c, gaps, tolerance);
        });
    }

    private static boolean isOn(Gap gap, Contour c, double tolerance) {
        return c.path().vertices().stream()
                .anyMatch(v -> v.point().distance(gap.a()) <= tolerance + 0.01
                        || v.point().distance(gap.b()) <= tolerance + 0.01);
    }
}
