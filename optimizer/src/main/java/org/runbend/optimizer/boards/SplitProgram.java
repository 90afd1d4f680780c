package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.runbend.optimizer.boards.BoardsPlan.Breach;
import org.runbend.optimizer.boards.BoardsPlan.Joint;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Making;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.boards.nesting.NestingBounds;
import org.runbend.optimizer.mip.IntegerSolver;
import org.runbend.optimizer.mip.Model;
import org.runbend.optimizer.mip.Watch;

/**
 * Chooses where the boards of a layer meet: the floor is cut by lines from wall to wall into courses, each course by joints of
 * its own.
 *
 * <p>Model: y_c = 1 if a course c lies between two neighbouring lines, x_p = 1 for each part p of a course. The chosen courses
 * are a path from one wall to the other; the parts of a chosen course are a path along it. z is at least the sum of w(p) x_p
 * for each of some dual feasible weighings w, so z is a lower bound on the boards of any packing of the chosen parts. First z
 * is made least, then, at that z, the wishes broken, in their order. The answers may be forbidden one by one.
 */
final class SplitProgram {
    /** Work limit of the integer program, counted in nodes of its search. */
    private static final int NODES = 20;

    private final List<Course> courses = new ArrayList<>();
    private final List<Piece> pieces = new ArrayList<>();
    private final List<List<Integer>> forbidden = new ArrayList<>();
    private final List<NestingBounds.Weighing> weighings = NestingBounds.few();
    private final boolean upright;
    private final List<Coordinate> standing;
    private final Making making;
    private final Sheet sheet;
    private final Layer layer;
    private final List<Piece> lids;
    private final List<JointLine> lines;
    private final List<JointLine> butts;
    private final double first;
    private final double last;
    private int boards = -1;
    private boolean impossible;
    private int least;
    private IntegerSolver.Answer kept;

    /** A course between two lines, by their numbers; 0 is one wall, the last number the other. */
    private record Course(int low, int high) {}

    /** A part of a course between two joints, by their numbers; empty floor has no polygon. */
    record Piece(int course, int from, int to, Polygon shape, double length, double width, List<Breach> breaches) {
        boolean isEmpty() {
            return shape == null;
        }
    }

    /** The parts and joints chosen. */
    record Split(List<Piece> pieces, List<Joint> joints, List<Breach> breaches) {}

    /**
     * A program for a region.
     *
     * @param standing middles of things that no part may lie all round
     * @param lids parts that lie in openings, whatever the joints
     * @param upright whether courses run upwards, so that lines between them are upright
     * @param lines where courses may meet, in order, without the walls
     * @param butts where parts of a course may meet, in order, without the walls
     */
    SplitProgram(
            Making making,
            Layer layer,
            Sheet sheet,
            Geometry region,
            List<Coordinate> standing,
            List<Polygon> lids,
            boolean upright,
            List<JointLine> lines,
            List<JointLine> butts) {
        this.making = making;
        this.layer = layer;
        this.sheet = sheet;
        this.upright = upright;
        this.standing = List.copyOf(standing);
        this.lids = lids.stream()
                .map(l -> {
                    Envelope e = l.getEnvelopeInternal();
                    double length = upright ? e.getHeight() : e.getWidth();
                    double width = upright ? e.getWidth() : e.getHeight();
                    return new Piece(-1, 0, Integer.MAX_VALUE, l, length, width, List.of());
                })
                .toList();
        this.lines = lines;
        this.butts = butts;
        Envelope box = region.getEnvelopeInternal();
        double[] across =
                places(upright ? box.getMinX() : box.getMinY(), lines, upright ? box.getMaxX() : box.getMaxY());
        double[] along =
                places(upright ? box.getMinY() : box.getMinX(), butts, upright ? box.getMaxY() : box.getMaxX());
        first = along[0];
        last = along[along.length - 1];
        for (int i = 0; i < across.length - 1; i++) {
            for (int j = i + 1; j < across.length; j++) {
                course(region, across, along, i, j);
            }
        }
    }

    private static double[] places(double first, List<JointLine> lines, double last) {
        double[] all = new double[lines.size() + 2];
        all[0] = first;
        for (int i = 0; i < lines.size(); i++) {
            all[i + 1] = lines.get(i).at();
        }
        all[all.length - 1] = last;
        return all;
    }

