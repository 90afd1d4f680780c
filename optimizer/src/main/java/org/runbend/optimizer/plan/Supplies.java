package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.runbend.catalog.product.Coolant;
import org.runbend.catalog.product.InsulationStack;
import org.runbend.optimizer.breakdown.Breakdown;
import org.runbend.optimizer.breakdown.CutLength;
import org.runbend.optimizer.floor.FloorShapes;
import org.runbend.optimizer.job.Job;

/** What a job names and the box does not hold, so that nobody waits for it. */
public final class Supplies {
    private static final double MM3_PER_LITRE = 1e6;
    private static final double SAME = 1e-9;

    private Supplies() {}

    /** Coolant that the pipe holds, tails and allowance included, whole litres rounded up; pump, tank and valves hold more. */
    public static long litres(Job job, List<Breakdown> loops) {
        double bore = job.pipe().product().outer() - 2 * job.pipe().product().wall();
        double length = loops.stream().mapToLong(l -> CutLength.of(job, l)).sum();
        return (long) Math.ceil(Math.PI / 4 * bore * bore * length / MM3_PER_LITRE - 1e-9);
    }

    /** What is named and not supplied, with how much of it is needed, one phrase each. */
    static List<String> missing(Job job, List<Breakdown> loops, OptionalDouble filling) {
        List<String> missing = new ArrayList<>();
        rest(job, loops, filling).ifPresent(missing::add);
        job.heating().filter(Job.Heating::namesCoolant).ifPresent(h -> job.catalog()
                .findCoolant(h.coolant())
                .filter(c -> c.litre().isEmpty())
                .ifPresent(c -> missing.add(coolant(c, litres(job, loops)))));
        job.build().ifPresent(b -> missing.addAll(boards(job, b)));
        return missing;
    }

    /** Coolant for what the circuit holds beside the pipe, where the job tells it: the box holds what fills the pipe. */
    private static Optional<String> rest(Job job, List<Breakdown> loops, OptionalDouble filling) {
        double more = filling.orElse(0) - litres(job, loops);
        return job.heating()
                .filter(Job.Heating::namesCoolant)
                .flatMap(h -> job.catalog().findCoolant(h.coolant()))
                .filter(c -> more > 0 && c.litre().isPresent())
                .map(c -> String.format(
                        Locale.ROOT,
                        "%s, %.1f l more for what the circuit holds beside the pipe",
                        c.name(),
                        Math.ceil(10 * more - 1e-6) / 10));
    }

    private static String coolant(Coolant coolant, long litres) {
        return coolant.name() + ", about " + litres + " l for the pipe alone";
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

    private static String mm(double size) {
        return String.format(Locale.ROOT, "%.1f", size).replaceFirst("\\.0$", "");
    }
}
