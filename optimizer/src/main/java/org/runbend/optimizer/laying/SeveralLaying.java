package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.optimizer.division.Divider;
import org.runbend.optimizer.division.Division;
import org.runbend.optimizer.division.DivisionProblem;
import org.runbend.optimizer.division.PortPlaces;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.work.Work;

/** Lays so many loops of nearly equal length on the lattice that serves most, each from its own place at the port. */
final class SeveralLaying {
    /** Lattices that are built: chosen, not measured. */
    private static final int MOST_SEARCHED = 60;

    /** Lattices that are cut: chosen, not measured. */
    private static final int MOST_LATTICES = 10;
    /** The same of large floors; chosen, not measured. */
    private static final int FEW_LATTICES = 3;
    /**
     * Nodes that a lattice may serve less than another, for each loop, if its rim lies better; chosen, not measured.
     */
    private static final int LESS_A_LOOP = 3;
    /** Port pairs beyond the nearest of a single loop, for each loop more; chosen, not measured. */
    private static final int PORTS_A_LOOP = 6;

    /** Steps of a spacing by which a greater reach is tried; chosen, not measured. */
    private static final int MOST_MORE = 4;

    private static final double ANYWHERE = 1e6;

    /** Divisions laid until one leaves room to turn into all holes; chosen, not measured. */
    private static final int MOST_TRIES = 4;

    /** Lattices on which what would do is tried; chosen, not measured. */
    private static final int LOOKED_AT = 2;

    /**
     * Beyond so many nodes a part gets less work, so that all parts together end within a minute; chosen, not
     * measured.
     */
    private static final int LARGE = 1_000;

    private static final WorkLimit LESS_WORK = new WorkLimit(2_000_000, 12_000_000);
    /** Enough to see whether there is a loop at all. */
    private static final WorkLimit LEAST_WORK = new WorkLimit(200_000, 2_000_000);

    private final Job job;
    private final double radius;
    private final int loops;

    SeveralLaying(Job job, double radius, int loops) {
        this.job = job;
        this.radius = radius;
        this.loops = loops;
    }

    LaidLoops lay(Work work) {
        if (job.isStiff()) {
            work.step(LoopLaying.stiff(job));
        }
        work.step("finding where pipe can lie");
        double reach = job.floor().port().reach() + (loops - 1) * job.layout().spacing();
        List<Lattice> wide = lattices(reach);
        if (wide.isEmpty()) {
            throw failure();
        }
        work.step(String.format(
                Locale.ROOT,
                "cutting %d nodes for %d loops",
                wide.get(0).graph().size(),
                loops));
        LoopPipes pipes = new LoopPipes(job, radius);
        FloorProblem problem = problem(reach);
        for (int i = 0; i < MOST_TRIES; i++) {
            Division division = new Divider()
                    .divide(wide.stream().map(this::division).toList())
                    .orElseThrow(this::failure);
            Lattice lattice = wide.get(division.problem());
            LaidLoops laid = LaidLoops.of(
                    lattice,
                    division.parts(),
                    division.loops(),
                    job.floor().port().at());
            Optional<Integer> tight =
                    pipes.withoutRoom(problem, pipes.of(laid), !lattice.leads().isEmpty());
            if (tight.isEmpty()) {
                return laid;
            }
            wide = without(laid, tight.get(), wide);
        }
        throw LoopLaying.noRoomForSlots(problem);
    }

    /** The lattices without the port pair of a loop that has no room to turn into its holes. */
    private List<Lattice> without(LaidLoops laid, int loop, List<Lattice> lattices) {
        List<Point> path = laid.loops().get(loop).path();
        List<Point> ends = List.of(path.get(0), path.get(path.size() - 1));
        Lattice lattice = laid.lattice();
        List<PortPair> ports = lattice.ports().stream()
                .filter(p -> !ends.contains(lattice.at(p.from())) || !ends.contains(lattice.at(p.to())))
                .toList();
        List<Lattice> left = new ArrayList<>(lattices);
        int at = lattices.indexOf(lattice);
        left.remove(at);
        if (PortPlaces.apart(ports) >= loops) {
            left.add(at, lattice.withPorts(ports));
        }
        return left;
    }

    private FloorProblem problem(double reach) {
        int ports = FloorProblem.PORTS + PORTS_A_LOOP * (loops - 1);
        return LoopLaying.problem(job, radius, reach, ports, loops);
    }

    private List<Lattice> lattices(double reach) {
        return new LatticeSearch()
                .good(problem(reach), MOST_SEARCHED, loops * LESS_A_LOOP).stream()
                        .filter(lattice -> PortPlaces.apart(lattice.ports()) >= loops)
                        .limit(isLarge() ? FEW_LATTICES : MOST_LATTICES)
                        .toList();
    }