    private void course(Geometry region, double[] across, double[] along, int i, int j) {
        double gap = making.jointGap() / 2;
        double low = across[i] + (i == 0 ? 0 : gap);
        double high = across[j] - (j == across.length - 1 ? 0 : gap);
        double most = Math.max(sheet.width(), layer.grain() ? 0 : sheet.length()) - 2 * making.trim();
        boolean allowed = (i == 0 || lines.get(i - 1).isAllowed(along[0], along[along.length - 1]))
                && (j == across.length - 1 || lines.get(j - 1).isAllowed(along[0], along[along.length - 1]));
        if (high - low < making.leastPart() || !allowed) {
            return;
        }
        Geometry strip = region.intersection(box(along[0] - 1, low, along[along.length - 1] + 1, high));
        int course = courses.size();
        List<Piece> found = new ArrayList<>();
        for (int k = 0; k < along.length - 1; k++) {
            boolean begins = k == 0 || butts.get(k - 1).isAllowed(low, high);
            for (int l = k + 1; begins && l < along.length; l++) {
                boolean last = l == along.length - 1;
                if (!last && !butts.get(l - 1).isAllowed(low, high)) {
                    continue;
                }
                double from = along[k] + (k == 0 ? 0 : gap);
                double to = along[l] - (last ? 0 : gap);
                List<Breach> breaches =
                        new ArrayList<>(last ? List.of() : butts.get(l - 1).breaches(low, high));
                piece(strip, course, k, l, box(from, low - 1, to, high + 1), breaches, most)
                        .ifPresent(found::add);
            }
        }
        if (!found.isEmpty()) {
            courses.add(new Course(i, j));
            pieces.addAll(found);
        }
    }

    private Geometry box(double from, double low, double to, double high) {
        return upright ? Region.box(low, from, high, to) : Region.box(from, low, to, high);
    }

    private Optional<Piece> piece(
            Geometry strip, int course, int k, int l, Geometry box, List<Breach> breaches, double most) {
        Geometry cut = strip.intersection(box);
        List<Polygon> parts = Region.polygons(cut);
        if (parts.isEmpty()) {
            return Optional.of(new Piece(course, k, l, null, 0, 0, List.of()));
        }
        Envelope e = parts.get(0).getEnvelopeInternal();
        double length = upright ? e.getHeight() : e.getWidth();
        double width = upright ? e.getWidth() : e.getHeight();
        boolean good = parts.size() == 1
                && standing.stream().noneMatch(s -> isRound(parts.get(0), s))
                && Math.min(length, width) >= making.leastPart()
                && width <= most
                && fits(length, width)
                && hasNoNeck(parts.get(0));
        return good ? Optional.of(new Piece(course, k, l, parts.get(0), length, width, breaches)) : Optional.empty();
    }

    /** Whether a part of a size goes onto a stock board. */
    private boolean fits(double length, double width) {
        double usableLength = sheet.length() - 2 * making.trim();
        double usableWidth = sheet.width() - 2 * making.trim();
        return (length <= usableLength && width <= usableWidth)
                || (!layer.grain() && width <= usableLength && length <= usableWidth);
    }

    /** Whether each part that lies in an opening goes onto a stock board. */
    boolean takesLids() {
        return lids.stream().allMatch(l -> fits(l.length(), l.width()));
    }

    /** Whether 20 mm are left everywhere between its edges; a rectangle has them. */
    private static boolean hasNoNeck(Polygon part) {
        if (part.getNumPoints() <= 5 && part.getNumInteriorRing() == 0) {
            return true;
        }
        Geometry core = part.buffer(-10, 2);
        return !core.isEmpty() && core.getNumGeometries() == 1;
    }

    /** Whether a part lies all round a place. */
    private static boolean isRound(Polygon part, Coordinate place) {
        for (int i = 0; i < part.getNumInteriorRing(); i++) {
            if (part.getInteriorRingN(i).getEnvelopeInternal().contains(place)) {
                return true;
            }
        }
        return false;
    }

    /**
     * The least z, not under a bound that is known, if the program was solved to the end; then {@link #next} keeps to it or so
     * many more.
     */
    Optional<Integer> leastBoards(int known) {
        least = known;
        boards = known;
        IntegerSolver.Answer hoped = solve(false);
        if (hoped.hasValues()) {
            kept = hoped;
            return Optional.of(known);
        }
        boards = -1;
        IntegerSolver.Answer answer = solve(true);
        impossible = answer.status() == IntegerSolver.Status.INFEASIBLE;
        if (!answer.hasValues()) {
            return Optional.empty();
        }
        boards = (int) answer.values()[0];
        return answer.status() == IntegerSolver.Status.OPTIMAL ? Optional.of(boards) : Optional.empty();
    }

    /** Whether no split is possible. */
    boolean isImpossible() {
        return impossible;
    }

    /** Whether any split was found. */
    boolean hasAny() {
        return boards >= 0;
    }

    /** The split of the least broken wishes among those not given yet, with z at most so many over the least. */
    Optional<Split> next(int more) {
        boards += more;
        IntegerSolver.Answer answer = kept == null ? solve(false) : kept;
        kept = null;
        boards -= more;
        if (!answer.hasValues()) {
            return Optional.empty();
        }
        List<Integer> chosen = new ArrayList<>();
        for (int p = 0; p < pieces.size(); p++) {
            if (answer.values()[1 + courses.size() + p] == 1) {
                chosen.add(p);
            }
        }
        forbidden.add(chosen);
        return Optional.of(split(chosen, answer.values()));
    }

