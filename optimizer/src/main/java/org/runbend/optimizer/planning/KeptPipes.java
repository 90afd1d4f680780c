package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.Filleting;
import org.runbend.optimizer.breakdown.SamePipe;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.plan.KeptPipe;
import org.runbend.optimizer.plan.Remark;

/** Finds what of a plan lies in parts that were already routed. */
final class KeptPipes {
    private static final double NOTHING = 0.01;

    private KeptPipes() {}

    /** The parts of a job, in the order of the job file. */
    static List<KeptPipe> of(Job job, double radius, List<Breakdown> loops) {
        List<KeptPipe> all = new ArrayList<>();
        for (PipeRule veto : job.layout().pipeRules()) {
            if (veto instanceof PipeRule.Kept part) {
                // legs read off a groove may be a little short for the bends at their ends
                List<Element> routed =
                        new Filleting().breakDownDrawn(part.points(), radius).elements();
                List<KeptPipe.Place> places = places(loops, routed);
                double length =
                        places.stream().mapToDouble(KeptPipe.Place::length).sum();
                all.add(new KeptPipe(all.size(), length, places));
            }
        }
        return all;
    }

    private static List<KeptPipe.Place> places(List<Breakdown> loops, List<Element> routed) {
        List<KeptPipe.Place> places = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            List<Element> elements = loops.get(i).elements();
            for (int j = 0; j < elements.size(); j++) {
                double length = SamePipe.common(elements.get(j), routed);
                if (length > NOTHING) {
                    places.add(new KeptPipe.Place(i, j, length));
                }
            }
        }
        return places;
    }

    /** What is kept and what is new; empty if the job keeps nothing. */
    static Optional<Remark> remark(List<KeptPipe> parts, List<Breakdown> loops) {
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        double kept = parts.stream().mapToDouble(KeptPipe::length).sum();
        double all = loops.stream().mapToDouble(Breakdown::floorLength).sum();
        return Optional.of(new Remark.PartsKept(parts.size(), kept, all - kept));
    }
}
