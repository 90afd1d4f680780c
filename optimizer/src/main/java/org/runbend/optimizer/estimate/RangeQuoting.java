package org.runbend.optimizer.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.runbend.catalog.product.Catalog;
import org.runbend.catalog.product.CatalogReader;
import org.runbend.catalog.product.Pipe;
import org.runbend.catalog.product.Rate;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.source.Nearest;
import org.runbend.catalog.source.Plain;
import org.runbend.catalog.source.SourceFile;
import org.runbend.optimizer.estimate.RoughFloor.Place;
import org.runbend.optimizer.estimate.RoughFloor.Standing;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.job.read.LoopDrawings;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.quote.Quote;
import org.runbend.optimizer.quote.Quoting;
import org.runbend.optimizer.work.Work;

/**
 * Prices a floor of which only two sizes are known, by planning it as somebody might measure it later. Each variant is written as a job
 * file and read by the reader of jobs, so every rule and default of a job holds.
 */
public final class RangeQuoting {
    /** Share of what can take plates, %, of a floor that need not warm the room alone; chosen. */
    static final int SPARING = 70;
    /** That of a floor plated wherever it can be. */
    static final int GENEROUS = 100;

    /** Places up to which the loop is sought: a second of work, measured. */
    private static final int QUICKLY_LAID = 220;

    private static final double USUAL_SPACING = 150;
    private static final double SHORTEST = 400;
    private static final double LONGEST = 12_000;
    /** The largest floors that kits are for, mm2. */
    private static final double LARGEST = 25e6;

    private final Function<Job, KitPlan> planner;
    private final Work work;

    /**
     * A pricer.
     *
     * @param planner plans a job
     * @param work what it runs under
     */
    public RangeQuoting(Function<Job, KitPlan> planner, Work work) {
        this.planner = planner;
        this.work = work;
    }

    /**
     * The range.
     *
     * @throws Unbuildable if the sizes are none of a floor, if no plate goes with pipe and spacing, or if no variant can be built
     * @throws org.runbend.catalog.source.BadInput if the catalog has faults, or the spacing is none
     */
    public PriceRange range(RangeAsked asked) {
        double length = Math.max(asked.length(), asked.width());
        double width = Math.min(asked.length(), asked.width());
        check(length, width);
        Catalog catalog = CatalogReader.read(asked.catalog());
        double spacing = asked.spacing().orElse(USUAL_SPACING);
        Pipe pipe = pipe(catalog, asked.pipe(), spacing);
        RoughFloor.Products products = new RoughFloor.Products(
                asked.catalog().toAbsolutePath().toString(), pipe.sku(), plates(catalog, pipe, spacing), spacing);
        List<Job> jobs = new ArrayList<>();
        List<RoughFloor> floors = floors(length, width, pipe, spacing);
        for (RoughFloor floor : floors) {
            jobs.add(JobReader.read(
                    SourceFile.made("size.yaml", floor.job(products)), Optional.empty(), LoopDrawings.NONE));
        }
        List<Integer> numbers = IntStream.range(0, jobs.size()).boxed().toList();
        List<Tried> tried = work.each(numbers, n -> tried(floors.get(n), jobs.get(n), asked.discount()));
        List<PriceRange.Priced> priced =
                tried.stream().flatMap(t -> t.priced().stream()).toList();
        if (priced.isEmpty()) {
            throw tried.get(0).reason().orElseThrow();
        }
        return new PriceRange(
                catalog.currency(),
                length,
                width,
                pipe.name(),
                spacing,
                catalog.sales().tax().map(t -> catalog.sales().taxName()),
                floors.get(0).port() == Place.COMB,
                priced,
                tried.size() - priced.size());
    }

    private static void check(double length, double width) {
        if (width < SHORTEST || length > LONGEST || length * width > LARGEST) {
            throw new Unbuildable(
                    "size",
                    Plain.number(length) + " x " + Plain.number(width) + " mm: a side of " + Plain.number(SHORTEST)
                            + " to " + Plain.number(LONGEST) + " mm and at most 25 m2 are possible");
        }
    }

