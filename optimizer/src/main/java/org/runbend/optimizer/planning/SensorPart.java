package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Item;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Slot;
import org.runbend.optimizer.channel.SensorPlacing;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.KeepOut;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Support;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlateBody;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;

/** Where the floor's sensor lies, where the job has one. */
final class SensorPart {
    private SensorPart() {}

    /** The sensor's plan; none where the job has no sensor. */
    static Optional<SensorPlan> of(Job job, List<Breakdown> loops, PlatePlan plates) {
        return isWanted(job) ? Optional.of(SensorPlacing.solve(problem(job, loops, plates))) : Optional.empty();
    }

    /** Whether the job asks for one. */
    static boolean isWanted(Job job) {
        return job.heating().flatMap(h -> h.request().circuit().sensor()).isPresent();
    }

    private static SensorProblem problem(Job job, List<Breakdown> loops, PlatePlan plates) {
        List<SensorProblem.Plate> bodies = new ArrayList<>();
        for (PlatePiece piece : plates.pieces()) {
            List<Point> line = PlateBody.centreLine(loops, piece);
            bodies.add(new SensorProblem.Plate(
                    PlateBody.corners(loops, job.catalog(), piece),
                    line.get(0),
                    line.get(1),
                    piece.places().size()));
        }
        // pipe never crosses such a support, so nothing else is led through it either
        List<KeepOut> off = new ArrayList<>(job.floor().keepOuts());
        job.floor().supports().stream()
                .filter(s -> s.cross() == Support.Crossing.NEVER)
                .forEach(s -> off.add(new KeepOut(s.name(), KeepOut.Kind.OTHER, s.region(), 0)));
        List<Slot> slots = loops.get(0).slots();
        Point a = slots.get(0).from();
        Point b = slots.get(1).from();
        return new SensorProblem(
                job.floor().outline(),
                off,
                job.floor().below().stream().map(r -> r.region().corners()).toList(),
                loops,
                bodies,
                new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2),
                new SensorProblem.Size(
                        job.layout().spacing(),
                        job.groove().half(),
                        job.catalog().routing().leastWeb(),
                        cable(job)));
    }

    /** Of the sensors that the workshop sells the longest cable. */
    private static double cable(Job job) {
        return job.catalog().items().stream()
                .filter(i -> i.per() == Item.Per.SENSOR)
                .flatMapToDouble(i -> i.cable().stream())
                .max()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** What is to be known of it. */
    static Optional<Remark> remark(Optional<SensorPlan> sensor) {
        return sensor.map(s -> {
            if (s.isCableShort()) {
                return new Remark.CableShort(
                        s.at().orElseThrow(), s.cable(), s.problem().size().cable());
            }
            if (s.at().isPresent()) {
                return s.isWhereWanted()
                        ? new Remark.SensorPlace(s.at().get(), s.length())
                        : new Remark.SensorElsewhere(s.wanted().orElseThrow(), s.at().get());
            }
            return new Remark.NoSensorPlace(s.wanted(), s.nearest());
        });
    }
}