    private boolean isLarge() {
        double square = job.layout().spacing() * job.layout().spacing();
        return FloorShapes.heatedArea(job.floor()) / square > LARGE;
    }

    private DivisionProblem division(Lattice lattice) {
        return division(lattice, lattice.graph().size() > LARGE ? LESS_WORK : WorkLimit.standard());
    }

    private DivisionProblem division(Lattice lattice, WorkLimit work) {
        return new DivisionProblem(lattice.graph(), lattice.ports(), loops, LoopLaying.preference(job), work);
    }

    /** Says with what so many loops collide, and which reach would do. */
    private Unbuildable failure() {
        if (!job.floor().port().holes().isEmpty()) {
            return new NearestHoles(job, radius).fault();
        }
        Job one = job.with(job.floor(), job.layout().withLoops(1));
        if (!LoopLaying.canBeLaid(one)) {
            return WishConflict.of(one, LoopLaying::canBeLaid).orElseGet(() -> LoopLaying.noPlace(job, radius));
        }
        double needed = needed();
        double reach = job.floor().port().reach();
        boolean room = needed <= reach + 1e-6;
        String remedy = reach(room ? reach + job.layout().spacing() : needed);
        String reason = room ? noCut() : noRoom();
        Optional<String> guilty = WishConflict.things(job)
                .filter(w -> of(w.without(), loops).canBeCut())
                .map(WishConflict.Wish::key)
                .findFirst();
        return new Unbuildable(
                "layout.loops",
                guilty.map(key -> "collides with " + key + ": " + reason + "; either alone can be had, and " + remedy)
                        .orElse(reason + "; " + remedy));
    }

    private static SeveralLaying of(Job job, int loops) {
        return new SeveralLaying(job, LoopPipes.bendRadius(job), loops);
    }

    private boolean canBeCut() {
        List<Lattice> some = lattices(
                        job.floor().port().reach() + (loops - 1) * job.layout().spacing())
                .stream()
                .limit(LOOKED_AT)
                .toList();
        return some.stream().anyMatch(l -> new Divider().canDivide(division(l)))
                && new Divider()
                        .divide(some.stream().map(l -> division(l, LEAST_WORK)).toList())
                        .isPresent();
    }

    private String noRoom() {
        return String.format(
                Locale.ROOT,
                "%d loops need %d places side by side at the port, about %.0f mm of rim, and a reach of %.0f mm holds too"
                        + " few",
                loops,
                2 * loops,
                (2 * loops - 1) * job.layout().spacing(),
                job.floor().port().reach());
    }

    private String noCut() {
        return String.format(
                Locale.ROOT,
                "no cut of this floor into %d parts of nearly equal size was found that gives each loop its own way to the"
                        + " port within %.0f mm",
                loops,
                job.floor().port().reach());
    }

    /** The reach within which all loops find a place at the rim, mm. */
    private double needed() {
        return new LatticeSearch()
                .best(LoopLaying.problem(job, radius, ANYWHERE, Integer.MAX_VALUE, loops), 1).stream()
                        .mapToDouble(lattice ->
                                needed(lattice) - (loops - 1) * job.layout().spacing())
                        .findFirst()
                        .orElse(Double.POSITIVE_INFINITY);
    }

    /** Distance from the port within which all loops find a place. */
    private double needed(Lattice lattice) {
        Point port = job.floor().port().at();
        List<PortPair> nearest = new ArrayList<>(lattice.ports());
        nearest.sort(Comparator.comparingDouble(p -> distance(lattice, port, p)));
        for (int i = 1; i <= nearest.size(); i++) {
            if (PortPlaces.apart(nearest.subList(0, i)) >= loops) {
                return distance(lattice, port, nearest.get(i - 1));
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private static double distance(Lattice lattice, Point port, PortPair pair) {
        return Math.max(port.distance(lattice.at(pair.from())), port.distance(lattice.at(pair.to())));
    }

    /** The first of a few greater reaches with which a cut was found. */
    private String reach(double least) {
        for (int more = 0; more <= MOST_MORE && Double.isFinite(least); more++) {
            double reach = Math.ceil(least + more * job.layout().spacing());
            if (of(job.with(job.floor().withReach(reach), job.layout()), loops).canBeCut()) {
                return String.format(Locale.ROOT, "a floor.port.reach of %.0f would do", reach);
            }
        }
        return Double.isFinite(least)
                ? "fewer loops or another place of the port may do"
                : "the rim of this floor holds fewer loops";
    }
}
