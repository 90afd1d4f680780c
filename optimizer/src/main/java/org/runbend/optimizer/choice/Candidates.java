package org.runbend.optimizer.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.PlacePrice;
import org.runbend.optimizer.laying.FreeDirection;
import org.runbend.optimizer.laying.LatticeDirection;
import org.runbend.optimizer.laying.LoopPipes;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.PlaceValue;
import org.runbend.optimizer.planning.PlacePricing;
import org.runbend.optimizer.work.Work;

/**
 * What may be wished otherwise on a floor, in a fixed order: what a place left out costs, what decides among equal loops, which coil
 * the pipe is to fit, which plates cover how much. Sizes of the floor are nobody's change and stay, and so does its lattice.
 */
final class Candidates {
    /** Prices of a place left out, quarter bends: the least that one is worth, for few bends; and twice a bend, for more floor served. */
    private static final double[] PRICES = {PlaceValue.LEAST, 2};

    /** Plates over less than this heat unevenly (common practice). */
    private static final double LEAST_COVERAGE = 0.7;

    /** A coil under this share of what a plan cuts would leave too much floor cold, as {@code fit: coil} has it. */
    private static final double LEAST_OF_COIL = 0.8;

    /** What grooves and centres may be off, mm, as for the plates that a job names. */
    private static final double FITS = 0.5;

    private final KitPlan plan;
    private final Job asked;
    private final Job base;

    /**
     * The candidates beside a plan.
     *
     * @param plan the plan of the job given
     */
    Candidates(KitPlan plan, Work work) {
        this.plan = plan;
        this.asked = plan.job();
        Job free = PlacePricing.settled(asked.with(asked.floor(), asked.layout().withoutLoop()));
        Job laid = plan.isOnLattice() ? free : new FreeDirection(LoopPipes.bendRadius(free), work).settle(free);
        double angle = plan.isOnLattice()
                ? plan.lattice().angle()
                : LatticeDirection.of(laid).angle();
        this.base = LatticeDirection.settled(laid, angle);
    }

    /** The job given as it is laid, price and direction settled; a loop that somebody drew is left out of it. */
    Job base() {
        return base;
    }

    /** The jobs to plan beside the one given. */
    List<Candidate> all() {
        return Stream.of(laid(), prices(), List.of(preference()), coils(), plates(), thrifty())
                .flatMap(List::stream)
                .toList();
    }

    /** Beside a loop that somebody drew: the best one on a lattice. */
    private List<Candidate> laid() {
        return asked.hasOwnLoop() ? List.of(candidate(List.of(), base)) : List.of();
    }

    private List<Candidate> prices() {
        List<Candidate> all = new ArrayList<>();
        if (!asked.written().autoPrice() && !asked.hasOwnLoop()) {
            PlacePrice auto = PlacePricing.worked(base);
            if (!auto.equals(base.layout().leftOutPrice())) {
                all.add(laidOut(
                        List.of(new KeyChange("layout.leftOutPrice", "auto")),
                        base.layout().withPrice(auto)));
            }
        }
        for (double price : PRICES) {
            if (price != base.layout().leftOutPrice().inTurns()) {
                all.add(laidOut(List.of(price(price)), priced(price)));
            }
        }
        return all;
    }

    /** As whoever writes that number gets it: straight pieces have no price then. */
    private Job.Layout priced(double price) {
        int parts = (int) Math.round(price * PlacePrice.PARTS);
        return base.layout().withPrice(new PlacePrice(PlacePrice.PARTS, parts, 0, List.of()));
    }

    private Candidate preference() {
        boolean even = base.layout().prefer() == Job.Prefer.EVEN_HEAT;
        Job.Prefer other = even ? Job.Prefer.LONG_RUNS : Job.Prefer.EVEN_HEAT;
        KeyChange change = new KeyChange("layout.prefer", even ? "long-runs" : "even-heat");
        return laidOut(List.of(change), base.layout().with(other));
    }

