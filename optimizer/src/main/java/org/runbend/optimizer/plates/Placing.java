package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * Lays the pieces of each stretch in a pattern that a fitter sees: longest first from the same side of the floor, centred in the
 * stretch, and on neighbouring runs alike or from a common line where they are free to. Nothing but places changes. Sizes in mm.
 *
 * <p>Places along a run are told by a measure of the floor that rises the same way on runs to and fro. Rows of twin-groove pieces
 * with single ones behind them are shifted as they are.
 */
final class Placing {
    /** Runs further apart than the greatest spacing are no neighbours. */
    private static final double NEIGHBOURS = 310;

    private static final double SAME = 1e-6;

    private final List<Breakdown> loops;
    private final List<PlateStretch> stretches;
    private final List<Strip> pairs;
    private final double gap;

    /** For pieces of single grooves on stretches, and of twin grooves on pairs of them. */
    Placing(List<Breakdown> loops, List<PlateStretch> stretches, List<Strip> pairs, double gap) {
        this.loops = loops;
        this.pairs = pairs;
        this.stretches = stretches;
        this.gap = gap;
    }

    /** The pieces in better places. */
    List<PlatePiece> placed(List<PlatePiece> pieces) {
        List<Block> blocks = blocks(pieces);
        List<List<Block>> groups = groups(blocks);
        groups.sort(Comparator.comparingInt(g -> -g.size()));
        List<Block> done = new ArrayList<>();
        for (List<Block> group : groups) {
            double least = group.stream().mapToDouble(b -> b.least).max().orElse(0);
            double most = group.stream().mapToDouble(b -> b.most).min().orElse(0);
            double middle = (least + most) / 2;
            OptionalDouble line =
                    group.size() > 1 ? OptionalDouble.empty() : group.get(0).commonLine(done, middle);
            group.forEach(b -> b.start = line.orElse(middle));
            done.addAll(group);
        }
        return blocks.stream().flatMap(b -> b.pieces().stream()).toList();
    }

    /** Pieces that lie on the same stretch, or on stretches that twin-groove pieces tie together, in one block. */
    private List<Block> blocks(List<PlatePiece> pieces) {
        int[] block = new int[stretches.size()];
        for (int s = 0; s < block.length; s++) {
            block[s] = s;
        }
        for (PlatePiece p : pieces) {
            int first = stretch(p.places().get(0));
            for (PlatePiece.Place place : p.places()) {
                int old = block[stretch(place)];
                int now = block[first];
                for (int s = 0; s < block.length; s++) {
                    block[s] = block[s] == old ? now : block[s];
                }
            }
        }
        List<Block> blocks = new ArrayList<>();
        for (int b = 0; b < block.length; b++) {
            int number = b;
            List<PlatePiece> own = pieces.stream()
                    .filter(p -> block[stretch(p.places().get(0))] == number)
                    .toList();
            if (!own.isEmpty()) {
                List<PlateStretch> tied = new ArrayList<>();
                for (int s = 0; s < block.length; s++) {
                    if (block[s] == number) {
                        tied.add(stretches.get(s));
                    }
                }
                blocks.add(new Block(own, tied));
            }
        }
        return blocks;
    }

    private int stretch(PlatePiece.Place place) {
        for (int s = 0; s < stretches.size(); s++) {
            PlateStretch t = stretches.get(s);
            if (t.loop() == place.loop()
                    && t.element() == place.element()
                    && place.from() >= t.from() - 0.01
                    && place.from() < t.to()) {
                return s;
            }
        }
        throw new IllegalStateException("a piece lies on no stretch: " + place);
    }

    /** Neighbours with the same lengths that can all start at one line. */
    private static List<List<Block>> groups(List<Block> blocks) {
        List<Block> sorted = new ArrayList<>(blocks);
        sorted.sort(Comparator.comparingDouble((Block b) -> b.axis.angle())
                .thenComparingDouble(b -> b.across)
                .thenComparingDouble(b -> b.least));
        List<List<Block>> groups = new ArrayList<>();
        for (Block b : sorted) {
            List<Block> home = groups.stream()
                    .filter(g -> b.isLike(g.get(g.size() - 1)))
                    .filter(g -> g.stream().mapToDouble(o -> o.least).max().orElseThrow() <= b.most
                            && b.least
                                    <= g.stream().mapToDouble(o -> o.most).min().orElseThrow())
                    .findFirst()
                    .orElse(null);
            if (home == null) {
                home = new ArrayList<>();
                groups.add(home);
            }
            home.add(b);
        }
        return groups;
    }

    /** A direction of runs, to and fro alike. */
    private record Axis(double x, double y) {
        static Axis of(Element run) {
            double length = run.length();
            double x = (run.to().x() - run.from().x()) / length;
            double y = (run.to().y() - run.from().y()) / length;
            boolean turned = x < -SAME || (Math.abs(x) <= SAME && y < 0);
            return turned ? new Axis(-x, -y) : new Axis(x, y);
        }

        double angle() {
            return Math.rint(Math.toDegrees(Math.atan2(y, x)) * 100) / 100;
        }

        double along(Point p) {
            return p.x() * x + p.y() * y;
        }

        double across(Point p) {
            return p.y() * x - p.x() * y;
        }
    }

    private Element run(int loop, int element) {
        return loops.get(loop).elements().get(element);
    }

