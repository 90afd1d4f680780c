package org.runbend.optimizer.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.runbend.catalog.product.Coil;
import org.runbend.catalog.product.Money;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.plan.Remark;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePlan;

/** Says where a little less, or a little more, would take another coil or a plate less. Lengths in mm. */
final class NearMiss {
    /** Of the pipe cut: what may be too long for the next shorter coil and still be worth a word. */
    private static final double LITTLE = 0.05;

    /** mm: less than this left of a coil, and a tail measured anew needs another one. */
    private static final double SCANT = 300;

    /** Of what can take plates: what one plate less may leave bare and still be worth a word. */
    private static final double FEW = 0.03;

    private final Job job;

    NearMiss(Job job) {
        this.job = job;
    }

    /** What, if anything was missed by a little. */
    Optional<Remark> remark(CoilPlan coils, PlatePlan plates) {
        List<Remark.Near> near = new ArrayList<>();
        if (job.pipe().product().supply() == Pipe.Supply.WHOLE) {
            coils.coils().stream().filter(c -> c.id().isEmpty()).forEach(c -> coil(c).ifPresent(near::add));
        }
        plate(plates).ifPresent(near::add);
        return near.isEmpty() ? Optional.empty() : Optional.of(new Remark.JustMissed(near));
    }

    private Optional<Remark.Near> coil(CoilPlan.CoilCut cut) {
        double used = cut.cuts().stream().mapToDouble(CoilPlan.LoopCut::length).sum();
        List<Coil> sold = job.pipe().product().coils();
        Optional<Coil> own = sold.stream()
                .filter(c -> Math.abs(c.length() - cut.length()) < 0.01)
                .findFirst();
        Optional<Coil> shorter = sold.stream().filter(c -> c.length() < used).reduce((a, b) -> b);
        Optional<Coil> longer =
                sold.stream().filter(c -> c.length() > cut.length() + 0.01).findFirst();
        if (own.isPresent()
                && shorter.isPresent()
                && used - shorter.get().length() <= LITTLE * used
                && shorter.get().price() < own.get().price()) {
            double over = used - shorter.get().length();
            return Optional.of(new Remark.ShorterCoil(
                    over,
                    shorter.get().length(),
                    used,
                    money(own.get().price() - shorter.get().price()),
                    places(over)));
        }
        if (own.isPresent() && longer.isPresent() && cut.length() - used < SCANT) {
            return Optional.of(new Remark.FullCoil(
                    cut.length() - used,
                    cut.length(),
                    longer.get().length(),
                    money(longer.get().price() - own.get().price())));
        }
        return Optional.empty();
    }

    /** A closed loop passes an even number of places, so it loses them in twos. */
    private int places(double over) {
        double onFloor = over / (1 + job.pipe().allowance());
        return 2 * (int) Math.ceil(onFloor / job.layout().spacing() / 2);
    }

    private Optional<Remark.Near> plate(PlatePlan plan) {
        PlateCut least = null;
        for (PlateCut cut : plan.stock()) {
            least = cut.id().isEmpty() && price(cut) > 0 && (least == null || laid(cut) < laid(least)) ? cut : least;
        }
        if (least == null
                || plan.plateable() <= 0
                || laid(least) > FEW * plan.plateable()
                || plan.stock().size() < 2) {
            return Optional.empty();
        }
        double share = (plan.plated() - laid(least)) / plan.plateable();
        int asked = (int) Math.floor(100 * share);
        return asked < 1 || asked >= 100 * job.plates().coverage()
                ? Optional.empty()
                : Optional.of(new Remark.PlateLess(asked, job.plates().coverage(), money(price(least))));
    }

    /** Length of pipe that the pieces of a stock plate lie on. */
    private double laid(PlateCut cut) {
        double sum = cut.cuts().stream().mapToDouble(Double::doubleValue).sum();
        return sum * product(cut).map(SpreaderPlate::grooves).orElse(1);
    }

    private long price(PlateCut cut) {
        return product(cut).stream()
                .flatMap(p -> p.stock().stream())
                .filter(s -> Math.abs(s.length() - cut.length()) < 0.01)
                .mapToLong(PlateStock::price)
                .findFirst()
                .orElse(0);
    }

    private Optional<SpreaderPlate> product(PlateCut cut) {
        return job.plates().products().stream()
                .filter(p -> p.sku().equals(cut.product()))
                .findFirst();
    }

    private Money money(long minor) {
        return job.catalog().money(minor);
    }
}
