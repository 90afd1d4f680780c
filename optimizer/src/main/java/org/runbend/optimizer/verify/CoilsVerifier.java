package org.runbend.optimizer.verify;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.coils.CoilPlan.CoilCut;
import org.runbend.optimizer.coils.CoilPlan.LoopCut;

/**
 * Holds a coil plan against the catalog, the shelf and the loops that want pipe, by plain arithmetic; it shares no line
 * with what plans coils. Lengths in mm, money in minor units.
 *
 * <p>Rules: every loop is one cut of one coil and as long as wanted; cuts fit, what is left is the rest; a coil is sold in
 * that length or lies on the shelf under its id, each id once; the cost is that of the coils bought, not under the bound.
 */
public final class CoilsVerifier {
    private static final double FORGIVEN = 0.05;

    private final Pipe pipe;
    private final Shelf shelf;

    /**
     * What a plan is held against.
     *
     * @param pipe the pipe of the job
     * @param shelf what lies on the shelf
     */
    public CoilsVerifier(Pipe pipe, Shelf shelf) {
        this.pipe = pipe;
        this.shelf = shelf;
    }

    /**
     * One sentence for each rule broken; empty for a sound plan.
     *
     * @param wanted name and cut length of each loop, mm
     * @param plan the plan
     */
    public List<Finding> verify(List<LoopCut> wanted, CoilPlan plan) {
        Findings found = new Findings();
        checkCuts(wanted, plan, found);
        Set<String> ids = new HashSet<>();
        long cost = 0;
        for (int i = 0; i < plan.coils().size(); i++) {
            CoilCut coil = plan.coils().get(i);
            String name = "coil " + i + " of " + coil.product();
            checkLengths(name, coil, found);
            cost += coil.id().isPresent() ? onShelf(name, coil, ids, found) : bought(name, coil, found);
        }
        found.unless(cost == plan.cost(), "coils: a cost of %d is claimed, the coils add up to %d", plan.cost(), cost);
        found.unless(plan.bound() <= plan.cost(), "coils: the bound %d is over the cost %d", plan.bound(), plan.cost());
        return found.all();
    }

    private static void checkCuts(List<LoopCut> wanted, CoilPlan plan, Findings found) {
        List<LoopCut> cuts =
                plan.coils().stream().flatMap(c -> c.cuts().stream()).toList();
        for (LoopCut loop : wanted) {
            List<LoopCut> own =
                    cuts.stream().filter(c -> c.loop().equals(loop.loop())).toList();
            found.unless(own.size() == 1, "loop %s: is cut %d times, 1 asked", loop.loop(), own.size());
            for (LoopCut c : own) {
                found.unless(
                        Math.abs(c.length() - loop.length()) <= FORGIVEN,
                        "loop %s: a cut of %.2f mm, %.2f mm asked",
                        loop.loop(),
                        c.length(),
                        loop.length());
            }
        }
        for (LoopCut c : cuts) {
            found.unless(
                    wanted.stream().anyMatch(w -> w.loop().equals(c.loop())),
                    "coils: a cut of %.2f mm is for loop %s, which is none of the %d loops",
                    c.length(),
                    c.loop(),
                    wanted.size());
        }
    }

    private void checkLengths(String name, CoilCut coil, Findings found) {
        found.unless(
                coil.product().equals(pipe.sku()),
                "%s: the job's pipe is %s, not %s",
                name,
                pipe.sku(),
                coil.product());
        found.unless(!coil.cuts().isEmpty(), "%s: has %d cuts, 1 or more asked", name, 0);
        double used = 0;
        for (LoopCut c : coil.cuts()) {
            used += c.length();
        }
        found.unless(
                used <= coil.length() + FORGIVEN,
                "%s: cuts of %.2f mm do not fit its %.2f mm",
                name,
                used,
                coil.length());
        double rest = Math.max(0, coil.length() - used);
        found.unless(
                Math.abs(coil.left() - rest) <= FORGIVEN,
                "%s: %.2f mm are said to be left, the rest is %.2f mm",
                name,
                coil.left(),
                rest);
    }

    private long bought(String name, CoilCut coil, Findings found) {
        for (Coil c : pipe.coils()) {
            if (Math.abs(c.length() - coil.length()) <= FORGIVEN) {
                return c.cost();
            }
        }
        found.unless(false, "%s: a length of %.2f mm is not sold, %s are", name, coil.length(), soldLengths());
        return 0;
    }

    private String soldLengths() {
        StringBuilder text = new StringBuilder();
        pipe.coils().forEach(c -> text.append(text.isEmpty() ? "" : ", ")
                .append(String.format(Locale.ROOT, "%.2f", c.length())));
        return text.toString();
    }

    /** A coil from the shelf costs nothing: it has been paid for. */
    private long onShelf(String name, CoilCut coil, Set<String> ids, Findings found) {
        String id = coil.id().orElseThrow();
        Optional<Remnant> remnant = shelf.remnants().stream()
                .filter(r -> r.id().equals(id) && r.product().equals(coil.product()))
                .findFirst();
        found.unless(remnant.isPresent(), "%s: %s does not lie on the shelf (0 found, 1 asked)", name, id);
        double length = remnant.map(Remnant::length).orElse(coil.length());
        found.unless(
                Math.abs(length - coil.length()) <= FORGIVEN,
                "%s: %s on the shelf is %.2f mm long, the plan says %.2f mm",
                name,
                id,
                length,
                coil.length());
        found.unless(ids.add(id), "%s: %s from the shelf is used twice, 1 use asked", name, id);
        return 0;
    }
}
