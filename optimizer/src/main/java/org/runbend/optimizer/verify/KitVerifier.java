package org.runbend.optimizer.verify;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.coils.CoilPlan.LoopCut;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.plan.KitPlan;

/**
 * Holds a whole plan against its job before it is written; it shares no line with what made the plan. It runs the
 * verifiers of loops, plates and coils, reckons lengths, turns, objective and box anew, and compares.
 *
 * <p>A sentence means that the program is at fault, not the job: what a job asks in vain is said by the plan's checks.
 */
public final class KitVerifier {
    private static final double FORGIVEN = 0.01;

    private KitVerifier() {}

    /** One sentence for each rule broken; empty for a sound plan. */
    public static List<Finding> verify(KitPlan plan) {
        Findings findings = new Findings();
        findings.addAll(paths(plan));
        findings.addAll(wishes(plan));
        findings.addAll(plates(plan));
        findings.addAll(coils(plan));
        plan.boards().ifPresent(b -> findings.addAll(BoardsVerifier.verify(b)));
        plan.boards().flatMap(BoardsPlan::fixing).ifPresent(f -> {
            findings.addAll(FixingVerifier.verify(f));
            findings.unless(
                    f.problem().loops().equals(breakdowns(plan))
                            && f.problem().below().size()
                                    == plan.job().floor().below().size(),
                    "the cover is screwed over another floor");
        });
        plan.sensor().ifPresent(s -> {
            findings.addAll(SensorVerifier.verify(s));
            findings.unless(s.problem().loops().equals(breakdowns(plan)), "the sensor lies in another floor");
        });
        Set<String> names = new HashSet<>();
        for (KitPlan.LoopPlan loop : plan.loops()) {
            findings.unless(names.add(loop.name()), "loop %s: the name stands twice, 1 loop asked", loop.name());
            checkLengths(plan.job(), loop, findings);
            checkTurns(plan, loop, findings);
            checkObjective(plan, loop, findings);
        }
        new BoxRules(plan, findings).check();
        new DepthRules(plan, findings).check();
        CheckRules checks = new CheckRules(findings);
        plan.checks().forEach(checks::check);
        return findings.all();
    }

    private static List<Finding> paths(KitPlan plan) {
        return LoopPathVerifier.of(plan.job()).verify(breakdowns(plan));
    }

    private static List<Finding> wishes(KitPlan plan) {
        Job job = plan.job();
        return new WishVerifier(
                        job.floor().supports(),
                        job.layout().pipeRules(),
                        job.pipe().product().outer())
                .verify(breakdowns(plan));
    }

    private static List<Finding> plates(KitPlan plan) {
        Job job = plan.job();
        return new PlatesVerifier(
                        job.plates(),
                        job.floor().outline(),
                        job.floor().plateless(),
                        job.floor().unheated().stream()
                                .map(Job.Unheated::region)
                                .toList(),
                        job.shelf())
                .verify(breakdowns(plan), plan.plates());
    }

    private static List<Finding> coils(KitPlan plan) {
        List<LoopCut> wanted = plan.loops().stream()
                .map(l -> new LoopCut(l.name(), l.cutLength()))
                .toList();
        List<Finding> found =
                new CoilsVerifier(plan.job().pipe().product(), plan.job().shelf()).verify(wanted, plan.coils());
        return found.isEmpty() ? CoilCutting.verify(plan) : found;
    }

    private static List<Breakdown> breakdowns(KitPlan plan) {
        return plan.loops().stream().map(KitPlan.LoopPlan::breakdown).toList();
    }

    private static void checkLengths(Job job, KitPlan.LoopPlan loop, Findings findings) {
        Job.PipeRequest pipe = job.pipe();
        double floor = Reckoned.length(loop.breakdown().elements());
        findings.unless(
                Math.abs(floor - loop.floorLength()) <= FORGIVEN,
                "loop %s: floorLength %.2f mm is claimed, its elements add up to %.2f mm",
                loop.name(),
                loop.floorLength(),
                floor);
        List<Element> elements = loop.breakdown().elements();
        double outside =
                Reckoned.distance(elements.get(0).from(), job.floor().port().at())
                        + Reckoned.distance(
                                elements.get(elements.size() - 1).to(),
                                job.floor().port().at());
        double cut = (floor + outside + pipe.flowTail() + pipe.returnTail()) * (1 + pipe.allowance());
        // a sum of many lengths may fall a hair on either side of a whole millimetre
        boolean right =
                loop.cutLength() == (long) Math.ceil(cut - 1e-6) || loop.cutLength() == (long) Math.ceil(cut + 1e-6);
        findings.unless(
                right,
                "loop %s: cutLength %d mm is claimed, floor, ways to the port, tails and allowance make %.2f mm",
                loop.name(),
                loop.cutLength(),
                cut);
        double limit = pipe.loopLimit().orElse(Double.POSITIVE_INFINITY);
        findings.unless(
                loop.cutLength() <= limit,
                "loop %s: cutLength %d mm is over the loopLimit of %.2f mm",
                loop.name(),
                loop.cutLength(),
                limit);
    }

    private static void checkTurns(KitPlan plan, KitPlan.LoopPlan loop, Findings findings) {
        if (!plan.isOnLattice()) {
            double degrees = Reckoned.degrees(loop.breakdown().elements());
            findings.unless(
                    Math.abs(loop.turns() - degrees / 90) <= 0.5,
                    "loop %s: turns %d, its bends make %.1f degrees in all",
                    loop.name(),
                    loop.turns(),
                    degrees);
            return;
        }
        long bends =
                loop.breakdown().laid().stream().mapToLong(Reckoned::quarters).sum();
        findings.unless(
                loop.turns() >= bends && loop.turns() <= bends + 2,
                "loop %s: turns %d, its bends make %d and the port at most 2 more",
                loop.name(),
                loop.turns(),
                bends);
        findings.unless(
                loop.turnBound().orElse(0) <= loop.turns(),
                "loop %s: turnBound %d is over its turns %d",
                loop.name(),
                loop.turnBound().orElse(0),
                loop.turns());
    }

    private static void checkObjective(KitPlan plan, KitPlan.LoopPlan loop, Findings findings) {
        PlacePrice price = plan.job().layout().leftOutPrice();
        int objective = price.turn() * loop.turns() + price.leftOut() * loop.leftOut() + loop.pieceCost();
        findings.unless(
                loop.objective() == objective,
                "loop %s: objective %d is claimed, turns and %d nodes left out make %d",
                loop.name(),
                loop.objective(),
                loop.leftOut(),
                objective);
        findings.unless(
                loop.objectiveBound().orElse(0) <= loop.objective(),
                "loop %s: objectiveBound %d is over its objective %d",
                loop.name(),
                loop.objectiveBound().orElse(0),
                loop.objective());
        findings.unless(
                loop.leftOut() >= 0 && loop.leftOut() <= plan.lattice().reachable(),
                "loop %s: leftOut %d of %d reachable nodes",
                loop.name(),
                loop.leftOut(),
                plan.lattice().reachable());
    }
}
