package org.runbend.optimizer.verify;

import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.Item;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.boards.BoardsPlan;
import org.runbend.optimizer.boards.BoardsProblem;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.KitPlan;

/** The rules of the box: each line exists, each catalog rule is kept, prices and weights add up. */
final class BoxRules {
    private static final double KILOGRAMS = 0.005;

    private final KitPlan plan;
    private final Catalog catalog;
    private final Pipe pipe;
    private final Findings findings;

    BoxRules(KitPlan plan, Findings findings) {
        this.plan = plan;
        this.catalog = plan.job().catalog();
        this.pipe = plan.job().pipe().product();
        this.findings = findings;
    }

    void check() {
        plan.items().forEach(this::checkLine);
        catalog.items().forEach(this::checkRule);
        checkAid();
        checkCount(pipe.sku(), plan.coils().coils().size());
        for (SpreaderPlate p : plan.job().plates().products()) {
            checkCount(
                    p.sku(),
                    plan.plates().stock().stream()
                            .filter(s -> s.product().equals(p.sku()))
                            .count());
        }
        checkHeating();
        checkSums();
    }

    /** The pump that a job names lies in the box; of a coolant that is sold as much as the bore of the pipe holds. */
    private void checkHeating() {
        plan.job().heating().ifPresent(h -> {
            h.pump()
                    .ifPresent(p -> findings.unless(
                            quantity(p) == 1, "pump %s: %d in the box, the job names %d", p, quantity(p), 1));
            catalog.findCoolant(h.coolant()).filter(c -> c.litre().isPresent()).ifPresent(c -> {
                double bore = (pipe.outer() - 2 * pipe.wall()) / 100;
                double cut = 0;
                for (KitPlan.LoopPlan loop : plan.loops()) {
                    cut += loop.cutLength() / 100.0;
                }
                double asked = h.namesCoolant() ? Math.ceil(Math.PI * bore * bore / 4 * cut - 1e-9) : 0;
                findings.unless(
                        quantity(c.sku()) == (long) asked,
                        "coolant %s: %d l in the box, the pipe holds %.0f l",
                        c.sku(),
                        quantity(c.sku()),
                        asked);
            });
        });
    }

    private void checkLine(KitPlan.BoxItem item) {
        findings.unless(
                item.quantity() > 0, "item %s: a quantity of %d, over %d asked", item.sku(), item.quantity(), 0);
        findings.unless(
                isSold(item.sku()), "item %s: that part number is not in the catalog (%d found)", item.sku(), 0);
        catalog.findItem(item.sku()).ifPresent(sold -> {
            findings.unless(
                    item.price() == sold.price(),
                    "item %s: a price of %d, the catalog says %d",
                    item.sku(),
                    item.price(),
                    sold.price());
            findings.unless(
                    Math.abs(item.weight() - sold.weight()) < 1e-9,
                    "item %s: a weight of %.3f kg, the catalog says %.3f kg",
                    item.sku(),
                    item.weight(),
                    sold.weight());
        });
    }

    private boolean isSold(String sku) {
        return catalog.findItem(sku).isPresent()
                || catalog.findPump(sku).isPresent()
                || catalog.findCoolant(sku).isPresent()
                || catalog.findBoard(sku).isPresent()
                || isLineOf(pipe.sku(), sku)
                || plan.job().plates().products().stream().anyMatch(p -> isLineOf(p.sku(), sku));
    }

    /** A coil or a stock plate goes by its product's part number, alone or with its length behind a sign. */
    private static boolean isLineOf(String product, String sku) {
        return sku.equals(product)
                || (sku.startsWith(product) && !Character.isLetterOrDigit(sku.charAt(product.length())));
    }

    private void checkRule(Item item) {
        if (item.per() == Item.Per.ON_DEMAND) {
            return;
        }
        boolean fits = item.forPipes().isEmpty() || item.forPipes().contains(pipe.sku());
        double asked = fits ? Math.max(0, Math.ceil(item.amount() * counted(item.per()) - 1e-9)) : 0;
        findings.unless(
                quantity(item.sku()) == (long) asked,
                "item %s: a quantity of %d, its rule %s asks for %.0f",
                item.sku(),
                quantity(item.sku()),
                item.per(),
                asked);
    }