    /**
     * A floor that needs little and one that needs much: on small floors each with its port in two places; on wide ones, where the best
     * loop is sought for minutes, with a plain loop, which needs hardly more pipe.
     */
    private static List<RoughFloor> floors(double length, double width, Pipe pipe, double spacing) {
        Comb comb = new Comb(length, width - RoughFloor.strip(width), spacing, RoughFloor.EDGE);
        boolean plain = comb.places() > QUICKLY_LAID && comb.hasRoom() && pipe.fittedRadius() <= spacing / 2;
        if (plain) {
            return List.of(
                    new RoughFloor(length, width, Standing.STRIP, Place.COMB, SPARING),
                    new RoughFloor(length, width, Standing.NOTHING, Place.COMB, GENEROUS));
        }
        return List.of(
                new RoughFloor(length, width, Standing.NOTCHES, Place.SHORT_SIDE, SPARING),
                new RoughFloor(length, width, Standing.NOTCHES, Place.CORNER, SPARING),
                new RoughFloor(length, width, Standing.NOTHING, Place.SHORT_SIDE, GENEROUS),
                new RoughFloor(length, width, Standing.NOTHING, Place.CORNER, GENEROUS));
    }

    private static Pipe pipe(Catalog catalog, Optional<String> asked, double spacing) {
        List<Pipe> fit = catalog.pipes().stream()
                .filter(p -> asked.map(p.sku()::equals).orElse(true))
                .toList();
        if (fit.isEmpty()) {
            List<String> sold = catalog.pipes().stream().map(Pipe::sku).toList();
            String nearest = asked.map(a -> Nearest.hint(a, sold)).orElse("");
            throw new Unbuildable("pipe", "the catalog has no pipe " + Plain.quoted(asked.orElse("")) + nearest);
        }
        return fit.stream()
                .filter(p -> hasPlates(catalog, p, spacing))
                .findFirst()
                .orElseThrow(() -> new Unbuildable(
                        "pipe",
                        "the catalog has no single-groove plate for pipe "
                                + fit.get(0).sku() + " at a spacing of " + Plain.number(spacing) + " mm"));
    }

    private static boolean hasPlates(Catalog catalog, Pipe pipe, double spacing) {
        return catalog.plates().stream().anyMatch(p -> p.grooves() == 1 && p.takes(pipe) && p.fits(spacing));
    }

    private static List<String> plates(Catalog catalog, Pipe pipe, double spacing) {
        return catalog.plates().stream()
                .filter(p -> p.takes(pipe) && p.fits(spacing))
                .map(SpreaderPlate::sku)
                .toList();
    }

    /** A variant that was planned, or why it cannot be. */
    private record Tried(Optional<PriceRange.Priced> priced, Optional<Unbuildable> reason) {}

    private Tried tried(RoughFloor floor, Job job, Optional<Rate> discount) {
        try {
            KitPlan plan = planner.apply(job);
            if (!plan.isSound()) {
                return new Tried(
                        Optional.empty(), Optional.of(new Unbuildable("size", "a plan of this floor fails a check")));
            }
            Quote quote = new Quoting().quote(plan, discount);
            boolean sent = quote.sending().how() == Quote.How.BY_WEIGHT
                    || quote.sending().how() == Quote.How.FREE;
            double pipe = plan.loops().stream()
                    .mapToDouble(KitPlan.LoopPlan::cutLength)
                    .sum();
            return new Tried(
                    Optional.of(
                            new PriceRange.Priced(words(floor), quote.totals().gross(), pipe, sent)),
                    Optional.empty());
        } catch (Unbuildable e) {
            return new Tried(Optional.empty(), Optional.of(e));
        }
    }

    private static String words(RoughFloor floor) {
        String floors = floor.standing() == Standing.NOTHING ? "generous" : "sparing";
        return switch (floor.port()) {
            case SHORT_SIDE -> floors + ", port in a short side";
            case CORNER -> floors + ", port in a corner";
            case COMB -> floors;
        };
    }
}
