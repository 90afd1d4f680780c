package org.runbend.optimizer.laying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.bare.BareFloor;
import org.runbend.optimizer.bare.BareFloorSearch;
import org.runbend.optimizer.bare.BareProblem;
import org.runbend.optimizer.breakdown.Keyhole;
import org.runbend.optimizer.floor.Entry;
import org.runbend.optimizer.floor.FloorProblem;
import org.runbend.optimizer.floor.Lattice;
import org.runbend.optimizer.floor.LatticeSearch;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Point;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopListener;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Posture;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.TradeOff;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.loop.search.LoopSketch;
import org.runbend.optimizer.loop.search.LoopSolver;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.verify.LoopVerifier;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/**
 * Chooses lattice and port pair and lays the loop: the best over a few lattices that reach equally many nodes.
 *
 * <p>On small floors several offsets reach as many nodes but leave bends different room, so each is tried.
 */
public final class LoopLaying {
    /** Floors up to this many nodes try several lattices; chosen, not measured. */
    private static final int SMALL = 130;

    /** So many of them: chosen, not measured. */
    private static final int MOST_LATTICES = 3;
    /** Lattices on which a quick look tries to find any loop; chosen, not measured. */
    private static final int MOST_LOOKED_AT = 6;
    /** A floor of up to so many nodes is laid in earnest where the quick look finds nothing; chosen, not measured. */
    private static final int QUICKLY_LAID = 200;

    /** The share comes from floors of 1 to 9 m2, measured. */
    private static final String STIFF =
            "stiff pipe: at this spacing no two bends in a row, so expect 80 to 95 % of the places to be"
                    + " served, less on narrow floors";

    /** What to expect of a stiff pipe. */
    public static String stiff(Job job) {
        double radius = job.pipe().product().fittedRadius();
        double spacing = job.layout().spacing();
        return Keyhole.fitsBeside(spacing, radius)
                ? String.format(
                        Locale.ROOT,
                        "stiff pipe: return bends are keyholes that swing out %.1f mm on each side, and floor may stay"
                                + " bare where they have no room",
                        radius - spacing / 2)
                : STIFF;
    }

    /** A loop on its lattice. */
    public record Laid(Lattice lattice, LoopSolution loop) {
        /** The same loop with what was proved about another of the same objective on the same lattice. */
        private Laid boundedBy(LoopSolution known) {
            return new Laid(lattice, loop.boundedBy(known));
        }

        /** Whether the ways to the holes were settled before it was laid. */
        boolean hasLeads() {
            return !lattice.leads().isEmpty();
        }
    }

    /** All that the loop of a job depends on. */
    private record Question(FloorProblem problem, Preference preference) {
        static Question of(Job job, double radius) {
            return new Question(
                    LoopLaying.problem(job, radius, job.floor().port().reach()), LoopLaying.preference(job));
        }
    }

    /** The floor that stays bare beside the loops laid, and what would free it. */
    public List<BareFloor> bareFloor(Job job, double radius, LaidLoops laid) {
        FloorProblem problem =
                problem(laid.turned(job), radius, job.floor().port().reach());
        return new BareFloorSearch()
                .find(new BareProblem(job.floor(), problem, laid.lattice(), laid.whole(), BareProblem.Limits.of(job)));
    }

    /** The best loop over a few lattices; throws {@code Unbuildable} where there is none. The same is laid once under the same work. */
    public Laid lay(Job job, double radius, Work work) {
        return work.once(Question.of(job, radius), Laid.class, () -> laidAnew(job, radius, work));
    }

    /**
     * The loop for other prices or another preference, on the lattice of what is laid for a job of the same floor; on a wide floor it
     * begins with that loop. Where that gives none it is laid by itself.
     *
     * @param known the job that is laid, its direction settled
     * @param job the same job but for prices, preference, plates and limits of the pipe
     */
    Laid layBeside(Job known, Job job, double radius, Work work) {
        Laid laid = lay(known, radius, work);
        Question question = Question.of(job, radius);
        if (question.equals(Question.of(known, radius))) {
            return laid;
        }
        LoopPipes pipes = new LoopPipes(job, radius);
        boolean sameObjective =
                question.problem().equals(Question.of(known, radius).problem());
        return new LatticeSearch()
                .at(question.problem(), laid.lattice().origin())
                .flatMap(lattice -> beside(job, lattice, laid.loop(), work))
                .map(l -> sameObjective ? l.boundedBy(laid.loop()) : l)
                .filter(l -> pipes.withoutRoom(question.problem(), List.of(pipes.of(l.lattice, l.loop)), l.hasLeads())
                        .isEmpty())
                .orElseGet(() -> lay(job, radius, work));
    }

