package org.runbend.optimizer.verify;

import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.plan.PlanCheck;

/**
 * Holds each check's verdict against its own numbers. Which side of the limit is the good one is read off the check's
 * name; a check whose name does not say it is only held to be complete.
 */
final class CheckRules {
    private static final double NOISE = 1e-6;
    private static final List<String> NOT_UNDER =
            List.of("least", "minimum", "at least", "clearance", "coverage", "by hand", "served");
    private static final List<String> NOT_OVER =
            List.of("most", "maximum", "at most", "longest", "greatest", "limit", "in one piece");

    private final KitFindings findings;

    CheckRules(KitFindings findings) {
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
        boolean floor = says(NOT_UNDER, check.name());
        boolean ceiling = says(NOT_OVER, check.name());
        if (floor != ceiling) {
            checkVerdict(check, floor ? check.value() - check.limit() : check.limit() - check.value());
        }
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

    private static boolean says(List<String> words, String name) {
        String text = " " + name.toLowerCase(Locale.ROOT) + " ";
        return words.stream().anyMatch(w -> text.contains(" " + w + " "));
    }
}
