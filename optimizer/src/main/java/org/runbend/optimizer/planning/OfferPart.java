package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.product.StandardKit;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.quote.KitChoice;
import org.runbend.optimizer.quote.KitChoosing;
import org.runbend.optimizer.quote.KitNeed;
import org.runbend.optimizer.quote.KitNeeds;
import org.runbend.optimizer.quote.Offer;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.Quoting;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.KitChoiceVerifier;
import org.runbend.optimizer.verify.QuoteVerifier;
import org.runbend.optimizer.work.Work;

/**
 * Prices a finished plan: its quotation, and the standard kits that would do. As kits hold the plates they hold, they are tried on the floor
 * plated as planned and on the same loops plated with one product of the kits alone.
 */
public final class OfferPart {
    private OfferPart() {}

    /**
     * The offer, verified.
     *
     * @param discount asked for this order; empty: the one of the catalog's terms
     * @throws IllegalStateException if a verifier finds a fault in it
     */
    public static Offer of(KitPlan plan, Optional<Rate> discount, Work work) {
        Quote quote = new Quoting().quote(plan, discount);
        refuse(QuoteVerifier.verify(plan, quote));
        List<KitChoice> choices = new ArrayList<>();
        choice(plan).ifPresent(choices::add);
        for (SpreaderPlate product : choices.isEmpty() ? List.<SpreaderPlate>of() : alone(plan)) {
            plated(plan, product, work)
                    .flatMap(OfferPart::choice)
                    .ifPresent(c -> choices.add(c.platedWith(product.sku(), plan.total())));
        }
        long bound = choices.stream().mapToLong(KitChoice::bound).min().orElse(0);
        return new Offer(
                quote,
                choices.stream().min(Comparator.comparingLong(KitChoice::price)).map(c -> c.boundedBy(bound)));
    }

    private static Optional<KitChoice> choice(KitPlan plan) {
        KitNeed need = KitNeeds.of(plan);
        Optional<KitChoice> choice = new KitChoosing().choose(need);
        choice.ifPresent(c -> refuse(KitChoiceVerifier.verify(need, c)));
        return choice;
    }

    private static void refuse(List<Finding> findings) {
        if (!findings.isEmpty()) {
            throw new IllegalStateException("the offer breaks a rule: " + findings);
        }
    }

    /** Plates of one groove that the job names and kits hold, where the plan uses others too. */
    private static List<SpreaderPlate> alone(KitPlan plan) {
        Job job = plan.job();
        Set<String> used = plan.plates().stock().stream().map(PlateCut::product).collect(Collectors.toSet());
        Set<String> inKits = job.catalog().kits().stream()
                .flatMap(k -> k.plates().stream())
                .map(StandardKit.Plates::plate)
                .collect(Collectors.toSet());
        return job.plates().products().stream()
                .filter(p -> p.grooves() == 1 && inKits.contains(p.sku()))
                .filter(p -> !used.isEmpty() && !used.equals(Set.of(p.sku())))
                .toList();
    }

    /** The same loops with one plate alone; empty where that cannot be, and for loops that lie on no lattice of ours. */
    private static Optional<KitPlan> plated(KitPlan plan, SpreaderPlate product, Work work) {
        Job job = plan.job();
        if (!plan.isOnLattice() || job.plates().byHeat()) {
            return Optional.empty();
        }
        Job other = withoutBoards(job)
                .with(
                        job.layout(),
                        job.pipe(),
                        job.plates().with(List.of(product), job.plates().coverage()));
        LaidFloor laid =
                new LaidFloor(plan.lattice(), job.layout().leftOutPrice(), plan.loops(), plan.bareFloor(), List.of());
        try {
            return Optional.of(KitPlanner.atAGlance(work.hushed()).plan(other, laid));
        } catch (Unbuildable e) {
            return Optional.empty();
        }
    }

    /** Boards are in no kit, and to split them takes longer than all the rest. */
    private static Job withoutBoards(Job job) {
        Optional<Job.Build> build = job.build()
                .map(b -> new Job.Build(
                        b.insulation(), b.coverThickness(), b.coverMaterial(), b.finishResistance(), b.board()));
        return new Job(
                job.heading(),
                job.supply(),
                job.floor(),
                job.layout(),
                job.pipe(),
                job.plates(),
                build,
                job.heating(),
                job.source());
    }
}
