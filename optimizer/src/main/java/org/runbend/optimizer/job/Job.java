package org.runbend.optimizer.job;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.catalog.source.Unit;
import org.runbend.optimizer.heat.HeatRequest;

/**
 * One order as it was read, with the products it names resolved. Sizes in mm, temperatures in degrees C. It is made of parts;
 * a change of one thing is a change of its part.
 *
 * @param heading what stands over every sheet
 * @param supply what can be bought and what is at hand
 * @param floor the floor
 * @param layout how the loop is to be laid
 * @param pipe the pipe wanted
 * @param plates the plates wanted
 * @param build what lies under and over the pipe, if given
 * @param heating temperatures and pump, if given
 * @param source what the file was and what a person should know of it
 */
public record Job(
        Heading heading,
        Supply supply,
        FloorPlan floor,
        Layout layout,
        PipeRequest pipe,
        PlateRequest plates,
        Optional<Build> build,
        Optional<Heating> heating,
        Source source) {

    /**
     * What stands over every sheet.
     *
     * @param title shown on every sheet
     * @param order order number
     * @param customer optional text
     * @param date optional text; nothing else dates an output
     * @param revision optional text
     */
    public record Heading(
            String title, String order, Optional<String> customer, Optional<String> date, Optional<String> revision) {}

    /**
     * What a job can be made of.
     *
     * @param catalog the catalog that it names
     * @param shelf opened coils and offcuts at hand
     */
    public record Supply(Catalog catalog, Shelf shelf) {}

    /**
     * The file that a job was read from.
     *
     * @param fingerprint SHA-256 of job, what it extends, catalog and shelf as read, hexadecimal
     * @param warnings what a person should look at before anything is cut, one sentence each
     * @param measured how each length of a measured floor fits; empty if the outline was given
     * @param written what the file says beside the numbers: unit, names of corners, what it left to us
     */
    public record Source(String fingerprint, List<String> warnings, List<MeasuredLength> measured, Written written) {
        /** Copies the lists. */
        public Source {
            warnings = List.copyOf(warnings);
            measured = List.copyOf(measured);
        }

        /** A file with an outline that nobody need look at twice. */
        public static Source plain(String fingerprint) {
            return new Source(fingerprint, List.of(), List.of(), Written.PLAIN);
        }
    }

    /** The title on every sheet. */
    public String title() {
        return heading.title;
    }

    /** The order number. */
    public String order() {
        return heading.order;
    }

    /** Who it is for, if the job says it. */
    public Optional<String> customer() {
        return heading.customer;
    }

    /** The date, if the job gives one. */
    public Optional<String> date() {
        return heading.date;
    }

    /** The revision, if the job gives one. */
    public Optional<String> revision() {
        return heading.revision;
    }

    /** The catalog that it names. */
    public Catalog catalog() {
        return supply.catalog;
    }

    /** Opened coils and offcuts at hand. */
    public Shelf shelf() {
        return supply.shelf;
    }

    /** SHA-256 of what was read, hexadecimal. */
    public String fingerprint() {
        return source.fingerprint;
    }

    /** What a person should look at before anything is cut, one sentence each. */
    public List<String> warnings() {
        return source.warnings;
    }

    /** How each length of a measured floor fits; empty if the outline was given. */
    public List<MeasuredLength> measured() {
        return source.measured;
    }

    /** What the file says beside the numbers. */
    public Written written() {
        return source.written;
    }

    /**
     * How the file was written, as far as those must know it who confirm the floor.
     *
     * @param unit the unit of numbers without one
     * @param corners the customer's names of the outline's corners, in its order; empty if there are none
     * @param assumptions what the file left to us and matters on the floor, one sentence each
     * @param autoPrice whether it leaves to us what a place left out is worth
     */
    public record Written(Unit unit, List<String> corners, List<String> assumptions, boolean autoPrice) {
        /** Nothing but numbers in mm. */
        public static final Written PLAIN = new Written(Unit.MM, List.of(), List.of(), false);

        /** Copies the lists. */
        public Written {
            corners = List.copyOf(corners);
            assumptions = List.copyOf(assumptions);
        }
    }

    /** Whether the pipe is too stiff for half circles from run to run: its least radius is over half the spacing. */
    public boolean isStiff() {
        return pipe.product().fittedRadius() > layout.spacing() / 2 + 1e-9;
    }

    /**
     * Radius at which pipe turns into a hole and bends on its way to one, mm: by hand where half the spacing is enough for
     * that, so that no bending aid is needed for the holes alone, else the least one as fitted with the aid.
     */
    public double turnRadius() {
        double byHand = pipe.product().handRadius();
        return byHand <= layout.spacing() / 2 + 1e-9 ? byHand : pipe.product().fittedRadius();
    }

    /**
     * Length of the slot from the hole's axis, mm: a pipe that turns at radius R over a travel h to the face that it pierces
     * begins to dip sqrt(2 R h - h^2) before it (chord geometry), and half its diameter more. The travel is at most R; it
     * is half the pipe and the plate with the foam under them downward, half the pipe and the cover upward, none through a
     * wall. Where the build-up is not given, the pipe may need all of R.
     */
    public double slotLength() {
        double r = turnRadius();
        double outer = pipe.product().outer();
        double plate = groove().depth() - outer;
        double travel =
                switch (floor.port().turn()) {
                    case DOWN ->
                        build.map(b -> outer / 2 + plate + b.under() + spare(b)).orElse(r);
                    case UP -> build.map(b -> outer / 2 + b.coverThickness()).orElse(r);
                    case LEVEL -> 0.0;
                };
        double h = Math.min(r, travel);
        return Math.sqrt(2 * r * h - h * h) + outer / 2;
    }

    /** What the insulation that is bought is thicker than the one asked for, mm. */
    private double spare(Build b) {
        return insulationLaid(b) - b.laidUnder();
    }

    /** The insulation that is laid under the board, as thick as it is bought, mm: the thinnest stack that is enough. */
    public double insulationLaid(Build b) {
        return InsulationStack.of(catalog(), b.laidUnder())
                .map(InsulationStack::thickness)
                .orElse(b.laidUnder());
    }

    /** The groove that the pipe lies in. */
    public Groove groove() {
        return Groove.of(pipe.product(), plates.products(), catalog().routing());
    }

    /** Whether the designer drew the loop. */
    public boolean hasOwnLoop() {
        return !layout.loop().isEmpty();
    }

    /** The same job without what tells one order from another: jobs of equal floors and equal wishes are equal then. */
    public Job withoutOrder() {
        Heading none = new Heading("", "", Optional.empty(), Optional.empty(), Optional.empty());
        Source plain = new Source("", source.warnings, source.measured, source.written);
        return new Job(none, supply, floor, layout, pipe, plates, build, heating, plain);
    }

    /** The same job, as settled as it is, for the order of another that is equal but for that. */
    public Job forOrderOf(Job other) {
        return new Job(other.heading, supply, floor, layout, pipe, plates, build, heating, other.source);
    }

    /** The same job with another floor and layout. */
    public Job with(FloorPlan otherFloor, Layout otherLayout) {
        return new Job(heading, supply, otherFloor, otherLayout, pipe, plates, build, heating, source);
    }

    /** The same job with another shelf. */
    public Job with(Shelf otherShelf) {
        Supply other = new Supply(supply.catalog, otherShelf);
        return new Job(heading, other, floor, layout, pipe, plates, build, heating, source);
    }

    /** The same job with its sizes told in another unit on papers and drawings. */
    public Job writtenIn(Unit unit) {
        Written as = new Written(unit, source.written.corners, source.written.assumptions, source.written.autoPrice);
        Source told = new Source(source.fingerprint, source.warnings, source.measured, as);
        return new Job(heading, supply, floor, layout, pipe, plates, build, heating, told);
    }

    /** The same job with other wishes for loop, pipe and plates. */
    public Job with(Layout otherLayout, PipeRequest otherPipe, PlateRequest otherPlates) {
        return new Job(heading, supply, floor, otherLayout, otherPipe, otherPlates, build, heating, source);
    }

    /**
     * A length of a measured floor.
     *
     * @param from name of a corner
     * @param to name of another corner
     * @param length as measured, mm
     * @param residual measured less adjusted length, mm
     */
    public record MeasuredLength(String from, String to, double length, double residual) {
        /** A tape on a bare floor reads to a few millimetres; a residual over this wants a person's eye (common practice), mm. */
        public static final double DOUBTFUL = 5;

        /** A residual beyond which nobody should cut a board by the lengths, mm. */
        public static final double WRONG = 15;

        /** The length on the adjusted floor, mm. */
        public double adjusted() {
            return length - residual;
        }
    }

    /**
     * The floor as the customer gave it.
     *
     * @param outline corners in order, anticlockwise or clockwise
     * @param marks what a person recognises the floor by
     * @param keepOuts what no pipe may touch
     * @param unheated where heat is pointless
     * @param supports ribs, battens and joists
     * @param port where flow and return come through
     * @param below what lies under the floor, where nobody may drill
     */
    public record FloorPlan(
            List<Point> outline,
            List<FloorMark> marks,
            List<KeepOut> keepOuts,
            List<Unheated> unheated,
            List<Support> supports,
            Port port,
            List<Below> below) {
        /** Copies the lists. */
        public FloorPlan {
            below = List.copyOf(below);
            outline = List.copyOf(outline);
            marks = List.copyOf(marks);
            keepOuts = List.copyOf(keepOuts);
            unheated = List.copyOf(unheated);
            supports = List.copyOf(supports);
        }

        /** A floor without supports. */
        public FloorPlan(
                List<Point> outline,
                List<FloorMark> marks,
                List<KeepOut> keepOuts,
                List<Unheated> unheated,
                Port port) {
            this(outline, marks, keepOuts, unheated, List.of(), port, List.of());
        }

        /** The same floor with other keep-outs and supports. */
        public FloorPlan with(List<KeepOut> otherKeepOuts, List<Support> otherSupports) {
            return new FloorPlan(outline, marks, otherKeepOuts, unheated, otherSupports, port, below);
        }

        /** The same floor with another reach of its port, mm. */
        public FloorPlan withReach(double reach) {
            return with(new Port(port.at(), reach, port.turn(), port.holes()));
        }

        /** The same floor with another port. */
        public FloorPlan with(Port other) {
            return new FloorPlan(outline, marks, keepOuts, unheated, supports, other, below);
        }

        /** What plates keep off: keep-outs, and supports as if they were some without clearance. */
        public List<KeepOut> plateless() {
            return Stream.concat(
                            keepOuts.stream(),
                            supports.stream().map(s -> new KeepOut(s.name(), KeepOut.Kind.OTHER, s.region(), 0)))
                    .toList();
        }

        /** SHA-256 of every number and name of the floor, hexadecimal: alike for floors that differ in their writing only. */
        public String fingerprint() {
            return FloorFingerprint.of(this);
        }
    }

    /**
     * A mark.
     *
     * @param text what it says
     * @param at where it stands: the point given, or the middle of the outline edge given
     * @param edge index of the outline edge, from corner i to i + 1; -1 if a point was given
     */
    public record FloorMark(String text, Point at, int edge) {}

    /**
     * A region that needs no heat.
     *
     * @param name what a person calls it
     * @param region its region
     */
    public record Unheated(String name, Shape.Polygon region) {}

    /**
     * Where flow and return come through.
     *
     * @param at where the pipes meet on the other side of the floor or wall
     * @param reach how far from it the loop may begin and end, mm
     * @param turn which way the pipe leaves the floor
     * @param holes where it goes through, a pair for each loop; empty if the plan is to choose
     */
    public record Port(Point at, double reach, Turn turn, List<HolePair> holes) {
        /** Copies the list. */
        public Port {
            holes = List.copyOf(holes);
        }

        /** A port whose holes are to be chosen, down through the floor. */
        public Port(Point at, double reach) {
            this(at, reach, Turn.DOWN, List.of());
        }

        /** The same port with other holes. */
        public Port with(List<HolePair> others) {
            return new Port(at, reach, turn, others);
        }
    }

    /** Which way the pipe leaves the floor. */
    public enum Turn {
        /** Through the floor. */
        DOWN,
        /** Through the cover, into what stands on the floor. */
        UP,
        /** Straight on, through the wall. */
        LEVEL
    }

    /**
     * The holes of a loop.
     *
     * @param flow middle of the hole of the flow, mm
     * @param back middle of the hole of the return, mm
     */
    public record HolePair(Point flow, Point back) {}

    /**
     * Something under the floor.
     *
     * @param name what a person calls it
     * @param region where no hole and no screw goes
     */
    public record Below(String name, Shape.Polygon region) {}

    /**
     * How the loop is laid.
     *
     * @param grid the lattice that it lies on
     * @param aim what makes a loop a good one
     * @param pipeRules where pipe may not, or must, go
     * @param loop the designer's own loop; none if one is to be laid
     * @param count how many loops, and whether they are fitted to coils
     */
    public record Layout(Grid grid, Aim aim, List<PipeRule> pipeRules, DrawnLoop loop, Count count) {
        /** Copies the lists. */
        public Layout {
            pipeRules = List.copyOf(pipeRules);
        }

        /** One loop to be laid without rules for pipe. */
        public Layout(Grid grid, Aim aim) {
            this(grid, aim, List.of(), DrawnLoop.NONE, Count.ONE);
        }

        /** Centre to centre of neighbouring runs, mm. */
        public double spacing() {
            return grid.spacing;
        }

        /** Centreline to outline, mm. */
        public double edge() {
            return grid.edge;
        }

        /** Direction of the lattice, degrees from the x axis, 0 to under 90; empty: free. */
        public OptionalDouble along() {
            return grid.along;
        }

        /** Wanted direction of the runs. */
        public RunAxis axis() {
            return grid.axis;
        }

        /** What leaving a node out costs, in turns. */
        public PlacePrice leftOutPrice() {
            return aim.leftOutPrice;
        }

        /** What decides among loops of equal turns. */
        public Prefer prefer() {
            return aim.prefer;
        }

        /** How many loops; empty: the fewest that the limits of the pipe allow. */
        public OptionalInt loops() {
            return count.loops;
        }

        /** Whether loops a little longer than a coil are shortened to it. */
        public boolean fitCoil() {
            return count.fitCoil;
        }

        /** The same layout with other rules for pipe. */
        public Layout with(List<PipeRule> others) {
            return new Layout(grid, aim, others, loop, count);
        }

        /** The same layout, the loop to be laid by us. */
        public Layout withoutLoop() {
            return new Layout(grid, aim, pipeRules, DrawnLoop.NONE, count);
        }

        /** The same layout with so many loops. */
        public Layout withLoops(int number) {
            return new Layout(grid, aim, pipeRules, loop, new Count(OptionalInt.of(number), count.fitCoil));
        }

        /** The same layout, loops shortened to a coil. */
        public Layout withFit() {
            return new Layout(grid, aim, pipeRules, loop, new Count(count.loops, true));
        }

        /** The same layout with another distance from the outline, mm. */
        public Layout withEdge(double other) {
            return with(new Grid(grid.spacing, other, grid.along, grid.axis));
        }

        /** The same layout with another price for leaving a node out. */
        public Layout withPrice(PlacePrice price) {
            return with(new Aim(price, aim.prefer));
        }

        /** The same layout with something else to decide among loops of equal turns. */
        public Layout with(Prefer other) {
            return with(new Aim(aim.leftOutPrice, other));
        }

        /** The same layout with runs wanted along an axis of a lattice turned by so many degrees. */
        public Layout with(double angle, RunAxis other) {
            return with(new Grid(grid.spacing, grid.edge, OptionalDouble.of(angle), other));
        }

        private Layout with(Grid other) {
            return new Layout(other, aim, pipeRules, loop, count);
        }

        private Layout with(Aim other) {
            return new Layout(grid, other, pipeRules, loop, count);
        }
    }

    /**
     * The lattice that a loop lies on.
     *
     * @param spacing centre to centre of neighbouring runs, mm
     * @param edge centreline to outline, mm
     * @param along direction of the lattice, degrees from the x axis, 0 to under 90; empty: free
     * @param axis wanted direction of the runs
     */
    public record Grid(double spacing, double edge, OptionalDouble along, RunAxis axis) {
        /** A lattice in whatever direction serves the floor best. */
        public static Grid free(double spacing, double edge) {
            return new Grid(spacing, edge, OptionalDouble.empty(), RunAxis.FREE);
        }
    }

    /**
     * What makes a loop a good one.
     *
     * @param leftOutPrice what leaving a node out costs
     * @param prefer what decides among loops of equal turns
     */
    public record Aim(PlacePrice leftOutPrice, Prefer prefer) {}

    /**
     * How many loops.
     *
     * @param loops how many; empty: the fewest that the limits of the pipe allow
     * @param fitCoil whether loops a little longer than a coil are shortened to it
     */
    public record Count(OptionalInt loops, boolean fitCoil) {
        /** One loop as long as it comes. */
        public static final Count ONE = new Count(OptionalInt.of(1), false);
    }

    /** Wanted direction of the runs. */
    public enum RunAxis {
        /** The longer side of the floor. */
        FREE,
        /** Along x. */
        X,
        /** Along y. */
        Y
    }

    /** What decides among loops of equal turns. */
    public enum Prefer {
        /** Long runs in the wanted direction. */
        LONG_RUNS,
        /** Flow beside return. */
        EVEN_HEAT
    }

    /**
     * The pipe wanted.
     *
     * @param product the pipe
     * @param flowTail pipe from the port to the valve on the flow side, mm
     * @param returnTail likewise on the return side, mm
     * @param allowance share added to the cut, 0 or more
     * @param loopLimit longest cut allowed, mm
     */
    public record PipeRequest(
            Pipe product, double flowTail, double returnTail, double allowance, OptionalDouble loopLimit) {
        /** The same request for another pipe. */
        public PipeRequest of(Pipe other) {
            return new PipeRequest(other, flowTail, returnTail, allowance, loopLimit);
        }

        /** The same pipe with another longest cut, mm. */
        public PipeRequest limitedTo(double limit) {
            return new PipeRequest(product, flowTail, returnTail, allowance, OptionalDouble.of(limit));
        }
    }

    /**
     * The plates wanted.
     *
     * @param products plates that may be used, in the order of the job
     * @param share how much of the floor they cover
     * @param gaps what they keep off
     * @param pieces what pieces they may be cut to
     */
    public record PlateRequest(List<SpreaderPlate> products, Share share, Gaps gaps, Pieces pieces) {
        /** Copies the list. */
        public PlateRequest {
            products = List.copyOf(products);
        }

        /** Share of the plateable length to be covered, 0 to 1. */
        public double coverage() {
            return share.coverage;
        }

        /** Whether the coverage is to be chosen by the heat wanted; {@link #coverage} then counts for nothing. */
        public boolean byHeat() {
            return share.byHeat;
        }

        /** Share of each stretch to be covered at least, 0 to 1. */
        public double leastPerRun() {
            return share.leastPerRun;
        }

        /** Distance kept from each bend, mm. */
        public double bendClearance() {
            return gaps.bend;
        }

        /** Between two pieces of a run, mm. */
        public double gap() {
            return gaps.between;
        }

        /** Distance of a plate body from a bare keep-out, mm. */
        public double plateClearance() {
            return gaps.keepOut;
        }

        /** Shortest piece, mm. */
        public double minPiece() {
            return pieces.least;
        }

        /** Longest piece, mm; infinite where any length will do. */
        public double maxPiece() {
            return pieces.most;
        }

        /** How many different lengths the pieces may have, 1 or more, if that is limited. */
        public OptionalInt maxLengths() {
            return pieces.lengths;
        }

        /** The same request with other plates and another coverage. */
        public PlateRequest with(List<SpreaderPlate> others, double coverage) {
            return new PlateRequest(others, new Share(coverage, share.leastPerRun, false), gaps, pieces);
        }

        /** The same request with another limit of lengths. */
        public PlateRequest withLengths(OptionalInt most) {
            return new PlateRequest(products, share, gaps, new Pieces(pieces.least, pieces.most, most));
        }

        /** The same request with another least share for each run. */
        public PlateRequest withLeastPerRun(double least) {
            return new PlateRequest(products, new Share(share.coverage, least, share.byHeat), gaps, pieces);
        }
    }

    /**
     * How much of the floor plates cover.
     *
     * @param coverage share of the plateable length to be covered, 0 to 1
     * @param leastPerRun share of each stretch to be covered at least, 0 to 1
     * @param byHeat whether the coverage is to be chosen by the heat wanted; {@code coverage} then counts for nothing
     */
    public record Share(double coverage, double leastPerRun, boolean byHeat) {
        /** A share of the whole, however it is spread. */
        public static Share of(double coverage) {
            return new Share(coverage, 0, false);
        }
    }

    /**
     * What plates keep off.
     *
     * @param bend distance kept from each bend, mm
     * @param between gap between two pieces of a run, mm
     * @param keepOut distance of a plate body from a bare keep-out, mm
     */
    public record Gaps(double bend, double between, double keepOut) {}

    /**
     * What pieces plates may be cut to.
     *
     * @param least shortest piece, mm
     * @param most longest piece, mm; infinite where any length will do
     * @param lengths how many different lengths, 1 or more, if that is limited
     */
    public record Pieces(double least, double most, OptionalInt lengths) {
        /** Any pieces from a least one on, mm. */
        public static Pieces from(double least) {
            return new Pieces(least, Double.POSITIVE_INFINITY, OptionalInt.empty());
        }
    }

    /**
     * What lies under and over the pipe. Read, checked and kept.
     *
     * @param insulation thickness under the pipe, mm; what stays of a board of foam under the groove is part of it
     * @param coverThickness mm
     * @param coverMaterial board of the catalog
     * @param finishResistance thermal resistance of the floor covering, m2 K/W
     * @param board what the groove is cut into, if the job says it
     * @param boards how the floor is to be made of boards, if that is asked
     */
    public record Build(
            double insulation,
            double coverThickness,
            String coverMaterial,
            double finishResistance,
            Optional<RoutedBoard> board,
            Optional<BoardsWish> boards) {
        /** A build-up whose boards are not asked for. */
        public Build(
                double insulation,
                double coverThickness,
                String coverMaterial,
                double finishResistance,
                Optional<RoutedBoard> board) {
            this(insulation, coverThickness, coverMaterial, finishResistance, board, Optional.empty());
        }

        /** From the bottom of the groove to the bottom of the floor, mm. */
        public double under() {
            return insulation + board.map(b -> b.rest() - b.insulating()).orElse(0.0);
        }

        /** What a person calls the board that covers the pipe. */
        public String coverName(Catalog catalog) {
            return catalog.findBoard(coverMaterial).map(Board::name).orElse(coverMaterial);
        }

        /** Insulation to be laid under the board, mm. */
        public double laidUnder() {
            return insulation - board.map(RoutedBoard::insulating).orElse(0.0);
        }
    }

    /**
     * What the groove is cut into.
     *
     * @param board a board of the catalog
     * @param thickness mm
     * @param rest what stays of it under the groove, mm
     */
    public record RoutedBoard(Board board, double thickness, double rest) {
        /** What of it insulates under the pipe, mm: what stays of foam; wood counts for nothing. */
        public double insulating() {
            return board.kind() == Board.Kind.INSULATION ? rest : 0;
        }
    }

    /**
     * Temperatures and pump. Read, checked and kept.
     *
     * @param coolant coolant of the catalog
     * @param flow flow temperature, degrees C
     * @param room degrees C
     * @param outside degrees C
     * @param coldest what the coolant must not freeze at, degrees C, if the job says it
     * @param pump pump of the catalog
     * @param namesCoolant whether the job names the coolant; else it is taken for granted
     * @param request what else the job says of heat
     */
    public record Heating(
            String coolant,
            double flow,
            double room,
            double outside,
            OptionalDouble coldest,
            Optional<String> pump,
            boolean namesCoolant,
            HeatRequest request) {
        /** With a coolant that is named. */
        public Heating(
                String coolant,
                double flow,
                double room,
                double outside,
                OptionalDouble coldest,
                Optional<String> pump) {
            this(coolant, flow, room, outside, coldest, pump, true, HeatRequest.NONE);
        }
    }
}