    private static Optional<Laid> beside(Job job, Lattice lattice, LoopSolution known, Work work) {
        LoopProblem problem = loopProblem(job, lattice);
        Optional<LoopSolution> loop = solver(work, nodes -> sketch(lattice, nodes))
                .solveFrom(problem, known.cycle())
                .value();
        loop.ifPresent(l -> verify(problem, l));
        return loop.map(l -> new Laid(lattice, l));
    }

    private Laid laidAnew(Job job, double radius, Work work) {
        FloorProblem problem = problem(job, radius, job.floor().port().reach());
        if (job.isStiff()) {
            work.step(stiff(job));
        }
        work.step("finding where pipe can lie");
        List<Lattice> lattices = new LatticeSearch().best(problem, LatticeSearch.MOST_CHOSEN_FROM);
        if (lattices.isEmpty()) {
            throw WishConflict.of(job, LoopLaying::canBeLaid).orElseGet(() -> noPlace(job, radius));
        }
        if (lattices.size() > 1) {
            work.step("comparing where it could lie otherwise");
            int most = lattices.get(0).reachable() > SMALL ? 1 : MOST_LATTICES;
            lattices = mostPromising(job, lattices, most, work);
        }
        LoopPipes pipes = new LoopPipes(job, radius);
        Laid best = best(job, lattices, work);
        while (pipes.withoutRoom(problem, List.of(pipes.of(best.lattice, best.loop)), best.hasLeads())
                .isPresent()) {
            work.step("no room to turn into the holes there, trying others");
            lattices = without(best.loop.port(), best.lattice, lattices);
            if (lattices.isEmpty()) {
                throw noRoomForSlots(problem);
            }
            best = best(job, lattices, work);
        }
        return best;
    }

    private static Laid best(Job job, List<Lattice> lattices, Work work) {
        List<Laid> laid = new ArrayList<>();
        Unbuildable failure = null;
        for (Lattice lattice : lattices) {
            work.step(String.format(
                    Locale.ROOT,
                    "laying the loop over %d places",
                    lattice.graph().size()));
            LoopProblem loop = new LoopProblem(lattice.graph(), lattice.ports(), preference(job), WorkLimit.standard());
            Answer<LoopSolution> outcome = solve(loop, lattice, work);
            if (outcome instanceof Answer.Found<LoopSolution> found) {
                verify(loop, found.it());
                laid.add(new Laid(lattice, found.it()));
            } else {
                failure = failure(outcome);
            }
        }
        if (laid.isEmpty()) {
            Unbuildable reason = failure;
            throw WishConflict.of(job, LoopLaying::canBeLaid).orElse(reason);
        }
        Laid best = laid.get(0);
        for (Laid other : laid) {
            best = other.loop().objective() < best.loop().objective() ? other : best;
        }
        return best;
    }

    /** Laid in the posture that all images of a floor share, or as it is known from one of them. */
    private static Answer<LoopSolution> solve(LoopProblem problem, Lattice lattice, Work work) {
        Posture posture = Posture.of(problem);
        LoopSolver solver = solver(work, nodes -> sketch(lattice, posture.back(nodes)));
        Answer<LoopSolution> answer = work.recall(
                        new Floor(posture.numbers()), Outcome.class, () -> new Outcome(solver.solve(posture.problem())))
                .answer();
        return answer instanceof Answer.Found<LoopSolution> found ? Answer.found(posture.back(found.it())) : answer;
    }

    /**
     * A floor as its loop sees it, the question under which the loop is known beyond one plan.
     *
     * @param numbers all that the loop depends on, as {@link Posture#numbers} has it
     */
    public record Floor(List<Integer> numbers) {}

