package org.runbend.optimizer.planning;

import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.source.Plain;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsPlan.Part;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.boards.FixingProblem;
import org.runbend.optimizer.boards.ScrewPlacing;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.job.BoardsWish;
import org.runbend.optimizer.job.CoverFixing;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.Remark;

/** How the cover is held: what of the boards holds a screw, and which screws are at hand. */
final class FixingPart {
    private static final String KEY = "build.cover.fixing";

    private FixingPart() {}

    private static Optional<BoardsWish> wish(Job job) {
        return job.build().flatMap(Job.Build::boards);
    }

    private static boolean hasWood(Job job) {
        return job.build()
                .flatMap(Job.Build::board)
                .map(b -> b.board().kind() == Board.Kind.COVER)
                .orElse(false);
    }

    /** Refuses, before anything is laid, a cover to be screwed to foam. */
    static void refuse(Job job) {
        boolean screws = wish(job).map(w -> w.fixing() == CoverFixing.SCREW).orElse(false);
        if (screws && !hasWood(job) && job.floor().supports().isEmpty()) {
            throw new Unbuildable(
                    KEY,
                    "there is nothing to screw into, foam holds no screw: name a wooden build.board or give floor.supports,"
                            + " or write float or glue");
        }
    }

    /** The boards with their cover held as asked; without a cover as they were. */
    static BoardsPlan held(Job job, BoardsPlan boards, List<Breakdown> loops, Optional<SensorPlan> sensor) {
        refuse(job);
        List<LayerPlan> cover = boards.layers(Role.COVER);
        if (cover.isEmpty()) {
            return boards;
        }
        FixingProblem problem = problem(job, boards, cover.get(0), loops, sensor);
        try {
            return boards.with(
                    ScrewPlacing.solve(problem, wish(job).orElseThrow().fixing()));
        } catch (ScrewPlacing.NoScrew e) {
            List<Double> screws = problem.size().screws();
            throw new Unbuildable(
                    KEY,
                    "a cover of " + Plain.number(problem.size().cover()) + " mm on "
                            + Plain.number(problem.size().under()) + " mm takes screws of " + Plain.number(e.least())
                            + " to " + Plain.number(e.most()) + " mm; panels.screws in the catalog has none, but "
                            + Plain.number(screws.get(0)) + " to " + Plain.number(screws.get(screws.size() - 1))
                            + " mm");
        }
    }

    private static FixingProblem problem(
            Job job, BoardsPlan boards, LayerPlan cover, List<Breakdown> loops, Optional<SensorPlan> sensor) {
        List<Part> wood = hasWood(job)
                ? boards.layers(Role.ROUTED).stream()
                        .flatMap(l -> l.parts().stream())
                        .toList()
                : List.of();
        double under = boards.layers().stream()
                .filter(l -> l.layer().role() == Role.ROUTED
                        || (wood.isEmpty() && l.layer().role() == Role.INSULATION))
                .mapToDouble(l -> l.layer().thickness())
                .sum();
        return new FixingProblem(
                cover.parts(),
                wood,
                job.floor().supports(),
                boards.problem().cutouts(),
                loops,
                job.floor().below().stream().map(b -> b.region().corners()).toList(),
                sensor.map(SensorPlan::conduit).orElse(List.of()),
                new FixingProblem.Size(
                        cover.layer().thickness(),
                        under,
                        wish(job).orElseThrow().screwsApart(),
                        job.catalog().panels().screws()));
    }

    /** How far places of the cover lie from a screw, where there are any to be. */
    static Optional<PlanCheck> check(Optional<BoardsPlan> boards) {
        return boards.flatMap(BoardsPlan::fixing)
                .filter(f -> f.fixing() == CoverFixing.SCREW)
                .map(f -> PlanCheck.atMost(
                        "farthest place of a cover board from a screw of its board",
                        f.farthest(),
                        f.problem().size().reach(),
                        "mm",
                        PlanCheck.Verdict.WARN,
                        "build.cover.screwsApart of "
                                + Plain.number(f.problem().size().apart()) + " mm, in the middle of four"));
    }

    /** What is to be known of it. */
    static Optional<Remark> remark(Optional<BoardsPlan> boards) {
        return boards.flatMap(BoardsPlan::fixing).map(FixingPart::remark);
    }

    private static Remark remark(FixingPlan f) {
        return new Remark.Cover(f.fixing(), f.screws().size(), f.length().orElse(0), FixingProblem.FROM_PIPE);
    }
}