    /**
     * The coil that fits best of those that are a little too short for the plan, or equal parts of one for several loops;
     * and the longest new one and the longest opened one, if it is another.
     */
    private List<Candidate> coils() {
        double cut = plan.loops().stream()
                .mapToDouble(KitPlan.LoopPlan::cutLength)
                .max()
                .orElse(0);
        int loops = plan.loops().size();
        double[] sold = base.pipe().product().coils().stream()
                .mapToDouble(c -> c.length())
                .toArray();
        double[] opened = base.shelf().of(base.pipe().product().sku()).stream()
                .mapToDouble(r -> r.length())
                .toArray();
        OptionalDouble best = nearest(
                cut,
                DoubleStream.concat(
                        Arrays.stream(sold)
                                .flatMap(l -> IntStream.rangeClosed(1, loops).mapToDouble(n -> l / n)),
                        Arrays.stream(opened).filter(l -> loops == 1)));
        boolean fit = best.isPresent() && !base.layout().fitCoil();
        Stream<Candidate> fitted = fit
                ? Stream.of(laidOut(
                        List.of(new KeyChange("layout.fit", "coil")),
                        base.layout().withFit()))
                : Stream.empty();
        Stream<Candidate> limited = Stream.of(sold, opened)
                .map(lengths -> nearest(cut, Arrays.stream(lengths)))
                .flatMapToDouble(OptionalDouble::stream)
                .distinct()
                .filter(l -> !fit || l != best.getAsDouble())
                .mapToObj(this::limited);
        return Stream.concat(fitted, limited).toList();
    }

    /** The longest that is a little too short. */
    private static OptionalDouble nearest(double cut, DoubleStream lengths) {
        return lengths.filter(l -> l >= LEAST_OF_COIL * cut && l < cut).max();
    }

    private Candidate limited(double limit) {
        Job job = base.with(base.layout(), base.pipe().limitedTo(limit), base.plates());
        return candidate(List.of(new KeyChange("pipe.loopLimit", number(limit))), job);
    }

    private List<Candidate> plates() {
        List<Candidate> all = new ArrayList<>();
        double coverage = base.plates().coverage();
        boolean none = base.plates().products().isEmpty();
        if (coverage > LEAST_COVERAGE && !none) {
            all.add(plated(List.of(coverage(LEAST_COVERAGE)), base.plates().products(), LEAST_COVERAGE));
        }
        if (coverage < 1 && !none) {
            all.add(plated(List.of(coverage(1)), base.plates().products(), 1));
        }
        List<SpreaderPlate> fitting =
                base.catalog().plates().stream().filter(this::fits).toList();
        Stream.concat(Stream.of(fitting), fitting.stream().map(List::of))
                .distinct()
                .filter(p -> p.stream().anyMatch(plate -> plate.grooves() == 1))
                .filter(p -> !names(p).equals(names(base.plates().products())))
                .forEach(p ->
                        all.add(plated(List.of(new KeyChange("plates.product", "[" + names(p) + "]")), p, coverage)));
        return all;
    }

    private static String names(List<SpreaderPlate> plates) {
        return plates.stream().map(SpreaderPlate::sku).sorted().collect(Collectors.joining(", "));
    }

    private boolean fits(SpreaderPlate plate) {
        double spacing = base.layout().spacing();
        return Math.abs(plate.grooveDiameter() - base.pipe().product().outer()) <= FITS
                && (plate.grooves() == 1 || Math.abs(plate.centres() - spacing) <= FITS)
                && plate.width() <= plate.grooves() * spacing;
    }

    private Candidate plated(List<KeyChange> changes, List<SpreaderPlate> products, double coverage) {
        return candidate(
                changes, base.with(base.layout(), base.pipe(), base.plates().with(products, coverage)));
    }

    /** Fewer bends and fewer plates at once. */
    private List<Candidate> thrifty() {
        double price = PRICES[0];
        if (base.plates().products().isEmpty()
                || base.plates().coverage() <= LEAST_COVERAGE
                || price == base.layout().leftOutPrice().inTurns()) {
            return List.of();
        }
        Job.PlateRequest plates = base.plates().with(base.plates().products(), LEAST_COVERAGE);
        return List.of(candidate(
                List.of(price(price), coverage(LEAST_COVERAGE)), base.with(priced(price), base.pipe(), plates)));
    }

    private Candidate laidOut(List<KeyChange> changes, Job.Layout layout) {
        return candidate(changes, base.with(layout, base.pipe(), base.plates()));
    }

    /** A loop that somebody drew has to go first. */
    private Candidate candidate(List<KeyChange> changes, Job job) {
        List<KeyChange> all = new ArrayList<>(changes);
        if (asked.hasOwnLoop()) {
            all.add(0, new KeyChange("layout.loop", "left out"));
        }
        return new Candidate(all, job);
    }

    private static KeyChange price(double price) {
        return new KeyChange("layout.leftOutPrice", number(price));
    }

    private static KeyChange coverage(double share) {
        return new KeyChange("plates.coverage", number(100 * share) + "%");
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.replaceFirst("\\.?0+$", "");
    }
}