    /** What came of laying a loop there. */
    private record Outcome(Answer<LoopSolution> answer) {}

    /** The lattices, one of them without a port pair, or not at all where it has no other. */
    private static List<Lattice> without(PortPair pair, Lattice lattice, List<Lattice> lattices) {
        List<PortPair> ports = new ArrayList<>(lattice.ports());
        ports.remove(LoopPipes.indexOf(lattice, pair));
        List<Lattice> left = new ArrayList<>(lattices);
        int at = lattices.indexOf(lattice);
        left.remove(at);
        if (!ports.isEmpty()) {
            left.add(at, lattice.withPorts(ports));
        }
        return left;
    }

    /** Says that no slot fits, and what is short. */
    static Unbuildable noRoomForSlots(FloorProblem problem) {
        Entry entry = problem.entry();
        return new Unbuildable(
                "floor.port",
                String.format(
                        Locale.ROOT,
                        "the pipe cannot turn into a hole anywhere within %.0f mm of the port: each slot takes %.0f mm of"
                                + " straight pipe, and its pocket of %.0f mm keeps %.0f mm from the edge of the floor; a"
                                + " greater spacing or edge, or another place of the port, would do",
                        problem.reach(),
                        entry.slot(),
                        entry.pad(),
                        entry.leastWeb()));
    }

    /** Whether a quick look finds any loop; a look of a few seconds at most. */
    static boolean canBeLaid(Job job) {
        double radius = LoopPipes.bendRadius(job);
        List<Lattice> lattices =
                new LatticeSearch().best(problem(job, radius, job.floor().port().reach()), MOST_LOOKED_AT);
        return lattices.stream().anyMatch(lattice -> look(job, lattice) < Long.MAX_VALUE)
                || lattices.stream()
                        .filter(lattice -> lattice.reachable() <= QUICKLY_LAID)
                        .limit(1)
                        .anyMatch(
                                l -> new LoopSolver().solve(loopProblem(job, l)) instanceof Answer.Found<LoopSolution>);
    }

    private static LoopProblem loopProblem(Job job, Lattice lattice) {
        return new LoopProblem(lattice.graph(), lattice.ports(), preference(job), WorkLimit.standard());
    }

    /**
     * The lattices on which a quick look finds the best loops; the freest ones among equals. The looks are independent, so
     * they may run on all cores; their order stays. The best of these loops is shown to whoever watches.
     */
    private static List<Lattice> mostPromising(Job job, List<Lattice> lattices, int most, Work work) {
        List<Look> looks = work
                .each(lattices, lattice -> new Look(lattice, new LoopSketch().rough(loopProblem(job, lattice))))
                .stream()
                .sorted(Comparator.comparingLong(Look::objective))
                .toList();
        Look first = looks.get(0);
        first.rough.ifPresent(r -> work.sketch(() -> sketch(first.lattice, r.nodes())));
        return looks.stream().limit(most).map(Look::lattice).toList();
    }

    private record Look(Lattice lattice, Optional<LoopSketch.Rough> rough) {
        long objective() {
            return rough.map(LoopSketch.Rough::objective).orElse(Long.MAX_VALUE);
        }
    }

    private static long look(Job job, Lattice lattice) {
        return new LoopSketch().objective(loopProblem(job, lattice)).orElse(Long.MAX_VALUE);
    }

    /** About what the best loop on a lattice costs, or the largest number. */
    static long estimate(Job job, Lattice lattice) {
        return new LoopSketch().estimate(loopProblem(job, lattice)).orElse(Long.MAX_VALUE);
    }

    private static void verify(LoopProblem problem, LoopSolution solution) {
        List<Finding> violations = LoopVerifier.verify(problem, solution);
        if (!violations.isEmpty()) {
            throw new IllegalStateException("the loop laid breaks a rule: " + violations);
        }
    }

    private static Unbuildable failure(Answer<LoopSolution> outcome) {
        return outcome instanceof Answer.Unknown<LoopSolution> wide
                ? new Unbuildable("floor.outline", "the floor is too wide to lay a loop on yet: " + wide.reason())
                : new Unbuildable("floor", "no closed loop is possible: " + outcome.reason());
    }

