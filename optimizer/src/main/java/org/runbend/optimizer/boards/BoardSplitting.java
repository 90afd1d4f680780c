package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsPlan.Spot;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.boards.SplitProgram.Piece;
import org.runbend.optimizer.boards.SplitProgram.Split;
import org.runbend.optimizer.boards.nesting.BoardNesting;
import org.runbend.optimizer.boards.nesting.NestingProblem;
import org.runbend.optimizer.boards.nesting.NestingSolution;

/**
 * Splits each layer of a floor over stock boards, with fewest boards bought, then least cost, then least broken wishes.
 *
 * <p>For each size of board and both directions of courses an integer program ({@link SplitProgram}) chooses joints; its
 * parts are nested ({@link BoardNesting}). Where the parts do not go onto as few boards as the program hoped, other splits
 * follow. Bounds: by area for any joints at all; and the least of the programs' own bounds for joints at the places tried.
 * Same input, same answer: work is limited by counts.
 */
public final class BoardSplitting {
    private static final int LINES = 6;
    private static final int BUTTS = 8;

    /** For floors of several corners, which whole boards from the walls leave in slivers. */
    private static final int MORE = 6;

    private static final int SPLITS = 2;
    private static final int TRIES = 400;

    /** A layer whose parts cannot be had from any board on offer. The text says what is wrong. */
    public static final class NoSplit extends RuntimeException {
        NoSplit(String text) {
            super(text);
        }
    }

    /** The plan. Throws {@link NoSplit} where a layer cannot be made of the boards on offer. */
    public BoardsPlan solve(BoardsProblem problem) {
        Geometry grooves = Region.FACTORY.createPolygon();
        for (List<org.runbend.optimizer.job.Point> ring : problem.grooves()) {
            grooves = grooves.union(Region.polygon(ring).buffer(0));
        }
        List<LayerPlan> layers = new ArrayList<>();
        List<Joint> below = List.of();
        for (Layer layer : problem.layers()) {
            LayerPlan plan = keeping(problem, layer, below, grooves);
            layers.add(plan);
            below = plan.joints();
        }
        return new BoardsPlan(problem, layers);
    }

    /**
     * A layer whose joints lie where those of what was cut for it lay, or along their lines, if that keeps more of it on no more
     * boards; else as if nothing was cut.
     */
    private static LayerPlan keeping(BoardsProblem problem, Layer layer, List<Joint> below, Geometry grooves) {
        LayerPlan afresh = layer(problem, layer, below, HeldJoints.NONE, grooves);
        List<Joint> joints = problem.before(layer).map(CutLayer::joints).orElse(List.of());
        boolean settled =
                joints.isEmpty() || SameParts.of(problem, afresh).stream().allMatch(Optional::isPresent);
        LayerPlan best = afresh;
        for (boolean exact : settled ? new boolean[0] : new boolean[] {true, false}) {
            Optional<LayerPlan> plan = held(problem, layer, below, new HeldJoints(joints, exact), grooves);
            double kept = SameParts.kept(problem, best);
            best = plan.filter(p -> p.boards() <= afresh.boards() && SameParts.kept(problem, p) > kept)
                    .map(p -> p.within(afresh.triedBound()))
                    .orElse(best);
        }
        return best;
    }

    /** A layer with joints that are held, unless the floor has changed too much for them. */
    private static Optional<LayerPlan> held(
            BoardsProblem problem, Layer layer, List<Joint> below, HeldJoints held, Geometry grooves) {
        try {
            return Optional.of(layer(problem, layer, below, held, grooves));
        } catch (NoSplit e) {
            return Optional.empty();
        }
    }

    /** A split and how it nests. */
    private record Try(Sheet sheet, boolean upright, Split split, NestingSolution nesting) {
        long cost() {
            return nesting.boards() * sheet.cost();
        }
    }

    /** A layer; its joints lie where those that are held lie, if there are some. */
    private static LayerPlan layer(
            BoardsProblem problem, Layer layer, List<Joint> below, HeldJoints held, Geometry grooves) {
        Floor floor = new Floor(problem, layer, below, held, grooves);
        floor.split(0);
        if (floor.best == null && !held.any()) {
            floor.split(MORE);
        }
        if (floor.best != null) {
            return made(problem, layer, floor.best, floor.bound, floor.tried, grooves);
        }
        throw new NoSplit(layer.name() + " " + (int) layer.thickness()
                + " mm: no joints were found that leave parts of at least "
                + (int) problem.making().leastPart()
                + " mm which go onto the boards on offer ("
                + floor.sheets.stream()
                        .map(s -> (int) s.length() + " x " + (int) s.width())
                        .collect(Collectors.joining(", "))
                + " mm)");
    }

    /** A layer on its way to its best split. */
    private static final class Floor {
        private final BoardsProblem problem;
        private final Layer layer;
        private final Geometry region;
        private final List<Polygon> lids;
        private final double area;
        private final JointPlaces places;
        private final List<Sheet> sheets;
        private final List<Coordinate> standing;
        private final int bound;
        private Try best;
        private int tried = Integer.MAX_VALUE;

        Floor(BoardsProblem problem, Layer layer, List<Joint> below, HeldJoints held, Geometry grooves) {
            this.problem = problem;
            this.layer = layer;
            region = Region.of(problem, layer);
            lids = Region.lids(problem, layer);
            area = region.getArea()
                    + lids.stream().mapToDouble(Polygon::getArea).sum();
            places = new JointPlaces(problem, layer, below, held, region, grooves);
            sheets = layer.sheets().stream()
                    .sorted(Comparator.comparingInt((Sheet s) -> areaBound(area, s))
                            .thenComparingLong(s -> areaBound(area, s) * s.cost()))
                    .toList();
            standing = problem.cutouts().stream()
                    .filter(c -> !c.encircled() && c.through().contains(layer.role()))
                    .map(c -> Region.open(c).getEnvelopeInternal().centre())
                    .toList();
            bound = areaBound(area, sheets.get(0));
        }

