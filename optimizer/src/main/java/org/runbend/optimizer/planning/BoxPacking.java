package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.product.Item;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.Supplies;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePlan;

/**
 * Lists everything that goes in the box: pipe, plates, and the catalog's items by their rules.
 *
 * <p>Coils that are supplied whole, and plates bought, are charged whole. Pipe or plate from the shelf, and pipe of coils that
 * stay with the workshop, is charged by the share of the shortest stock on offer that is at least as long as what is cut (the
 * longest, if none is), rounded to the nearest minor unit. Weights are those of what is packed: whole coils or cuts of pipe, plates
 * as cut.
 */
final class BoxPacking {
    private final Job job;
    private final double radius;
    private final List<KitPlan.BoxItem> box = new ArrayList<>();

    /** For bends of the radius, mm. */
    BoxPacking(Job job, double radius) {
        this.job = job;
        this.radius = radius;
    }

    /** Packs it; {@code routed} where boards come routed by a machine. */
    List<KitPlan.BoxItem> pack(List<Breakdown> loops, PlatePlan plates, CoilPlan coils, boolean routed) {
        coils.coils().forEach(this::addCoil);
        for (SpreaderPlate plate : job.plates().products()) {
            addPlates(plate, plates);
        }
        for (Item item : job.catalog().items()) {
            long quantity = quantity(item, loops, plates, coils, routed);
            if (quantity > 0) {
                box.add(new KitPlan.BoxItem(
                        item.sku(), item.name(), quantity, item.unit(), item.price(), item.weight()));
            }
        }
        job.heating().ifPresent(h -> addHeating(h, loops));
        return List.copyOf(box);
    }

    /** Pump and coolant that the job names, as far as they are sold. */
    private void addHeating(Job.Heating heating, List<Breakdown> loops) {
        heating.pump()
                .flatMap(job.catalog()::findPump)
                .ifPresent(p -> box.add(new KitPlan.BoxItem(p.sku(), p.name(), 1, "piece", p.price(), p.weight())));
        if (!heating.namesCoolant()) {
            return;
        }
        job.catalog().findCoolant(heating.coolant()).ifPresent(c -> c.litre()
                .ifPresent(l -> box.add(new KitPlan.BoxItem(
                        c.sku(),
                        c.name() + ", ready mixed",
                        Supplies.litres(job, loops),
                        "l",
                        l.price(),
                        l.weight()))));
    }

    private void addCoil(CoilPlan.CoilCut cut) {
        Pipe pipe = job.pipe().product();
        double used = cut.cuts().stream().mapToDouble(CoilPlan.LoopCut::length).sum();
        if (cut.id().isPresent() || pipe.supply() == Pipe.Supply.CUT) {
            long price = pipe.priceOfCut(used);
            String from = cut.id()
                    .filter(id -> !Remnant.isUnopened(id))
                    .map(id -> " from opened coil " + id)
                    .orElse(" from a coil of " + metres(cut.length()) + ", the rest stays in the workshop");
            String name = pipe.name() + ", cut of " + metres(used) + from;
            box.add(new KitPlan.BoxItem(pipe.sku(), name, 1, "cut", price, used / 1000 * pipe.weightPerMetre()));
            return;
        }
        Coil coil = pipe.coils().stream()
                .filter(c -> Math.abs(c.length() - cut.length()) < 0.01)
                .findFirst()
                .orElseThrow();
        double rest = coil.length() - used;
        String kept = rest < 1000 ? "" : ", of which " + metres(rest) + " are left for you";
        box.add(new KitPlan.BoxItem(
                pipe.sku(),
                pipe.name() + ", whole coil of " + metres(coil.length()) + kept,
                1,
                "coil",
                coil.price(),
                coil.length() / 1000 * pipe.weightPerMetre()));
    }

    private void addPlates(SpreaderPlate plate, PlatePlan plan) {
        for (PlateStock stock : plate.stock()) {
            List<PlateCut> bought = plan.boughtPlates(plate.sku(), stock.length());
            if (!bought.isEmpty()) {
                double cut = bought.stream().mapToDouble(BoxPacking::used).sum();
                box.add(new KitPlan.BoxItem(
                        plate.sku(),
                        String.format(Locale.ROOT, "%s, %.0f mm", plate.name(), stock.length()),
                        bought.size(),
                        "plate",
                        stock.price(),
                        cut / 1000 * plate.weightPerMetre() / bought.size()));
            }
        }
        for (PlateCut offcut : plan.stock()) {
            if (offcut.product().equals(plate.sku()) && offcut.id().isPresent()) {
                addOffcut(plate, offcut);
            }
        }
    }

    private void addOffcut(SpreaderPlate plate, PlateCut offcut) {
        double used = used(offcut);
        long price = plate.priceOfCut(used);
        String name = plate.name() + ", from offcut " + offcut.id().orElseThrow();
        box.add(new KitPlan.BoxItem(plate.sku(), name, 1, "offcut", price, used / 1000 * plate.weightPerMetre()));
    }

    private static double used(PlateCut cut) {
        return cut.cuts().stream().mapToDouble(Double::doubleValue).sum();
    }

    private static String metres(double mm) {
        return String.format(Locale.ROOT, "%.1f m", mm / 1000).replace(".0 m", " m");
    }

    private long quantity(Item item, List<Breakdown> loops, PlatePlan plates, CoilPlan coils, boolean routed) {
        if (!item.fits(job.pipe().product().sku())) {
            return 0;
        }
        return switch (item.per()) {
            case KIT -> item.quantityFor(1);
            case LOOP -> item.quantityFor(loops.size());
            case PORT -> item.quantityFor(2 * loops.size()); // flow and return of each
            case JOINT -> item.quantityFor(2 * pieces(coils));
            case BEND ->
                item.quantityFor(
                        loops.stream().mapToInt(Breakdown::quarterBends).sum());
            case METRE_OF_RUN -> item.quantityFor(straight(loops) / 1000);
            case METRE_OF_PIPE ->
                item.quantityFor(
                        loops.stream().mapToDouble(Breakdown::floorLength).sum() / 1000);
            case PLATE_PIECE -> item.quantityFor(plates.pieces().size());
            case SENSOR -> SensorPart.isWanted(job) ? item.quantityFor(1) : 0;
            case HAND_ROUTING -> routed ? 0 : item.quantityFor(1);
            case ON_DEMAND -> isAidNeeded(item) ? item.quantityFor(1) : 0;
        };
    }

    /** Pieces that pipe is cut into, each with two ends. */
    private static int pieces(CoilPlan coils) {
        return coils.coils().stream().mapToInt(c -> c.cuts().size()).sum();
    }

    /** All straight pipe, mm, lead-ins too: they are routed and taped like any run. */
    private static double straight(List<Breakdown> loops) {
        return loops.stream()
                .flatMap(l -> l.elements().stream())
                .filter(Element.Run.class::isInstance)
                .mapToDouble(Element::length)
                .sum();
    }

    private boolean isAidNeeded(Item item) {
        return job.pipe().product().aid().filter(item.sku()::equals).isPresent()
                && job.pipe().product().handRadius() > radius;
    }
}
