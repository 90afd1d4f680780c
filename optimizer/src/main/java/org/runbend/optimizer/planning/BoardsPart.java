package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.product.PanelCutting;
import org.runbend.optimizer.boards.BoardSplitting;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsProblem;
import org.runbend.optimizer.boards.BoardsProblem.Cutout;
import org.runbend.optimizer.boards.BoardsProblem.Filling;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Packer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.boards.SameParts;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.ChannelPlan.Corner;
import org.runbend.optimizer.channel.ChannelSize;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.BoardsWish;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Shape;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PortHole;
import org.runbend.optimizer.plan.Remark;

/** Turns a laid floor into the question of its boards: which layers there are, what goes through them, how they are cut. */
final class BoardsPart {
    private static final double CHORD = 3;

    /** Air round bolts and pipe holes, which are drilled to size, mm: own choice. */
    private static final double DRILLED = 1;

    private BoardsPart() {}

    /** The boards of a floor, if the job asks for them; of what was cut before as much as can is to stay. */
    static Optional<BoardsPlan> of(
            Job job, List<KitPlan.LoopPlan> loops, Optional<ChannelPlan> channel, List<CutLayer> before) {
        if (job.build().isEmpty() || job.build().get().boards().isEmpty()) {
            return Optional.empty();
        }
        List<Layer> layers = layers(job, job.build().get());
        if (layers.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(new BoardSplitting().solve(problem(job, layers, loops, channel, before)));
        } catch (BoardSplitting.NoSplit e) {
            throw new Unbuildable("build.boards", e.getMessage());
        }
    }

    /** What is to be known of boards, and of layers that get none. */
    static List<Remark> remarks(Job job, Optional<BoardsPlan> plan) {
        List<Remark> words = new ArrayList<>();
        if (job.build().isEmpty() || job.build().get().boards().isEmpty()) {
            return words;
        }
        Job.Build build = job.build().get();
        plan.ifPresent(p -> {
            p.layers().forEach(l -> words.add(remark(l)));
            words.add(BoardChecks.remark(job, p));
            kept(p).ifPresent(words::add);
            p.problem().packers().forEach(k -> words.add(packer(k)));
        });
        if (build.board().isEmpty()) {
            words.add(new Remark.NoRoutedBoard());
        }
        List<Layer> layers = layers(job, build);
        if (build.coverThickness() > 0 && layers.stream().noneMatch(l -> l.role() == Role.COVER)) {
            words.add(new Remark.NotSold(build.coverMaterial(), build.coverThickness()));
        }
        if (build.board().isPresent() && layers.stream().noneMatch(l -> l.role() == Role.ROUTED)) {
            words.add(new Remark.NotSold(
                    build.board().get().board().sku(), build.board().get().thickness()));
        }
        return words;
    }

    /** How many parts were cut before and stay, if some do. */
    private static Optional<Remark> kept(BoardsPlan plan) {
        int stay = 0;
        int all = 0;
        for (BoardsPlan.LayerPlan layer : plan.layers()) {
            all += layer.parts().size();
            stay += (int) SameParts.of(plan.problem(), layer).stream()
                    .filter(Optional::isPresent)
                    .count();
        }
        return stay == 0 ? Optional.empty() : Optional.of(new Remark.BoardsStay(stay, all));
    }

    private static Remark packer(Packer p) {
        Envelope box = FloorShapes.polygon(p.edge()).getEnvelopeInternal();
        return new Remark.SolidPacker(
                p.name(), box.getWidth(), box.getHeight(), p.height(), p.round().isPresent());
    }

    private static Remark remark(BoardsPlan.LayerPlan l) {
        List<Integer> broken = Arrays.stream(BoardsPlan.Wish.values())
                .map(w -> (int) l.breaches().stream().filter(b -> b.wish() == w).count())
                .toList();
        return new Remark.Boards(
                l.layer().name(),
                l.layer().thickness(),
                l.parts().size(),
                l.boards(),
                l.bound(),
                l.triedBound(),
                l.sheet().length(),
                l.sheet().width(),
                broken);
    }