    private double counted(Item.Per per) {
        if (per == Item.Per.KIT) {
            return 1;
        }
        if (per == Item.Per.SENSOR) {
            return plan.sensor().isPresent() ? 1 : 0;
        }
        if (per == Item.Per.HAND_ROUTING) {
            return plan.boards().filter(this::comesRouted).isPresent() ? 0 : 1;
        }
        if (per == Item.Per.LOOP) {
            return plan.loops().size();
        }
        if (per == Item.Per.PORT || per == Item.Per.JOINT) {
            return plan.loops().size() + plan.loops().size(); // flow and return of each
        }
        if (per == Item.Per.PLATE_PIECE) {
            return plan.plates().pieces().size();
        }
        double sum = 0;
        for (KitPlan.LoopPlan loop : plan.loops()) {
            for (Element e : loop.breakdown().elements()) {
                sum += share(per, e);
            }
        }
        return sum;
    }

    private boolean comesRouted(BoardsPlan boards) {
        return !boards.problem().making().saw()
                && boards.layers().stream().anyMatch(l -> l.layer().role() == BoardsProblem.Role.ROUTED);
    }

    private static double share(Item.Per per, Element element) {
        if (per == Item.Per.METRE_OF_PIPE) {
            return Reckoned.length(element) / 1000;
        }
        if (per == Item.Per.BEND) {
            return Reckoned.quarters(element);
        }
        return element instanceof Element.Run ? Reckoned.length(element) / 1000 : 0;
    }

    private long quantity(String sku) {
        long sum = 0;
        for (KitPlan.BoxItem i : plan.items()) {
            sum += i.sku().equals(sku) ? i.quantity() : 0;
        }
        return sum;
    }

    private void checkAid() {
        if (pipe.aid().isEmpty()) {
            return;
        }
        String aid = pipe.aid().get();
        // pipe turns into a hole by hand where half the spacing is enough for that, else at its least radius as fitted
        double half = plan.job().layout().spacing() / 2;
        double turn = pipe.handRadius() <= half + 1e-9 ? pipe.handRadius() : pipe.fittedRadius();
        double bends = plan.isOnLattice() ? Math.min(plan.bendRadius(), tightest()) : tightest();
        double least = plan.job().floor().port().turn() == Job.Turn.LEVEL ? bends : Math.min(turn, bends);
        boolean wanted = pipe.handRadius() > least;
        boolean byRule =
                catalog.findItem(aid).filter(i -> i.per() != Item.Per.ON_DEMAND).isPresent();
        findings.unless(
                byRule || (quantity(aid) > 0) == wanted,
                "item %s: %d bending aids, the radius by hand is %.2f mm at bends of %.2f mm",
                aid,
                quantity(aid),
                pipe.handRadius(),
                least);
    }

    /** Radius of the tightest bend; without any, no aid is missed. */
    private double tightest() {
        double least = Double.POSITIVE_INFINITY;
        for (KitPlan.LoopPlan loop : plan.loops()) {
            for (Element e : loop.breakdown().elements()) {
                least = e instanceof Element.Bend bend ? Math.min(least, bend.radius()) : least;
            }
        }
        return least;
    }

    /** Each coil and stock plate that is cut is charged, whole or by its share, and nothing else is. */
    private void checkCount(String product, long cut) {
        long packed = 0;
        for (KitPlan.BoxItem i : plan.items()) {
            packed += isLineOf(product, i.sku()) ? i.quantity() : 0;
        }
        findings.unless(packed == cut, "product %s: %d in the box, the plan cuts %d of it", product, packed, cut);
    }

    private void checkSums() {
        long total = 0;
        double weight = 0;
        for (KitPlan.BoxItem i : plan.items()) {
            total += i.price() * i.quantity();
            weight += i.weight() * i.quantity();
        }
        findings.unless(
                total == plan.total(), "box: a total of %d is claimed, its items add up to %d", plan.total(), total);
        findings.unless(
                Math.abs(weight - plan.weight()) <= KILOGRAMS,
                "box: a weight of %.3f kg is claimed, its items add up to %.3f kg",
                plan.weight(),
                weight);
    }
}
