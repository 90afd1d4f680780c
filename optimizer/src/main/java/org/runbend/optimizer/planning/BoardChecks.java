package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.product.Tolerances;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsPlan.LayerPlan;
import org.runbend.optimizer.boards.BoardsProblem.Packer;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.plan.PlanCheck.Verdict;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlateBody;
import org.runbend.optimizer.plates.PlatePiece;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * What is checked of a floor made of boards: webs to their edges, and depths and heights at the worst of all tolerances, as
 * sums and not as squares: a floor has few boards, and one that is out is one too many.
 */
final class BoardChecks {
    /** Foam that stays under a groove, mm: as asked. */
    private static final double LEAST_FOAM = 10;

    /** A plate that touches a packer may lie on it, mm: own choice. */
    private static final double PLATE_AIR = 1;

    private BoardChecks() {}

    /** The checks; none where the job asks for no boards. */
    static List<PlanCheck> of(Job job, Optional<BoardsPlan> plan, List<Breakdown> loops, PlatePlan plates) {
        List<PlanCheck> all = new ArrayList<>();
        plan.ifPresent(p -> {
            p.layers().stream()
                    .filter(l -> l.layer().role() == Role.ROUTED)
                    .findFirst()
                    .ifPresent(l -> {
                        all.add(web(job, l));
                        all.add(crown(job));
                        all.add(rest(job));
                    });
            FixingPart.check(plan).ifPresent(all::add);
            if (!p.problem().packers().isEmpty()) {
                all.add(groove(job, p, loops));
                plates(job, p, loops, plates).ifPresent(all::add);
            }
        });
        return all;
    }

    private static PlanCheck web(Job job, LayerPlan layer) {
        return PlanCheck.atLeast(
                "least web between channel and edge of the board",
                job.layout().edge()
                        - job.groove().half()
                        - layer.layer().perimeterGap()
                        - job.build().get().boards().get().tolerance(),
                job.catalog().routing().leastWeb(),
                "mm",
                Verdict.WARN,
                "catalog, routing.leastWeb");
    }

    /** The groove at its shallowest less plate and the pipe at its thickest. */
    private static PlanCheck crown(Job job) {
        Tolerances t = job.catalog().panels().tolerances();
        double plate = job.plates().products().stream()
                .mapToDouble(SpreaderPlate::thickness)
                .max()
                .orElse(0);
        double under =
                job.groove().depth() - t.depth() - plate - job.pipe().product().outer() - t.pipe();
        return PlanCheck.atLeast(
                "top of the pipe under the face of its board, at the worst of tolerances",
                clean(under),
                0,
                "mm",
                Verdict.WARN,
                "catalog, panels.tolerances: routing.depthPlay makes grooves deeper");
    }

    /** The board at its thinnest less the groove at its deepest. */
    private static PlanCheck rest(Job job) {
        Job.RoutedBoard board = job.build().get().board().get();
        Tolerances t = job.catalog().panels().tolerances();
        boolean foam = board.board().kind() == Board.Kind.INSULATION;
        double rest = clean(board.rest() - t.depth() - t.of(board.board().kind()));
        String name = "least " + (foam ? "foam" : "wood") + " under the groove, at the worst of tolerances";
        return rest > 0 && foam
                ? PlanCheck.atLeast(
                        name, rest, LEAST_FOAM, "mm", Verdict.WARN, "foam under 10 mm breaks (common practice)")
                : PlanCheck.atLeast(name, rest, 0, "mm", Verdict.FAIL, "a groove never goes through its board");
    }

    private static double clean(double mm) {
        return Math.abs(mm) < 1e-9 ? 0 : mm;
    }

    private static PlanCheck groove(Job job, BoardsPlan plan, List<Breakdown> loops) {
        double least = Double.POSITIVE_INFINITY;
        for (Packer p : plan.problem().packers()) {
            Geometry solid = FloorShapes.polygon(p.edge());
            for (Breakdown loop : loops) {
                least = Math.min(
                        least,
                        FloorShapes.line(Centreline.of(loop, 1)).distance(solid)
                                - job.groove().half());
            }
        }
        return PlanCheck.atLeast(
                "least board between groove and the solid packer of an anchor",
                least,
                job.catalog().routing().leastWeb(),
                "mm",
                Verdict.WARN,
                "catalog, routing.leastWeb; a greater clearance of the anchor leaves more");
    }

    private static Optional<PlanCheck> plates(Job job, BoardsPlan plan, List<Breakdown> loops, PlatePlan plates) {
        double least = Double.POSITIVE_INFINITY;
        for (PlatePiece piece : plates.pieces()) {
            Geometry body = FloorShapes.polygon(PlateBody.corners(loops, job.catalog(), piece));
            for (Packer p : plan.problem().packers()) {
                least = Math.min(least, body.distance(FloorShapes.polygon(p.edge())));
            }
        }
        return least == Double.POSITIVE_INFINITY
                ? Optional.empty()
                : Optional.of(PlanCheck.atLeast(
                        "plates beside the solid packer of an anchor, off it by",
                        least,
                        PLATE_AIR,
                        "mm",
                        Verdict.WARN,
                        "no plate under an anchor's preload: plates.plateClearance keeps them farther off"));
    }

    /** How high and heavy the boards are in all. */
    static Remark remark(Job job, BoardsPlan plan) {
        Tolerances t = job.catalog().panels().tolerances();
        double out = plan.layers().stream()
                .mapToDouble(l -> l.layer().grain() ? t.wood() : t.foam())
                .sum();
        return new Remark.BoardsInAll(plan.height(), out, plan.weightPerSquareMetre());
    }
}
