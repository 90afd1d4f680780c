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
import org.runbend.optimizer.job.PipeRule;
import org.runbend.optimizer.lattice.Axis;
import org.runbend.optimizer.laying.LatticeDirection;
import org.runbend.optimizer.plan.KitPlan;

/**
 * What may be wished otherwise on a floor, in a fixed order: what a place left out costs, what decides among equal loops,
 * which way runs go, which coil the pipe is to fit, which plates cover how much. Sizes of the floor are nobody's change and stay.
 */
final class Candidates {
    /** A place left out costs more turns than any way round to it. */
    private static final int DEAR = 100;

    /** Between the dear price and the usual one: waves of bends where they serve much. */
    private static final int FAIR = 10;

    /** Shares of the price at which bends are saved for places left out. */
    private static final int[] CHEAPER = {3, 10};

    /** Plates over less than this heat unevenly (common practice). */
    private static final double LEAST_COVERAGE = 0.7;

    /** A coil under this share of what a plan cuts would leave too much floor cold, as {@code fit: coil} has it. */
    private static final double LEAST_OF_COIL = 0.8;

    /** What grooves and centres may be off, mm, as for the plates that a job names. */
    private static final double FITS = 0.5;

    private final Job asked;
    private final Job base;

    private Candidates(KitPlan plan) {
        this.asked = plan.job();
        Job base = asked.with(asked.floor(), asked.layout().withoutLoop());
        this.base = plan.isOnLattice()
                ? LatticeDirection.settled(base, plan.lattice().angle())
                : base;
    }

    /**
     * The jobs to plan beside the one given.
     *
     * @param plan the plan of the job given
     */
    static List<Candidate> of(KitPlan plan) {
        Candidates candidates = new Candidates(plan);
        return Stream.of(
                        candidates.laid(),
                        candidates.prices(),
                        candidates.preference(),
                        candidates.directions(),
                        candidates.coils(plan),
                        candidates.plates(),
                        candidates.cheap())
                .flatMap(List::stream)
                .toList();
    }

    /** Beside a loop that somebody drew: the best one on a lattice. */
    private List<Candidate> laid() {
        return asked.hasOwnLoop() ? List.of(candidate(List.of(), base)) : List.of();
    }

    private List<Candidate> prices() {
        List<Candidate> all = new ArrayList<>();
        double price = base.layout().leftOutPrice().inTurns();
        if (price < DEAR) {
            all.add(priced(DEAR));
        }
        if (price < FAIR) {
            all.add(priced(FAIR));
        }
        for (int part : CHEAPER) {
            int less = (int) Math.max(1, price / part);
            if (less < price
                    && all.stream()
                            .noneMatch(c -> c.job().layout().leftOutPrice().inTurns() == less)) {
                all.add(priced(less));
            }
        }
        return all;
    }

    private Candidate priced(int price) {
        return laidOut(
                List.of(price(price)),
                base.layout().withPrice(base.layout().leftOutPrice().withLeftOut(price)));
    }

    private List<Candidate> preference() {
        boolean even = base.layout().prefer() == Job.Prefer.EVEN_HEAT;
        Job.Prefer other = even ? Job.Prefer.LONG_RUNS : Job.Prefer.EVEN_HEAT;
        KeyChange change = new KeyChange("layout.prefer", even ? "long-runs" : "even-heat");
        return List.of(laidOut(List.of(change), base.layout().with(other)));
    }

    /** The other way round on the same lattice; lines met on site leave no choice. */
    private List<Candidate> directions() {
        LatticeDirection now = LatticeDirection.of(base);
        boolean met = base.layout().axis() == Job.RunAxis.FREE
                && (!base.floor().supports().isEmpty()
                        || base.layout().pipeRules().stream().anyMatch(PipeRule.MustRun.class::isInstance));
        return met ? List.of() : List.of(along(now.angle(), now.axis() == Axis.X ? Job.RunAxis.Y : Job.RunAxis.X));
    }

    private Candidate along(double angle, Job.RunAxis axis) {
        String word = axis == Job.RunAxis.X ? "x" : "y";
        String value = angle == 0 ? word : number(axis == Job.RunAxis.X ? angle : angle + 90);
        return laidOut(
                List.of(new KeyChange("layout.along", value)), base.layout().with(angle, axis));
    }

    /**
     * The coil that fits best of those that are a little too short for the plan, or equal parts of one for several loops;
     * and the longest new one and the longest opened one, if it is another.
     */
    private List<Candidate> coils(KitPlan plan) {
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
        if (coverage > LEAST_COVERAGE) {
            all.add(plated(List.of(coverage(LEAST_COVERAGE)), base.plates().products(), LEAST_COVERAGE));
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
    private List<Candidate> cheap() {
        double now = base.layout().leftOutPrice().inTurns();
        int price = (int) Math.max(1, now / CHEAPER[0]);
        if (price >= now || base.plates().coverage() <= LEAST_COVERAGE) {
            return List.of();
        }
        Job.PlateRequest plates = base.plates().with(base.plates().products(), LEAST_COVERAGE);
        return List.of(candidate(
                List.of(price(price), coverage(LEAST_COVERAGE)),
                base.with(
                        base.layout().withPrice(base.layout().leftOutPrice().withLeftOut(price)),
                        base.pipe(),
                        plates)));
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

    private static KeyChange price(int price) {
        return new KeyChange("layout.leftOutPrice", Integer.toString(price));
    }

    private static KeyChange coverage(double share) {
        return new KeyChange("plates.coverage", number(100 * share) + "%");
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.replaceFirst("\\.?0+$", "");
    }
}
