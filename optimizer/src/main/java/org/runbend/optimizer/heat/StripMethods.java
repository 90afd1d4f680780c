package org.runbend.optimizer.heat;

import org.runbend.optimizer.heat.output.Contact;
import org.runbend.optimizer.heat.output.FinProblem;
import org.runbend.optimizer.heat.output.GrooveProblem;
import org.runbend.optimizer.heat.output.HottelWhillierBliss;
import org.runbend.optimizer.heat.output.NeighbourSpill;
import org.runbend.optimizer.heat.output.SpillProblem;
import org.runbend.optimizer.heat.output.StripOutput;
import org.runbend.optimizer.heat.output.UnplatedGroove;

/** Which method serves which kind of floor. */
final class StripMethods {
    private final FloorBuild build;

    StripMethods(FloorBuild build) {
        this.build = build;
    }

    StripOutput output(PipeStrip strip, Contact contact) {
        if (strip.plate().isPresent()) {
            return new HottelWhillierBliss().solve(fin(strip, contact));
        }
        return new UnplatedGroove().solve(new GrooveProblem(build.stack(), build.pipe(), strip.pitch(), contact));
    }

    FinProblem fin(PipeStrip strip, Contact contact) {
        return new FinProblem(
                build.stack(), build.pipe(), strip.plate().orElseThrow(), strip.left(), strip.right(), contact);
    }

    /** Bare floor beside warm floor whose plane has a share of the coolant's excess. */
    StripOutput spill(BareFloor floor, double edge) {
        double width = floor.edge() > 0 ? floor.area() / floor.edge() * 1000 : 1000;
        return new NeighbourSpill()
                .solve(new SpillProblem(
                        build.stack(),
                        build.pipe().outer(),
                        Math.max(0.1, Math.min(100_000, width)),
                        floor.edge() > 0 ? edge : 0));
    }
}
