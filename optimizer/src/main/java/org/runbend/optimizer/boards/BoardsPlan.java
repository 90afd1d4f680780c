package org.runbend.optimizer.boards;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.boards.BoardsProblem.Layer;
import org.runbend.optimizer.boards.BoardsProblem.Round;
import org.runbend.optimizer.boards.BoardsProblem.Sheet;
import org.runbend.optimizer.job.Point;

/**
 * A floor made of boards.
 *
 * @param problem what was asked
 * @param layers from the bottom up
 * @param fixing how the cover is held, where there is one
 */
public record BoardsPlan(BoardsProblem problem, List<LayerPlan> layers, Optional<FixingPlan> fixing) {
    /** Copies the list. */
    public BoardsPlan {
        layers = List.copyOf(layers);
    }

    /** Boards whose cover is not held yet. */
    public BoardsPlan(BoardsProblem problem, List<LayerPlan> layers) {
        this(problem, layers, Optional.empty());
    }

    /** The same boards with the cover held so. */
    public BoardsPlan with(FixingPlan held) {
        return new BoardsPlan(problem, layers, Optional.of(held));
    }

    /** The layers of a kind from the bottom up. */
    public List<LayerPlan> layers(BoardsProblem.Role role) {
        return layers.stream().filter(l -> l.layer().role() == role).toList();
    }

    /** Whether a machine routs the grooves before the boards come. */
    public boolean areRouted() {
        return !problem.making().saw() && !layers(BoardsProblem.Role.ROUTED).isEmpty();
    }

    /** From the underside to the top, mm. */
    public double height() {
        return layers.stream().mapToDouble(l -> l.layer().thickness()).sum();
    }

    /** Weight of the boards by floor, kg/m2, grooves and openings taken as full. */
    public double weightPerSquareMetre() {
        return layers.stream()
                .mapToDouble(l -> l.layer().thickness() / 1000 * l.layer().density())
                .sum();
    }

    /**
     * A layer.
     *
     * @param layer what it is
     * @param sheet the stock board it is cut from
     * @param boards how many are bought
     * @param bound fewer cannot do, whatever the joints, proved: by area
     * @param triedBound no fewer with joints at the places that were tried and parts packed by their bounding rectangles, if that
     *     was proved; else the bound
     * @param parts the parts in the order of their labels
     * @param joints where parts meet
     * @param breaches what of the wishes for joints could not be kept
     */
    public record LayerPlan(
            Layer layer,
            Sheet sheet,
            int boards,
            int bound,
            int triedBound,
            List<Part> parts,
            List<Joint> joints,
            List<Breach> breaches) {
        /** Copies the lists. */
        public LayerPlan {
            parts = List.copyOf(parts);
            joints = List.copyOf(joints);
            breaches = List.copyOf(breaches);
        }

        /** The same where another way found no higher bound for the joints it tried. */
        LayerPlan within(int bound) {
            return new LayerPlan(
                    layer, sheet, boards, this.bound, Math.min(triedBound, bound), parts, joints, breaches);
        }

        /** Parts that are cut from a board. */
        public List<Part> on(int board) {
            return parts.stream().filter(p -> p.spot().board() == board).toList();
        }
    }

    /**
     * A part as it lies on the floor. Closed lines do not repeat their start; arcs are chords whose ends lie on them.
     *
     * @param label what stands on it
     * @param edge its edge, anticlockwise
     * @param openings openings through it
     * @param rounds round openings through it
     * @param pockets grooves in it, run out beyond its edge at joints
     * @param ramps where its grooves are deepened
     * @param spot where it lies on its stock board
     */
    public record Part(
            String label,
            List<Point> edge,
            List<List<Point>> openings,
            List<Round> rounds,
            List<List<Point>> pockets,
            List<List<Point>> ramps,
            Spot spot) {
        /** Copies the lists. */
        public Part {
            edge = List.copyOf(edge);
            openings = openings.stream().map(List::copyOf).toList();
            rounds = List.copyOf(rounds);
            pockets = pockets.stream().map(List::copyOf).toList();
            ramps = ramps.stream().map(List::copyOf).toList();
        }

        /** A point of the floor as it lies on the stock board: turned by quarters anticlockwise, then moved; never mirrored. */
        public Point onBoard(Point p) {
            double minX = edge.stream().mapToDouble(Point::x).min().orElseThrow();
            double maxX = edge.stream().mapToDouble(Point::x).max().orElseThrow();
            double minY = edge.stream().mapToDouble(Point::y).min().orElseThrow();
            double maxY = edge.stream().mapToDouble(Point::y).max().orElseThrow();
            return switch (spot.quarters()) {
                case 0 -> new Point(spot.x() + p.x() - minX, spot.y() + p.y() - minY);
                case 1 -> new Point(spot.x() + maxY - p.y(), spot.y() + p.x() - minX);
                default -> new Point(spot.x() + maxX - p.x(), spot.y() + maxY - p.y());
            };
        }

        /** A closed line of the floor as it lies on the stock board. */
        public List<Point> onBoard(List<Point> line) {
            List<Point> moved = new ArrayList<>();
            line.forEach(p -> moved.add(onBoard(p)));
            return moved;
        }
    }

    /**
     * Where a part lies on its stock board.
     *
     * @param board number of the board, from 0
     * @param x left end of its bounding rectangle there, mm
     * @param y lower end of it, mm
     * @param quarters turned by so many quarters, anticlockwise, 0 to 2
     */
    public record Spot(int board, double x, double y, int quarters) {}

    /**
     * A line along which parts meet, in the middle of the gap.
     *
     * @param from start
     * @param to end
     */
    public record Joint(Point from, Point to) {}

    /** A wish for joints that could not be kept, in the order of how much it matters. */
    public enum Wish {
        /** Joints cross grooves square and 50 mm from a bend. */
        SQUARE,
        /** Joints lie away from the long side of a groove. */
        BESIDE,
        /** Joints lie on supports. */
        SUPPORTED,
        /** Joints lie away from those of the layer below. */
        STAGGERED
    }

    /**
     * A wish that a joint does not keep.
     *
     * @param wish which
     * @param at where, the middle of the stretch
     */
    public record Breach(Wish wish, Point at) {}
}