    private static BoardsProblem problem(
            Job job,
            List<Layer> layers,
            List<KitPlan.LoopPlan> loops,
            Optional<ChannelPlan> channel,
            List<CutLayer> before) {
        BoardsWish wish = job.build().get().boards().get();
        PanelCutting cutting = job.catalog().panels();
        List<Breakdown> pipes = loops.stream().map(KitPlan.LoopPlan::breakdown).toList();
        ChannelSize size = channel.map(ChannelPlan::size)
                .orElse(new ChannelSize(
                        job.groove().width(),
                        job.groove().bendWidth(),
                        job.groove().depth(),
                        0,
                        job.groove().width()));
        List<List<Point>> grooves = channel.map(
                        c -> c.contours().stream().map(BoardsPart::chords).toList())
                .orElse(List.of());
        boolean level = job.floor().port().turn() == Job.Turn.LEVEL;
        List<List<Point>> ramps = level
                ? List.of()
                : PortHole.of(job, loops).stream()
                        .filter(PortHole::given)
                        .map(h -> ramp(h.slot()))
                        .toList();
        return new BoardsProblem(
                job.floor().outline(),
                layers,
                cutouts(job, loops, layers),
                packers(job, layers),
                pipes,
                grooves,
                ramps,
                job.floor().supports(),
                new BoardsProblem.Making(
                        wish.jointGap(),
                        wish.tolerance(),
                        wish.scribe(),
                        cutting.kerf(),
                        cutting.trim(),
                        cutting.leastPart(),
                        wish.saw(),
                        size.cutter(),
                        size.width(),
                        size.bendWidth(),
                        size.pad(),
                        size.depth()),
                before);
    }

    private static List<Layer> layers(Job job, Job.Build build) {
        List<Layer> layers = new ArrayList<>();
        double under = build.laidUnder();
        if (under > 1e-9) {
            InsulationStack.of(job.catalog(), under).ifPresent(stack -> {
                List<Double> upwards = new ArrayList<>(stack.sheets());
                Collections.reverse(upwards);
                for (int i = 0; i < upwards.size(); i++) {
                    layer(job, String.valueOf((char) ('I' + i)), Role.INSULATION, stack.board(), upwards.get(i))
                            .ifPresent(layers::add);
                }
            });
        }
        build.board()
                .flatMap(b -> layer(job, "R", Role.ROUTED, b.board(), b.thickness()))
                .ifPresent(layers::add);
        job.catalog()
                .findBoard(build.coverMaterial())
                .flatMap(b -> layer(job, "C", Role.COVER, b, build.coverThickness()))
                .ifPresent(layers::add);
        return layers;
    }

    private static Optional<Layer> layer(Job job, String code, Role role, Board board, double thickness) {
        List<Sheet> sheets = board.sheets().stream()
                .filter(s -> Math.abs(s.thickness() - thickness) < 1e-6)
                .map(s -> new Sheet(s.length(), s.width(), s.cost(), s.price()))
                .toList();
        boolean wood = board.kind() == Board.Kind.COVER;
        double gap = job.build()
                .flatMap(Job.Build::boards)
                .flatMap(w -> w.perimeterGap().isPresent()
                        ? Optional.of(w.perimeterGap().getAsDouble())
                        : Optional.empty())
                .orElse(wood ? BoardsWish.WOOD_GAP : BoardsWish.FOAM_GAP);
        return sheets.isEmpty()
                ? Optional.empty()
                : Optional.of(new Layer(
                        code, role, board.sku(), board.name(), thickness, sheets, wood, gap, board.density()));
    }

    private static List<Cutout> cutouts(Job job, List<KitPlan.LoopPlan> loops, List<Layer> layers) {
        List<Cutout> all = new ArrayList<>();
        BoardsWish wish = job.build().get().boards().get();
        double gap = wish.tolerance()
                + layers.stream().mapToDouble(Layer::perimeterGap).max().orElse(0);
        for (KeepOut k : job.floor().keepOuts()) {
            all.add(cutout(job, k, gap));
        }
        Job.Turn turn = job.floor().port().turn();
        if (turn != Job.Turn.LEVEL) {
            double radius = Math.max(job.groove().pad(), job.pipe().product().outer()) / 2;
            for (PortHole h : PortHole.of(job, loops)) {
                if (h.given()) {
                    Round round = new Round(h.at(), radius);
                    Set<Role> through =
                            turn == Job.Turn.DOWN ? Set.of(Role.INSULATION, Role.ROUTED) : Set.of(Role.COVER);
                    all.add(new Cutout(
                            "hole " + h.name(), circle(round), Optional.of(round), through, 0, Filling.OPEN));
                }
            }
        }
        return all;
    }

    /** What a thing on the floor opens in the layers, by its kind. */
    private static Cutout cutout(Job job, KeepOut k, double gap) {
        Set<Role> all = Set.of(Role.values());
        double joint = job.build().get().boards().get().jointGap();
        List<Point> edge = edge(k.bare());
        Optional<Round> round = round(k.bare());
        return switch (k.kind()) {
            case ANCHOR -> {
                Packer packer = packer(job, k, 0);
                Set<Role> under = Set.of(Role.INSULATION, Role.ROUTED);
                yield new Cutout(k.name(), packer.edge(), packer.round(), under, joint, Filling.OPEN);
            }
            case BOLT -> new Cutout(k.name(), edge, round, all, DRILLED, Filling.OPEN);
            case PILLAR -> new Cutout(k.name(), edge, round, all, gap, Filling.STANDING);
            case HATCH ->
                isLidded(job, edge)
                        ? new Cutout(k.name(), edge, round, all, joint / 2, Filling.LID)
                        : new Cutout(k.name(), edge, round, all, gap, Filling.OPEN);
            default -> new Cutout(k.name(), edge, round, all, gap, Filling.OPEN);
        };
    }

