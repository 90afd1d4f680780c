package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.product.Coolant;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.catalog.product.Item;
import org.runbend.optimizer.boards.FixingPlan;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.channel.SensorPlan;
import org.runbend.optimizer.channel.SensorProblem;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;

/** What a job names and the box does not hold, so that nobody waits for it. */
public final class Supplies {
    private static final double MM3_PER_LITRE = 1e6;
    private static final double SAME = 1e-9;

    private Supplies() {}

    /** Coolant that the pipe holds, tails and allowance included, whole litres rounded up; pump, tank and valves hold more. */
    public static long litres(Job job, List<Breakdown> loops) {
        return (long) Math.ceil(inPipe(job, loops) - 1e-9);
    }

    private static double inPipe(Job job, List<Breakdown> loops) {
        double bore = job.pipe().product().outer() - 2 * job.pipe().product().wall();
        double length = loops.stream().mapToLong(l -> CutLength.of(job, l)).sum();
        return Math.PI / 4 * bore * bore * length / MM3_PER_LITRE;
    }

    /** What is named and not supplied, with how much of it is needed, one phrase each. */
    static List<String> missing(Job job, List<Breakdown> loops, Optional<KitHeat> heat) {
        List<String> missing = new ArrayList<>();
        job.heating()
                .filter(Job.Heating::namesCoolant)
                .flatMap(h -> job.catalog().findCoolant(h.coolant()))
                .flatMap(c -> c.litre().isPresent()
                        ? more(c, litres(job, loops), heat)
                        : Optional.of(all(c, job, loops, heat)))
                .ifPresent(missing::add);
        job.heating().ifPresent(h -> missing.addAll(fittings(job, h)));
        job.build().ifPresent(b -> missing.addAll(boards(job, b)));
        return missing;
    }

    /** Coolant for what the circuit holds beside the pipe: the box holds what fills the pipe. */
    private static Optional<String> more(Coolant coolant, long packed, Optional<KitHeat> heat) {
        if (heat.map(h -> rest(h) > 0).orElse(false)) {
            double more = heat.get().solution().filling().litres() - packed;
            return Optional.of(more)
                    .filter(l -> l > 0)
                    .map(l -> String.format(
                            Locale.ROOT,
                            "%s, %.1f l more for what the circuit holds beside the pipe",
                            coolant.name(),
                            Math.ceil(10 * l - 1e-6) / 10));
        }
        return Optional.of(
                coolant.name() + ", more of it for " + elsewhere(heat) + ": the box holds what fills the pipe");
    }

    private static double rest(KitHeat heat) {
        return heat.solution().filling().rest();
    }

    /** What else is to be filled, where the job does not say how much it holds. */
    private static String elsewhere(Optional<KitHeat> heat) {
        String tank = heat.map(h -> h.problem().circuit().closed() ? " and the vessel" : " and the header tank")
                .orElse("");
        return "the rest of the circuit" + tank + " (how much that holds was not given)";
    }

    /** All of a coolant that the workshop does not sell. */
    private static String all(Coolant coolant, Job job, List<Breakdown> loops, Optional<KitHeat> heat) {
        double pipe = heat.map(h -> h.solution().filling())
                .map(f -> f.loop() + f.tails())
                .orElseGet(() -> inPipe(job, loops));
        String start = String.format(Locale.ROOT, "%s, %.2f l for pipe and tails", coolant.name(), pipe);
        return heat.filter(h -> rest(h) > 0)
                .map(h -> start + String.format(Locale.ROOT, " and %.2f l for the rest of the circuit", rest(h)))
                .orElseGet(() -> start + ", more for " + elsewhere(heat));
    }

    /** What every heated floor takes; a mixing valve is what a catalog puts into each kit, if it puts anything there. */
    private static List<String> fittings(Job job, Job.Heating heating) {
        List<String> fittings = new ArrayList<>();
        if (job.catalog().items().stream().noneMatch(i -> i.per() == Item.Per.KIT)) {
            fittings.add("mixing valve with thermometer");
        }
        if (heating.pump().isEmpty()) {
            fittings.add("circulation pump");
        }
        return fittings;
    }

    private static List<String> boards(Job job, Job.Build build) {
        double area = FloorShapes.polygon(job.floor().outline()).getArea() / 1e6;
        String cover = build.coverName(job.catalog());
        List<String> boards = new ArrayList<>();
        if (build.coverThickness() > 0) {
            boards.add(String.format(
                    Locale.ROOT, "cover (%s, %s mm, %.2f m2 of floor)", cover, mm(build.coverThickness()), area));
        }
        build.board()
                .ifPresent(b -> boards.add(String.format(
                        Locale.ROOT,
                        "board for the groove (%s, %s mm, %.2f m2 of floor)",
                        b.board().name(),
                        mm(b.thickness()),
                        area)));
        if (build.board().isEmpty()) {
            boards.add(String.format(
                    Locale.ROOT,
                    "what takes the groove (board or foam %s mm thick beside it, which the job does not name; %.2f m2 of floor)",
                    mm(job.groove().depth()),
                    area));
        }
        if (build.laidUnder() > SAME) {
            String insulation = InsulationStack.of(job.catalog(), build.laidUnder())
                    .map(InsulationStack::words)
                    .orElse("at least " + mm(build.laidUnder()) + " mm");
            boards.add(String.format(Locale.ROOT, "insulation (%s, %.2f m2 of floor)", insulation, area));
        }
        return boards;
    }

    /** What the cable of the sensor is drawn through. */
    static String conduit(SensorPlan sensor) {
        return String.format(
                Locale.ROOT,
                "conduit for the floor sensor (%s mm across at most, %.1f m)",
                mm(SensorProblem.CONDUIT),
                Math.ceil(sensor.length() / 100 - 1e-9) / 10);
    }

    /** What holds the cover. */
    static String screws(FixingPlan fixing) {
        return fixing.screws().size() + " screws for the cover"
                + (fixing.length().isPresent() ? " (" + mm(fixing.length().getAsDouble()) + " mm long)" : "");
    }

    private static String mm(double size) {
        return String.format(Locale.ROOT, "%.1f", size).replaceFirst("\\.0$", "");
    }
}
