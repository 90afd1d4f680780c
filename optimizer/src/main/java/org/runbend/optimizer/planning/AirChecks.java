package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Groove;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlanCheck.Verdict;
import org.runbend.optimizer.plates.PlateBody;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * The air that is left on the finished floor: between the edge of the groove and each thing, between plates and things. The
 * groove counts as wide as at its bends, its pockets as wide as they are, so that the air is never less than what is said.
 * Arcs go as chords of a degree: 0.006 mm off at most for a radius of 150 mm.
 */
final class AirChecks {

    /** What a router led by hand may wander, mm (common practice). */
    private static final double LEAST_AIR = 5;

    private static final double HAIR = 0.01;

    /** Overlaps under this are rounding, mm2. */
    private static final double NOTHING = 0.5;

    private final Job job;
    private final Groove groove;
    private final List<Breakdown> loops;

    private AirChecks(Job job, List<Breakdown> loops) {
        this.job = job;
        this.groove = job.groove();
        this.loops = loops;
    }

    /** A thing and the air to it, mm; negative where it is cut into. */
    private record Air(String thing, double mm) {}

    /** The checks; of things only where some stand on the floor. */
    static List<PlanCheck> of(Job job, List<Breakdown> loops, PlatePlan plates) {
        AirChecks checks = new AirChecks(job, loops);
        List<PlanCheck> found = new ArrayList<>();
        double inside = clean(checks.inside());
        found.add(PlanCheck.atLeast(
                "least air between groove and outline", inside, 0, "mm", Verdict.FAIL, "nothing is cut outside"));
        checks.grooves().ifPresent(air -> found.add(check("least air between groove and things", air, LEAST_AIR)));
        checks.plates(plates).ifPresent(air -> found.add(check("least air between plates and things", air, 0)));
        return found;
    }

    private static PlanCheck check(String name, Air air, double asked) {
        double mm = clean(air.mm);
        String source = "nearest is " + air.thing;
        return mm < 0
                ? PlanCheck.atLeast(name, mm, 0, "mm", Verdict.FAIL, source)
                : PlanCheck.atLeast(name, mm, asked, "mm", Verdict.WARN, source);
    }

    /** What rounding took of an exact fit is none. */
    private static double clean(double air) {
        return Math.abs(air) < HAIR ? 0 : air;
    }

    /** From the edge of the groove to the outline; what leads through a wall is meant to come to it. */
    private double inside() {
        Geometry outline = FloorShapes.polygon(job.floor().outline()).getBoundary();
        boolean wall = job.floor().port().turn() == Job.Turn.LEVEL;
        double least = Double.POSITIVE_INFINITY;
        for (Breakdown loop : loops) {
            Breakdown inner = wall ? new Breakdown(loop.laid()) : loop;
            least = Math.min(least, FloorShapes.line(Centreline.of(inner, 1)).distance(outline) - groove.half());
            for (Slot slot : wall ? List.<Slot>of() : loop.slots()) {
                least = Math.min(least, FloorShapes.point(slot.from()).distance(outline) - groove.pad() / 2);
            }
        }
        return least;
    }

    private Optional<Air> grooves() {
        List<Geometry> pipes = loops.stream()
                .map(loop -> FloorShapes.line(Centreline.of(loop, 1)))
                .toList();
        Air least = null;
        for (KeepOut k : job.floor().keepOuts()) {
            Geometry thing = FloorShapes.bare(k.bare());
            double air = Double.POSITIVE_INFINITY;
            for (int i = 0; i < pipes.size(); i++) {
                air = Math.min(air, pipes.get(i).distance(thing) - groove.half());
                for (Slot slot : loops.get(i).slots()) {
                    double pocket = FloorShapes.point(slot.from()).distance(thing) - groove.pad() / 2;
                    double dip = FloorShapes.line(slot.from(), slot.to()).distance(thing) - slot.width() / 2;
                    air = Math.min(air, Math.min(pocket, dip));
                }
            }
            least = least == null || air < least.mm ? new Air(k.name(), air) : least;
        }
        return Optional.ofNullable(least);
    }

    private Optional<Air> plates(PlatePlan plates) {
        Air least = null;
        for (KeepOut k : job.floor().plateless()) {
            Geometry thing = FloorShapes.bare(k.bare());
            for (PlatePiece piece : plates.pieces()) {
                Geometry body = FloorShapes.polygon(PlateBody.corners(loops, job.catalog(), piece));
                double air = body.distance(thing);
                if (air == 0) {
                    double over = OverlayNGRobust.overlay(body, thing, OverlayNG.INTERSECTION)
                            .getArea();
                    air = over > NOTHING ? -Math.sqrt(over) : 0;
                }
                least = least == null || air < least.mm ? new Air(k.name(), air) : least;
            }
        }
        return Optional.ofNullable(least);
    }
}
