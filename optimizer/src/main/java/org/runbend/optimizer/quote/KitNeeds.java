package org.runbend.optimizer.quote;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlateCut;

/**
 * What a plan needs, for standard kits to be held against. Plates are needed as the plan cuts them: pieces that share a stock plate go on
 * sharing one.
 */
public final class KitNeeds {
    private static final double HUNDREDTHS = 100;

    private KitNeeds() {}

    /** The needs of a plan. */
    public static KitNeed of(KitPlan plan) {
        Job job = plan.job();
        Pipe pipe = job.pipe().product();
        return new KitNeed(
                pipe.sku(),
                pipe.name(),
                plan.loops().stream()
                        .map(l -> new KitNeed.LoopCut(l.name(), hundredths((double) l.cutLength())))
                        .toList(),
                plan.plates().stock().stream().map(s -> plate(job, s)).toList(),
                parts(plan),
                pipe.coils().stream()
                        .map(c -> new KitNeed.LooseCoil(hundredths(c.length()), c.price()))
                        .toList(),
                pipe.supply() == Pipe.Supply.CUT,
                plan.coils().coils().stream()
                        .filter(c -> c.id().isPresent())
                        .map(CoilPlan.CoilCut::length)
                        .map(KitNeeds::hundredths)
                        .toList(),
                job.plates().products().stream()
                        .flatMap(p -> p.stock().stream()
                                .map(s -> new KitNeed.LoosePlate(p.sku(), p.name(), hundredths(s.length()), s.price())))
                        .toList(),
                job.catalog().kits(),
                plan.total());
    }

    private static KitNeed.PlateCut plate(Job job, PlateCut cut) {
        SpreaderPlate product = job.catalog().findPlate(cut.product()).orElseThrow();
        double pieces = cut.cuts().stream().mapToDouble(Double::doubleValue).sum();
        double saw = product.kerf() * (cut.cuts().size() - 1) + product.trim();
        return new KitNeed.PlateCut(
                cut.product(), hundredths(pieces + saw), cut.id().isPresent() ? product.priceOfCut(pieces) : -1);
    }

    /** The lines of the box that are neither pipe nor plate, equal ones together. */
    private static List<KitNeed.Part> parts(KitPlan plan) {
        Map<String, KitNeed.Part> parts = new LinkedHashMap<>();
        for (KitPlan.BoxItem i : plan.items()) {
            if (isPart(plan.job().catalog(), i.sku())) {
                parts.merge(
                        i.sku(),
                        new KitNeed.Part(i.sku(), i.name(), i.unit(), i.quantity(), i.price()),
                        (a, b) ->
                                new KitNeed.Part(a.sku(), a.name(), a.unit(), a.quantity() + b.quantity(), a.price()));
            }
        }
        return List.copyOf(parts.values());
    }

    private static boolean isPart(Catalog catalog, String sku) {
        return catalog.findItem(sku).isPresent()
                || catalog.findPump(sku).isPresent()
                || catalog.findCoolant(sku).isPresent();
    }

    private static long hundredths(double mm) {
        return Math.round(mm * HUNDREDTHS);
    }
}