    /** Whether a hatch is large enough for a lid that can be cut. */
    private static boolean isLidded(Job job, List<Point> edge) {
        Envelope box = FloorShapes.polygon(edge).getEnvelopeInternal();
        double gap = 2 * job.build().get().boards().get().jointGap();
        return Math.min(box.getWidth(), box.getHeight()) - gap
                >= job.catalog().panels().leastPart();
    }

    /** Under each anchor, as wide as what its plate presses on: the load spreads by 45 degrees through the cover (common practice). */
    private static List<Packer> packers(Job job, List<Layer> layers) {
        double height = layers.stream()
                .filter(l -> l.role() != Role.COVER)
                .mapToDouble(Layer::thickness)
                .sum();
        return job.floor().keepOuts().stream()
                .filter(k -> k.kind() == KeepOut.Kind.ANCHOR && height > 0)
                .map(k -> packer(job, k, height))
                .toList();
    }

    private static Packer packer(Job job, KeepOut anchor, double height) {
        double spread = job.build().get().coverThickness();
        Optional<Round> round = round(anchor.bare()).map(r -> new Round(r.centre(), r.radius() + spread));
        List<Point> edge = round.map(BoardsPart::circle).orElseGet(() -> grown(edge(anchor.bare()), spread));
        return new Packer(anchor.name(), edge, round, height);
    }

    private static List<Point> grown(List<Point> edge, double by) {
        BufferParameters square = new BufferParameters(8, BufferParameters.CAP_ROUND, BufferParameters.JOIN_MITRE, 2);
        Coordinate[] ring =
                BufferOp.bufferOp(FloorShapes.polygon(edge), by, square).getCoordinates();
        return Arrays.stream(ring, 0, ring.length - 1)
                .map(c -> new Point(c.x, c.y))
                .toList();
    }

    private static Optional<Round> round(Shape shape) {
        if (shape instanceof Shape.Circle c) {
            return Optional.of(new Round(c.centre(), c.radius()));
        }
        return shape instanceof Shape.Spot s ? Optional.of(new Round(s.at(), s.radius())) : Optional.empty();
    }

    private static List<Point> edge(Shape shape) {
        return shape instanceof Shape.Polygon p
                ? p.corners()
                : circle(round(shape).orElseThrow());
    }

    private static List<Point> circle(Round r) {
        return chords(List.of(
                new Corner(new Point(r.centre().x() + r.radius(), r.centre().y()), 1),
                new Corner(new Point(r.centre().x() - r.radius(), r.centre().y()), 1)));
    }

    /** A strip with round ends. */
    private static List<Point> ramp(Slot slot) {
        double length = slot.from().distance(slot.to());
        double ux = (slot.to().x() - slot.from().x()) / length;
        double uy = (slot.to().y() - slot.from().y()) / length;
        double half = slot.width() / 2;
        return chords(List.of(
                new Corner(new Point(slot.from().x() + half * uy, slot.from().y() - half * ux), 0),
                new Corner(new Point(slot.to().x() + half * uy, slot.to().y() - half * ux), 1),
                new Corner(new Point(slot.to().x() - half * uy, slot.to().y() + half * ux), 0),
                new Corner(new Point(slot.from().x() - half * uy, slot.from().y() + half * ux), 1)));
    }

    /** A closed line of straights and arcs as chords of 3 degrees whose ends lie on the arcs; centre by the formula of the bulge. */
    private static List<Point> chords(List<Corner> corners) {
        List<Point> all = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Point a = corners.get(i).at();
            Point b = corners.get((i + 1) % corners.size()).at();
            double bulge = corners.get(i).bulge();
            all.add(a);
            if (bulge != 0) {
                double k = (1 - bulge * bulge) / (4 * bulge);
                double cx = (a.x() + b.x()) / 2 - (b.y() - a.y()) * k;
                double cy = (a.y() + b.y()) / 2 + (b.x() - a.x()) * k;
                double sweep = 4 * StrictMath.atan(bulge);
                int steps = (int) Math.max(3, Math.ceil(Math.abs(Math.toDegrees(sweep)) / CHORD));
                double start = StrictMath.atan2(a.y() - cy, a.x() - cx);
                double radius = a.distance(new Point(cx, cy));
                for (int s = 1; s < steps; s++) {
                    double angle = start + sweep * s / steps;
                    all.add(new Point(cx + radius * StrictMath.cos(angle), cy + radius * StrictMath.sin(angle)));
                }
            }
        }
        return all;
    }
}
