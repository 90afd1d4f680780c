package org.runbend.optimizer.verify;

import org.runbend.catalog.product.Board;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.product.Tolerances;
import org.runbend.optimizer.boards.BoardsProblem.Role;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlanCheck;

/** What the checks say of depths, worked out anew from the products: groove, pipe, plate and board at their worst. */
final class DepthRules {
    private static final double SAME = 1e-6;

    private final KitPlan plan;
    private final Findings findings;

    DepthRules(KitPlan plan, Findings findings) {
        this.plan = plan;
        this.findings = findings;
    }

    void check() {
        boolean routed = plan.boards()
                .map(b -> b.layers().stream().anyMatch(l -> l.layer().role() == Role.ROUTED))
                .orElse(false);
        if (!routed) {
            return;
        }
        Job job = plan.job();
        Tolerances t = job.catalog().panels().tolerances();
        double thickest = 0;
        for (SpreaderPlate p : job.plates().products()) {
            thickest = Math.max(thickest, p.thickness());
        }
        double nominal = job.pipe().product().outer() + thickest;
        double deepened = job.catalog().routing().depthPlay();
        same("top of the pipe under the face", deepened - t.depth() - t.pipe());
        Job.RoutedBoard board = job.build().orElseThrow().board().orElseThrow();
        double thin = board.board().kind() == Board.Kind.INSULATION ? t.foam() : t.wood();
        same("under the groove, at the worst", board.thickness() - thin - nominal - deepened - t.depth());
    }

    private void same(String part, double value) {
        double said = plan.checks().stream()
                .filter(c -> c.name().contains(part))
                .mapToDouble(PlanCheck::value)
                .findFirst()
                .orElse(Double.NaN);
        findings.unless(
                Math.abs(said - value) < SAME,
                "check '... %s ...': %.2f mm is claimed, it is %.2f mm",
                part,
                said,
                value);
    }
}
