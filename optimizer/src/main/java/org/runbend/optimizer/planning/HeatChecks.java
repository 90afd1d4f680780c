package org.runbend.optimizer.planning;

import java.util.List;
import org.runbend.optimizer.heat.HeatSolution;
import org.runbend.optimizer.heat.limits.Finding;
import org.runbend.optimizer.plan.PlanCheck;

/** The findings of heat and flow as checks of a plan. */
final class HeatChecks {
    private HeatChecks() {}

    static List<PlanCheck> of(HeatSolution heat) {
        return heat.findings().stream().map(HeatChecks::check).toList();
    }

    private static PlanCheck check(Finding f) {
        return new PlanCheck(
                f.name(),
                f.value(),
                f.side(),
                f.limit(),
                f.unit(),
                PlanCheck.Verdict.valueOf(f.verdict().name()),
                f.source());
    }
}
