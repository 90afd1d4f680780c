package org.runbend.optimizer.boards;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;

/**
 * A floor to be made of boards. Sizes in mm, seen from above.
 *
 * @param outline corners of the floor, once round
 * @param layers from the bottom up
 * @param cutouts what goes through some of the layers
 * @param packers solid ones that stand in the place of foam and board
 * @param loops the pipe, for the rules of joints
 * @param grooves the finished edge of the channels, arcs as short chords whose ends lie on them
 * @param ramps where a groove is deepened, likewise
 * @param supports ribs, battens and joists
 * @param making how boards are cut and laid
 * @param before boards that were cut before the floor changed
 */
public record BoardsProblem(
        List<Point> outline,
        List<Layer> layers,
        List<Cutout> cutouts,
        List<Packer> packers,
        List<Breakdown> loops,
        List<List<Point>> grooves,
        List<List<Point>> ramps,
        List<Support> supports,
        Making making,
        List<CutLayer> before) {
    /** Copies the lists. */
    public BoardsProblem {
        outline = List.copyOf(outline);
        layers = List.copyOf(layers);
        cutouts = List.copyOf(cutouts);
        packers = List.copyOf(packers);
        loops = List.copyOf(loops);
        grooves = grooves.stream().map(List::copyOf).toList();
        ramps = ramps.stream().map(List::copyOf).toList();
        supports = List.copyOf(supports);
        before = List.copyOf(before);
    }

    /** What was cut before in the place of a layer, of the same board and for the same. */
    public Optional<CutLayer> before(Layer layer) {
        List<CutLayer> like = before.stream().filter(b -> b.isLike(layer)).toList();
        long under = layers.subList(0, layers.indexOf(layer)).stream()
                .filter(l -> like.stream().anyMatch(b -> b.isLike(l)))
                .count();
        return like.stream().skip(under).findFirst();
    }

    /** What a layer is there for. */
    public enum Role {
        /** Lies under everything else. */
        INSULATION,
        /** Has the grooves. */
        ROUTED,
        /** Lies over the pipe. */
        COVER
    }

    /**
     * A layer of boards.
     *
     * @param code letter of its labels
     * @param role what it is there for
     * @param material the board of the catalog
     * @param name what a person calls it
     * @param thickness mm
     * @param sheets sizes on offer
     * @param grain whether the grain must run one way, along the length of a sheet
     * @param perimeterGap air to walls and things
     * @param density kg/m3
     */
    public record Layer(
            String code,
            Role role,
            String material,
            String name,
            double thickness,
            List<Sheet> sheets,
            boolean grain,
            double perimeterGap,
            double density) {
        /** Copies the list. */
        public Layer {
            sheets = List.copyOf(sheets);
        }
    }

    /**
     * A stock board.
     *
     * @param length along the grain
     * @param width across
     * @param cost minor units
     * @param price minor units
     */
    public record Sheet(double length, double width, long cost, long price) {}

    /**
     * Something that goes through layers.
     *
     * @param name what a person calls it
     * @param edge its edge without gap, round things as chords
     * @param round the same as a circle, if it is one
     * @param through the layers that are open there
     * @param gap air to boards
     * @param filling what stands in it
     */
    public record Cutout(
            String name, List<Point> edge, Optional<Round> round, Set<Role> through, double gap, Filling filling) {
        /** Copies edge and roles. */
        public Cutout {
            edge = List.copyOf(edge);
            through = Set.copyOf(through);
        }

        /** Whether a board may lie all round it. */
        public boolean encircled() {
            return filling != Filling.STANDING;
        }
    }

    /** What stands in an opening. */
    public enum Filling {
        /** Nothing, or what does not reach up through the room. */
        OPEN,
        /** Something up to the roof, over which no board with a hole is let down. */
        STANDING,
        /** A part of its own that is lifted out, as far from the edge inside as the boards are outside. */
        LID
    }

    /**
     * A solid packer: what bears on it would crush foam.
     *
     * @param name what it bears
     * @param edge its edge, round ones as chords
     * @param round the same as a circle, if it is one
     * @param height mm
     */
    public record Packer(String name, List<Point> edge, Optional<Round> round, double height) {
        /** Copies the edge. */
        public Packer {
            edge = List.copyOf(edge);
        }
    }

    /**
     * A circle.
     *
     * @param centre its middle
     * @param radius mm
     */
    public record Round(Point centre, double radius) {}

    /**
     * How boards are cut and laid.
     *
     * @param jointGap air between two boards
     * @param tolerance of the measured floor, left all round
     * @param scribe what named edges of the outline have more instead of air, by the number of the edge
     * @param kerf what lies between two parts on a stock board
     * @param trim what is cut off each edge of a stock board
     * @param leastPart least width and length of a part, so that it can be held down
     * @param saw whether parts must come apart by cuts from edge to edge
     * @param tool diameter of the cutter of the grooves
     * @param groove width of the groove on straights
     * @param bendGroove width of the groove at bends
     * @param pad diameter of the pockets at the ends of the pipe
     * @param depth of the groove
     */
    public record Making(
            double jointGap,
            double tolerance,
            Map<Integer, Double> scribe,
            double kerf,
            double trim,
            double leastPart,
            boolean saw,
            double tool,
            double groove,
            double bendGroove,
            double pad,
            double depth) {
        /** A groove is this much wider on each side where it meets a joint: own choice, over the 1 mm that boards shift. */
        public static final double FLARE = 1.5;

        /** Over this length beside a joint, as asked. */
        public static final double FLARE_LENGTH = 20;

        /**
         * What lies between two parts on a stock board, mm: what a saw takes, or what a cutter takes that goes round each; of
         * routed ones enough for the grooves to run out of both.
         */
        public double between(Role role) {
            double apart = saw ? kerf : Math.max(kerf, tool);
            return role == Role.ROUTED ? Math.max(apart, tool + Math.max(2, jointGap / 2)) : apart;
        }

        /** Copies the map. */
        public Making {
            scribe = Map.copyOf(scribe);
        }
    }
}