        /** Tries each size of board, courses lying and upright, with so many lines more than usual. */
        void split(int more) {
            tried = Integer.MAX_VALUE; // the usual lines are among more
            for (Sheet sheet : sheets) {
                int least = areaBound(area, sheet);
                boolean hopeless = best != null
                        && (least > best.nesting().boards()
                                || (least == best.nesting().boards() && least * sheet.cost() >= best.cost()));
                if (hopeless) {
                    tried = Math.min(tried, least);
                    continue;
                }
                for (boolean upright : new boolean[] {false, true}) {
                    if (best != null
                            && best.nesting().boards() == bound
                            && best.split().breaches().isEmpty()) {
                        break; // fewest boards and every wish kept: the other way round is no better
                    }
                    SplitProgram program = program(more, sheet, upright);
                    if (!program.takesLids()) {
                        break;
                    }
                    Optional<Integer> proved = program.leastBoards(least);
                    if (!program.hasAny() && !program.isImpossible()) {
                        tried = bound;
                    }
                    if (program.hasAny()) {
                        tried = Math.min(tried, Math.max(bound, proved.orElse(bound)));
                        best = better(best, search(program, problem.making(), layer, sheet, upright, best));
                    }
                }
            }
        }

        private SplitProgram program(int more, Sheet sheet, boolean upright) {
            return new SplitProgram(
                    problem.making(),
                    layer,
                    sheet,
                    region,
                    standing,
                    lids,
                    upright,
                    places.lines(upright, sheet, LINES, more, true),
                    places.lines(!upright, sheet, BUTTS, more, false));
        }
    }

    private static Try search(
            SplitProgram program, Making making, Layer layer, Sheet sheet, boolean upright, Try known) {
        Try best = null;
        for (int s = 0; s < SPLITS; s++) {
            Optional<Split> split = program.next(s < SPLITS - 1 ? 0 : 1);
            if (split.isEmpty()) {
                continue;
            }
            NestingSolution nesting = new BoardNesting(TRIES).solve(nesting(making, layer, sheet, split.get()));
            best = better(best, new Try(sheet, upright, split.get(), nesting));
            boolean enough = nesting.isProvedBest() && (s == 0 || best.nesting().isProvedBest());
            if (enough || (known != null && nesting.bound() > known.nesting().boards())) {
                break;
            }
        }
        return best;
    }

    private static Try better(Try a, Try b) {
        if (a == null || b == null) {
            return a == null ? b : a;
        }
        return Comparator.comparingInt((Try t) -> t.nesting().boards())
                                .thenComparingLong(Try::cost)
                                .thenComparing(t -> counts(t.split()))
                                .thenComparingInt(t -> t.split().pieces().size())
                                .compare(a, b)
                        <= 0
                ? a
                : b;
    }

    /** Broken wishes in their order, as digits. */
    private static String counts(Split split) {
        return Stream.of(BoardsPlan.Wish.values())
                .map(w -> String.format(
                        java.util.Locale.ROOT,
                        "%05d",
                        split.breaches().stream().filter(b -> b.wish() == w).count()))
                .collect(Collectors.joining());
    }

    private static NestingProblem nesting(Making making, Layer layer, Sheet sheet, Split split) {
        return new NestingProblem(
                sheet.length(),
                sheet.width(),
                making.between(layer.role()),
                making.trim(),
                making.saw(),
                split.pieces().stream()
                        .map(p -> new NestingProblem.Item(p.length(), p.width(), !layer.grain()))
                        .toList());
    }

    /** Whatever the joints: the area of the layer by that of a board within its trim. */
    private static int areaBound(double area, Sheet sheet) {
        return (int) Math.max(1, Math.ceil(area / (sheet.length() * sheet.width()) - 0.001));
    }

    private static LayerPlan made(
            BoardsProblem problem, Layer layer, Try best, int bound, int tried, Geometry grooves) {
        PartMaking making = new PartMaking(problem, layer, grooves, best.split().joints());
        List<Integer> order = new ArrayList<>();
        List<Piece> pieces = best.split().pieces();
        for (int i = 0; i < pieces.size(); i++) {
            order.add(i);
        }
        // numbered from the top left corner of the floor, as one reads
        order.sort(Comparator.comparingDouble(
                        (Integer i) -> -Math.rint(top(pieces.get(i).shape()) / 10))
                .thenComparingDouble(
                        i -> pieces.get(i).shape().getEnvelopeInternal().getMinX()));
        List<Part> parts = new ArrayList<>();
        for (int i : order) {
            NestingSolution.Place place = best.nesting().places().get(i);
            int quarters = (best.upright() ? 1 : 0) + (place.turned() ? 1 : 0);
            parts.add(making.part(
                    layer.code() + (parts.size() + 1),
                    pieces.get(i).shape(),
                    new Spot(place.board(), place.x(), place.y(), quarters)));
        }
        return new LayerPlan(
                layer,
                best.sheet(),
                best.nesting().boards(),
                bound,
                Math.max(bound, Math.min(tried, best.nesting().boards())),
                parts,
                best.split().joints(),
                best.split().breaches());
    }

    private static double top(Polygon shape) {
        Envelope e = shape.getEnvelopeInternal();
        return e.getMaxY();
    }
}
