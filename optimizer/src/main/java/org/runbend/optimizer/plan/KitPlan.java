package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.runbend.catalog.product.Pipe;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.channel.ChannelPlan;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.packing.Parcel;
import org.runbend.optimizer.plates.PlateBody;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;
import org.runbend.optimizer.setout.Frame;
import org.runbend.optimizer.setout.SetOut;
import org.runbend.optimizer.setout.SetOutProblem;
import org.runbend.optimizer.setout.SettingOut;
import org.runbend.optimizer.tape.TapeSheet;

/**
 * Everything that leaves: what papers, drawings and data files say stands here, so that none of them computes.
 *
 * @param job the job
 * @param tape what a person can measure of the floor and the holes in it
 * @param laid the loops on the floor
 * @param plates plates
 * @param coils coils
 * @param box everything that goes in the box
 * @param channel the groove for the pipe, if a cutter of the catalog fits it
 * @param heat what the floor gives, if the job says what it is built of and what heats it
 * @param plateOptions what plates would cost if less were asked of them, if that was worked out
 * @param boards the boards the floor is made of, if the job asks for them
 * @param sensor where the floor's sensor lies, if the job has one and a plate
 * @param checks what was checked and what came of it
 * @param remarks what a person should know
 */
public record KitPlan(
        Job job,
        TapeSheet tape,
        LaidPart laid,
        PlatePlan plates,
        CoilPlan coils,
        Box box,
        Optional<ChannelPlan> channel,
        Optional<KitHeat> heat,
        Optional<PlateOptions> plateOptions,
        Optional<BoardsPlan> boards,
        Optional<SensorPlan> sensor,
        List<PlanCheck> checks,
        List<Remark> remarks) {
    private static final double RIGHT_ANGLE = 90;

    /** Copies the lists. */
    public KitPlan {
        checks = List.copyOf(checks);
        remarks = List.copyOf(remarks);
    }

    /** Radius at which bends are laid, mm. */
    public double bendRadius() {
        return laid.bendRadius();
    }

    /** Where the lattice lies. */
    public LatticePlace lattice() {
        return laid.lattice();
    }

    /** The loops. */
    public List<LoopPlan> loops() {
        return laid.loops();
    }

    /** The heated floor that stays bare, why, and what would free it, the largest part first. */
    public List<BareFloor> bareFloor() {
        return laid.bareFloor();
    }

    /** Share of the heated floor that the loops serve, %. */
    public double served() {
        return laid.served();
    }

    /** What lies in parts that were already routed. */
    public List<KeptPipe> kept() {
        return laid.kept();
    }

    /** The four corners of the floor that a piece of plate covers, mm. */
    public List<Point> body(PlatePiece piece) {
        return PlateBody.corners(loops().stream().map(LoopPlan::breakdown).toList(), job.catalog(), piece);
    }

    /** Where the middle line of a piece of plate begins and ends, mm. */
    public List<Point> centreLine(PlatePiece piece) {
        return PlateBody.centreLine(loops().stream().map(LoopPlan::breakdown).toList(), piece);
    }

    /** Everything that goes in the box. */
    public List<BoxItem> items() {
        return box.items();
    }

    /** Sum of the prices, minor units. */
    public long total() {
        return box.total();
    }

    /** Of the box without packing, kg. */
    public double weight() {
        return box.weight();
    }

    /** The work of cutting plates and mounting coils. */
    public SawWork sawWork() {
        return SawWork.of(job.catalog().labour(), plates, coils);
    }

    /** The work of cutting and fitting the kit. */
    public KitWork work() {
        return KitWork.of(job.catalog().labour(), loops(), plates, coils);
    }

    /** The holes of all loops, flow before return. */
    public List<PortHole> holes() {
        return PortHole.of(job, loops());
    }

    /** The boxes it travels in, and what lies in each. */
    public List<Parcel> parcels() {
        return KitParcels.of(this);
    }

    /** How many boxes any way of packing takes at least. */
    public int parcelsAtLeast() {
        return KitParcels.atLeast(this);
    }

    /** How the floor is marked out. */
    public SetOut setOut() {
        List<SetOutProblem.Plate> pieces = plates.pieces().stream()
                .map(p -> new SetOutProblem.Plate(
                        body(p),
                        p.places().stream()
                                .map(at -> new SetOutProblem.RunOf(at.loop(), at.element()))
                                .toList()))
                .toList();
        return new SettingOut()
                .solve(new SetOutProblem(
                        job,
                        isOnLattice() ? new Frame(lattice().origin(), lattice().angle()) : longestRun(),
                        isOnLattice() ? lattice().spacing() : 0,
                        loops().stream()
                                .map(l -> new SetOutProblem.Loop(l.name(), l.breakdown()))
                                .toList(),
                        pieces));
    }

    /** The direction of the longest run, turned by whole right angles as near to x as can be. */
    private Frame longestRun() {
        Element longest = null;
        for (LoopPlan loop : loops()) {
            for (Element e : loop.breakdown().elements()) {
                if (e instanceof Element.Run && (longest == null || e.length() > longest.length() + 1e-6)) {
                    longest = e;
                }
            }
        }
        if (longest == null) {
            return new Frame(loops().get(0).breakdown().elements().get(0).from(), 0);
        }
        Point a = longest.from();
        Point b = longest.to();
        double angle = Math.toDegrees(StrictMath.atan2(b.y() - a.y(), b.x() - a.x()));
        return new Frame(a, angle - RIGHT_ANGLE * Math.rint(angle / RIGHT_ANGLE));
    }

    /** What the job names and the box does not hold, with how much of it is needed, one phrase each. */
    public List<String> notSupplied() {
        List<String> missing = new ArrayList<>(
                Supplies.missing(job, loops().stream().map(LoopPlan::breakdown).toList(), heat()));
        sensor().filter(s -> s.at().isPresent()).map(Supplies::conduit).ifPresent(missing::add);
        boards().flatMap(BoardsPlan::fixing)
                .filter(f -> !f.screws().isEmpty())
                .map(Supplies::screws)
                .ifPresent(missing::add);
        return missing;
    }

    /** Who keeps what is left of a coil: the customer, who gets it whole, or the shelf of the workshop. */
    public String restGoesTo(CoilPlan.CoilCut coil) {
        return coil.id().isPresent() || job.pipe().product().supply() == Pipe.Supply.CUT ? "shelf" : "customer";
    }

    /** Whether the loop lies on a lattice; one that the designer drew does not, and has no bounds and leaves nothing out. */
    public boolean isOnLattice() {
        return !job.hasOwnLoop();
    }

    /** Whether every check passed or only warns. */
    public boolean isSound() {
        return checks.stream().noneMatch(c -> c.verdict() == PlanCheck.Verdict.FAIL);
    }

    /** The remarks in words. */
    public List<String> remarkWords() {
        return remarks.stream().map(Remark::words).toList();
    }

    /** The same plan with one more thing to know, before the others. */
    public KitPlan withRemark(Remark remark) {
        List<Remark> more = Stream.concat(Stream.of(remark), remarks.stream()).toList();
        return new KitPlan(
                job, tape, laid, plates, coils, box, channel, heat, plateOptions, boards, sensor, checks, more);
    }

    /** The same plan for another order of an equal floor: the jobs differ in their heading and in the file they were read from. */
    public KitPlan forOrder(Job other) {
        return new KitPlan(
                job.forOrderOf(other),
                tape,
                laid,
                plates,
                coils,
                box,
                channel,
                heat,
                plateOptions,
                boards,
                sensor,
                checks,
                remarks);
    }

    /** The same plan with what its plates would cost if less were asked of them. */
    public KitPlan with(PlateOptions options) {
        return new KitPlan(
                job,
                tape,
                laid,
                plates,
                coils,
                box,
                channel,
                heat,
                Optional.of(options),
                boards,
                sensor,
                checks,
                remarks);
    }

    /**
     * The loops on the floor.
     *
     * @param bendRadius radius at which bends are laid, mm
     * @param lattice where the lattice lies
     * @param loops the loops
     * @param served share of the heated floor that they serve, %
     * @param bareFloor the heated floor that stays bare, why, and what would free it, the largest part first
     * @param kept what lies in parts that were already routed
     */
    public record LaidPart(
            double bendRadius,
            LatticePlace lattice,
            List<LoopPlan> loops,
            double served,
            List<BareFloor> bareFloor,
            List<KeptPipe> kept) {
        /** Copies the lists. */
        public LaidPart {
            loops = List.copyOf(loops);
            bareFloor = List.copyOf(bareFloor);
            kept = List.copyOf(kept);
        }
    }

    /**
     * What goes in the box.
     *
     * @param items lines of the pick list
     * @param total sum of the prices, minor units
     * @param weight without packing, kg
     */
    public record Box(List<BoxItem> items, long total, double weight) {
        /** Copies the list. */
        public Box {
            items = List.copyOf(items);
        }

        /** A box of lines, summed. */
        public static Box of(List<BoxItem> items) {
            return new Box(
                    items,
                    items.stream().mapToLong(BoxItem::sum).sum(),
                    items.stream().mapToDouble(i -> i.weight() * i.quantity()).sum());
        }
    }

    /**
     * Where the lattice lies.
     *
     * @param origin a node, mm
     * @param angle degrees
     * @param spacing mm
     * @param reachable heated nodes that a loop through the port can reach
     */
    public record LatticePlace(Point origin, double angle, double spacing, int reachable) {
        /** What stands for the lattice of a loop that lies on none. */
        public static LatticePlace none(double spacing) {
            return new LatticePlace(new Point(0, 0), 0, spacing, 0);
        }
    }

    /**
     * A loop.
     *
     * @param name A, B, ...
     * @param breakdown runs and bends in order of flow
     * @param floorLength pipe on the floor, mm
     * @param cutLength pipe to cut, tails and allowance included, whole mm
     * @param turns corners of the closed cycle
     * @param leftOut reachable nodes not served
     * @param turnBound least turns at this leftOut, if proved
     * @param pieceCost what the straight pieces cost, where they have a price
     * @param objective turns + price of what is left out + that of straight pieces, in the unit of the job's prices
     * @param objectiveBound least objective, if proved
     * @param bare places of the heated nodes not served, mm
     */
    public record LoopPlan(
            String name,
            Breakdown breakdown,
            double floorLength,
            long cutLength,
            int turns,
            int leftOut,
            OptionalInt turnBound,
            int pieceCost,
            int objective,
            OptionalInt objectiveBound,
            List<Point> bare) {
        /** Copies the list. */
        public LoopPlan {
            bare = List.copyOf(bare);
        }

        /** Number of the valve outlet that the loop goes to: 1 for loop A, 2 for B, ... */
        public int outlet() {
            return name.charAt(0) - 'A' + 1;
        }
    }

    /**
     * A line of the pick list.
     *
     * @param sku part number
     * @param name what a person calls it
     * @param quantity whole number over 0
     * @param unit what one of it is
     * @param price of one, minor units
     * @param weight of one, kg
     */
    public record BoxItem(String sku, String name, long quantity, String unit, long price, double weight) {
        /** Price of all, minor units. */
        public long sum() {
            return Math.multiplyExact(price, quantity);
        }
    }
}