    static FloorProblem problem(Job job, double radius, double reach) {
        return problem(job, radius, reach, FloorProblem.PORTS);
    }

    static FloorProblem problem(Job job, double radius, double reach, int mostPorts) {
        return problem(job, radius, reach, mostPorts, job.layout().loops().orElse(1));
    }

    static FloorProblem problem(Job job, double radius, double reach, int mostPorts, int loops) {
        return new FloorProblem(
                job.floor().outline(),
                job.floor().keepOuts(),
                job.floor().unheated().stream().map(Job.Unheated::region).toList(),
                job.floor().port().at(),
                reach,
                job.layout().spacing(),
                job.layout().edge(),
                radius,
                LatticeDirection.of(job).angle(),
                job.layout().leftOutPrice(),
                job.floor().supports().stream()
                        .map(s -> s.widened(job.pipe().product().outer()))
                        .toList(),
                job.layout().pipeRules(),
                mostPorts,
                Entry.of(job, loops));
    }

    /** What a job prefers among equal loops. */
    public static Preference preference(Job job) {
        return new Preference(
                LatticeDirection.of(job).axis(),
                job.layout().prefer() == Job.Prefer.EVEN_HEAT,
                job.plates().bendClearance() / job.layout().spacing());
    }

    /** Says whether the floor is too small or the port too far, and what would do. */
    static Unbuildable noPlace(Job job, double radius) {
        if (!job.floor().port().holes().isEmpty()) {
            return new NearestHoles(job, radius).fault();
        }
        List<Lattice> anywhere = new LatticeSearch().best(problem(job, radius, 1e6), 1);
        List<Lattice> free = anywhere.isEmpty()
                ? new LatticeSearch().best(problem(job, radius, 1e6).withFreeEntry(), 1)
                : List.of();
        if (!free.isEmpty()) {
            return new Unbuildable(
                    "floor.port",
                    "no place for the holes of flow and return on this floor: "
                            + (job.floor().port().turn() == Job.Turn.LEVEL
                                    ? "nowhere can both run straight on through the wall"
                                    : "a hole keeps off the edge, off what stands on the floor and off what lies below")
                            + "; another floor.port.turn or less in floor.below would do");
        }
        if (anywhere.isEmpty()) {
            return new Unbuildable(
                    "floor.outline",
                    String.format(
                            Locale.ROOT,
                            "the floor is too small for any loop: at spacing %.0f and edge %.0f mm a clear square of at"
                                    + " least %.0f mm is needed",
                            job.layout().spacing(),
                            job.layout().edge(),
                            job.layout().spacing() + 2 * job.layout().edge()));
        }
        Point port = job.floor().port().at();
        double nearest = Double.POSITIVE_INFINITY;
        for (PortPair pair : anywhere.get(0).ports()) {
            double reach = Math.max(
                    port.distance(anywhere.get(0).at(pair.from())),
                    port.distance(anywhere.get(0).at(pair.to())));
            nearest = Math.min(nearest, reach);
        }
        return new Unbuildable(
                "floor.port",
                String.format(
                        Locale.ROOT,
                        "no place for flow and return within %.0f mm of the port; a reach of %.0f mm would do",
                        job.floor().port().reach(),
                        Math.ceil(nearest)));
    }

    private static LoopSolver solver(Work work, Function<List<Integer>, Progress.Sketch> sketch) {
        return new LoopSolver(new LoopListener() {
            @Override
            public void better(TradeOff pair) {
                work.step(String.format(
                        Locale.ROOT,
                        "a loop with %d corners, %d %s left out",
                        pair.turns(),
                        pair.leftOut(),
                        pair.leftOut() == 1 ? "place" : "places"));
            }

            @Override
            public void better(TradeOff pair, Supplier<List<Integer>> nodes) {
                better(pair);
                work.sketch(() -> sketch.apply(nodes.get()));
            }
        });
    }

    private static Progress.Sketch sketch(Lattice lattice, List<Integer> nodes) {
        List<Progress.Place> line = nodes.stream()
                .map(lattice::at)
                .map(p -> new Progress.Place(p.x(), p.y()))
                .toList();
        return new Progress.Sketch(List.of(line));
    }
}