    /** Pieces that keep together, and where along the floor their first one may start. */
    private final class Block {
        private final List<PlatePiece> own;
        private final Axis axis;
        private final double across;
        private final List<Double> starts = new ArrayList<>();
        private final double length;
        private final double least;
        private final double most;
        private double start;

        Block(List<PlatePiece> pieces, List<PlateStretch> tied) {
            axis = Axis.of(run(tied.get(0).loop(), tied.get(0).element()));
            across = tied.stream()
                    .mapToDouble(t -> axis.across(run(t.loop(), t.element()).from()))
                    .average()
                    .orElse(0);
            boolean simple = tied.size() == pieces.get(0).places().size()
                    && pieces.stream().allMatch(p -> p.places().size() == tied.size());
            own = pieces.stream()
                    .sorted(
                            simple
                                    ? Comparator.comparingDouble((PlatePiece p) -> -p.length())
                                            .thenComparingDouble(this::at)
                                    : Comparator.comparingDouble(this::at))
                    .toList();
            double first = pieces.stream().mapToDouble(this::at).min().orElseThrow();
            double next = 0;
            for (PlatePiece p : own) {
                starts.add(simple ? next : at(p) - first);
                next += p.length() + gap;
            }
            double low = Double.NEGATIVE_INFINITY;
            double high = Double.POSITIVE_INFINITY;
            double longest = 0;
            List<PlateStretch> bounds = new ArrayList<>(tied);
            pairs.stream()
                    .filter(s -> pieces.stream()
                            .anyMatch(p ->
                                    p.places().size() > 1 && s.holds(p.places().get(0))))
                    .forEach(s -> bounds.add(s.first()));
            for (PlateStretch t : bounds) {
                boolean isPair = bounds.indexOf(t) >= tied.size();
                Element run = run(t.loop(), t.element());
                double a = axis.along(run.from()) + sign(run) * t.from();
                double b = axis.along(run.from()) + sign(run) * t.to();
                for (int p = 0; p < own.size(); p++) {
                    boolean counts = !isPair || own.get(p).places().size() > 1;
                    if (counts && own.get(p).places().stream().anyMatch(x -> isOn(x, t))) {
                        low = Math.max(low, Math.min(a, b) - starts.get(p));
                        high = Math.min(
                                high,
                                Math.max(a, b) - starts.get(p) - own.get(p).length());
                    }
                }
            }
            for (int p = 0; p < own.size(); p++) {
                longest = Math.max(longest, starts.get(p) + own.get(p).length());
            }
            length = longest;
            least = low;
            most = Math.max(low, high);
        }

        private static boolean isOn(PlatePiece.Place place, PlateStretch t) {
            return place.loop() == t.loop()
                    && place.element() == t.element()
                    && place.from() >= t.from() - 0.01
                    && place.from() < t.to();
        }

        private double sign(Element run) {
            return axis.along(run.to()) > axis.along(run.from()) ? 1 : -1;
        }

        /** Where a piece starts along the floor. */
        private double at(PlatePiece p) {
            PlatePiece.Place place = p.places().get(0);
            Element run = run(place.loop(), place.element());
            double from = axis.along(run.from()) + sign(run) * place.from();
            return sign(run) > 0 ? from : from - p.length();
        }

        boolean isLike(Block o) {
            return axis.angle() == o.axis.angle()
                    && isNeighbour(o)
                    && lengths().equals(o.lengths())
                    && starts.equals(o.starts);
        }

        private boolean isNeighbour(Block o) {
            double apart = Math.abs(across - o.across);
            return apart > 1 && apart <= NEIGHBOURS;
        }

        private List<Double> lengths() {
            return own.stream().map(PlatePiece::length).collect(Collectors.toList());
        }

        /** The line at which a neighbour starts or ends and this one can too, nearest to its middle place. */
        OptionalDouble commonLine(List<Block> done, double middle) {
            return done.stream()
                    .filter(o -> axis.angle() == o.axis.angle() && isNeighbour(o))
                    .flatMap(o -> List.of(o.start, o.start + o.length - length).stream())
                    .filter(x -> x >= least - SAME && x <= most + SAME)
                    .min(Comparator.comparingDouble((Double x) -> Math.abs(x - middle))
                            .thenComparingDouble(x -> x))
                    .map(OptionalDouble::of)
                    .orElse(OptionalDouble.empty());
        }

        /** The pieces where they lie now, the first one a whole number of mm from the start of its run where that is free. */
        List<PlatePiece> pieces() {
            PlatePiece first = own.get(0);
            double from = moved(first, start).places().get(0).from();
            Element run =
                    run(first.places().get(0).loop(), first.places().get(0).element());
            double whole = start + sign(run) * (Math.rint(from) - from);
            double begin = Math.max(least, Math.min(most, whole));
            List<PlatePiece> moved = new ArrayList<>();
            for (int p = 0; p < own.size(); p++) {
                moved.add(moved(own.get(p), begin + starts.get(p)));
            }
            return moved;
        }

        private PlatePiece moved(PlatePiece piece, double to) {
            double by = to - at(piece);
            return new PlatePiece(
                    piece.product(),
                    piece.length(),
                    piece.places().stream()
                            .map(x -> new PlatePiece.Place(
                                    x.loop(), x.element(), clean(x.from() + sign(run(x.loop(), x.element())) * by)))
                            .toList());
        }

        /** Without the noise of sums of floating-point numbers. */
        private static double clean(double mm) {
            return Math.rint(mm * 1e6) / 1e6;
        }
    }
}