    private IntegerSolver.Answer solve(boolean leastBoards) {
        Model model = new Model();
        int nodes = lines.size() + 2;
        int[] path = new int[nodes];
        for (int n = 0; n < nodes; n++) {
            double flow = n == 0 ? 1 : n == nodes - 1 ? -1 : 0;
            path[n] = model.row(flow, flow);
        }
        int stations = butts.size() + 2;
        int[][] inside = new int[courses.size()][stations];
        for (int[] course : inside) {
            for (int s = 0; s < stations; s++) {
                course[s] = model.row(0, 0);
            }
        }
        int[] loads = new int[weighings.size()];
        for (int w = 0; w < loads.length; w++) {
            NestingBounds.Weighing weighing = weighings.get(w);
            double always = lids.stream().mapToDouble(l -> load(weighing, l)).sum();
            loads[w] = model.row(always, Double.POSITIVE_INFINITY);
        }
        int limit = model.row(least, leastBoards ? Double.POSITIVE_INFINITY : boards);
        int[] cuts = new int[forbidden.size()];
        for (int f = 0; f < cuts.length; f++) {
            cuts[f] = model.row(0, forbidden.get(f).size() - 1);
        }
        int[] rows = new int[loads.length + 1];
        double[] ones = new double[rows.length];
        System.arraycopy(loads, 0, rows, 0, loads.length);
        rows[loads.length] = limit;
        java.util.Arrays.fill(ones, 1);
        model.column(leastBoards ? 1 : 0, 1000, rows, ones);
        for (int c = 0; c < courses.size(); c++) {
            Course course = courses.get(c);
            boolean last = course.high() == nodes - 1;
            List<Breach> breaches = last ? List.of() : lineBreaches(course.high());
            model.column(
                    leastBoards ? 0 : price(breaches),
                    1,
                    new int[] {path[course.low()], path[course.high()], inside[c][0], inside[c][stations - 1]},
                    new double[] {1, -1, -1, 1});
        }
        for (int p = 0; p < pieces.size(); p++) {
            column(model, p, leastBoards, inside, loads, cuts);
        }
        return new IntegerSolver(NODES, Watch.NONE).solve(model);
    }

    private void column(Model model, int p, boolean leastBoards, int[][] inside, int[] loads, int[] cuts) {
        Piece piece = pieces.get(p);
        List<Integer> rows =
                new ArrayList<>(List.of(inside[piece.course()][piece.from()], inside[piece.course()][piece.to()]));
        List<Double> entries = new ArrayList<>(List.of(1.0, -1.0));
        for (int w = 0; w < loads.length && !piece.isEmpty(); w++) {
            double load = load(weighings.get(w), piece);
            if (load > 0) {
                rows.add(loads[w]);
                entries.add(-load);
            }
        }
        for (int f = 0; f < cuts.length; f++) {
            if (forbidden.get(f).contains(p)) {
                rows.add(cuts[f]);
                entries.add(1.0);
            }
        }
        double cost = leastBoards || piece.isEmpty() ? 0 : 1 + price(piece.breaches());
        model.column(
                cost,
                1,
                rows.stream().mapToInt(r -> r).toArray(),
                entries.stream().mapToDouble(e -> e).toArray());
    }

    private double load(NestingBounds.Weighing weighing, Piece piece) {
        double between = making.between(layer.role());
        return weighing.of(
                piece.length() + between,
                piece.width() + between,
                sheet.length() - 2 * making.trim() + between,
                sheet.width() - 2 * making.trim() + between,
                !layer.grain());
    }

    private List<Breach> lineBreaches(int line) {
        return lines.get(line - 1).breaches(first, last);
    }

    /** What a broken wish costs in parts, so that each outweighs a few dozen of the next. */
    private static double price(BoardsPlan.Wish wish) {
        return switch (wish) {
            case SQUARE -> 125_000;
            case BESIDE -> 5_000;
            case SUPPORTED -> 200;
            case STAGGERED -> 8;
        };
    }

    private static double price(List<Breach> breaches) {
        return breaches.stream().mapToDouble(b -> price(b.wish())).sum();
    }

    private Split split(List<Integer> chosen, long[] values) {
        List<Piece> parts =
                chosen.stream().map(pieces::get).filter(p -> !p.isEmpty()).toList();
        List<Joint> joints = new ArrayList<>();
        List<Breach> breaches = new ArrayList<>();
        for (int c = 0; c < courses.size(); c++) {
            Course course = courses.get(c);
            if (values[1 + c] == 1 && course.high() <= lines.size()) {
                breaches.addAll(lineBreaches(course.high()));
                Envelope all = new Envelope();
                parts.forEach(p -> all.expandToInclude(p.shape().getEnvelopeInternal()));
                JointLine line = lines.get(course.high() - 1);
                joints.add(new Joint(
                        line.point(upright ? all.getMinY() : all.getMinX()),
                        line.point(upright ? all.getMaxY() : all.getMaxX())));
            }
        }
        for (Piece p : parts) {
            breaches.addAll(p.breaches());
            if (p.to() <= butts.size()) {
                Envelope e = p.shape().getEnvelopeInternal();
                JointLine line = butts.get(p.to() - 1);
                joints.add(new Joint(
                        line.point(upright ? e.getMinX() : e.getMinY()),
                        line.point(upright ? e.getMaxX() : e.getMaxY())));
            }
        }
        List<Piece> all = new ArrayList<>(parts);
        all.addAll(lids);
        return new Split(all, joints, breaches);
    }
}
