package org.runbend.optimizer.verify;

import java.util.Locale;
import org.runbend.optimizer.plan.PlanCheck;

/** Holds each check's verdict against its own numbers. */
final class CheckRules {
    private static final double NOISE = 1e-6;

    private final Findings findings;

    CheckRules(Findings findings) {
        this.findings = findings;
    }

    void check(PlanCheck check) {
        findings.unless(
                Double.isFinite(check.value()) && Double.isFinite(check.limit()),
                "check '%s': value %s and limit %s must be numbers",
                check.name(),
                check.value(),
                check.limit());
        findings.unless(
                !check.source().isBlank(),
                "check '%s': %.2f against %.2f names no source",
                check.name(),
                check.value(),
                check.limit());
        checkVerdict(check, check.room());
    }

    private void checkVerdict(PlanCheck check, double room) {
        boolean tooGood = room < -NOISE && check.verdict() == PlanCheck.Verdict.OK;
        boolean tooBad = room > NOISE && check.verdict() == PlanCheck.Verdict.FAIL;
        findings.unless(
                !tooGood && !tooBad,
                "check '%s': the verdict %s disagrees with %.2f %s against a limit of %.2f %s",
                check.name(),
                check.verdict().name().toLowerCase(Locale.ROOT),
                check.value(),
                check.unit(),
                check.limit(),
                check.unit());
    }
}
