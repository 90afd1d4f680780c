package org.runbend.optimizer.choice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plan.LaidFloor;
import org.runbend.optimizer.plan.PlanCheck;
import org.runbend.optimizer.planning.KitPlanner;
import org.runbend.optimizer.work.Work;

/**
 * Plans a floor in several ways and keeps the good plans: of those that no other dominates, the best for each aim. Each is a
 * whole plan of a job that changes something otherwise, verified like any other. Same job, same choice.
 */
public final class ChoicePlanner {
    /** A plan that serves less than this share of what the fullest serves is no answer to the same floor (own limit). */
    private static final double LEAST_SERVED = 0.8;

    private static final String SAME_PLAN = "gives the same plan as: ";

    private final Work work;
    private final List<Choice.Other> others = new ArrayList<>();

    /** A planner under some work. */
    public ChoicePlanner(Work work) {
        this.work = work;
    }

    /** A plan with its figures. */
    private record Planned(Candidate candidate, KitPlan plan, PlanFigures figures) {}

    /**
     * The choice for the job of a plan.
     *
     * @param asked the plan of the job as it is
     */
    public Choice choose(KitPlan asked) {
        return choose(asked, choice -> {});
    }

    /**
     * The same, and on the way what there is to choose from so far, for somebody who waits. What is heard depends on what is
     * done first, the choice at the end does not.
     *
     * @param early hears of a choice of two or more whenever it has grown, on any thread, one at a time
     */
    public Choice choose(KitPlan asked, Consumer<Choice> early) {
        Candidates candidates = new Candidates(asked, work);
        return of(asked, outcomes(asked, candidates, new Early(asked, early)));
    }

    /** Tells what there is to choose from so far. */
    private final class Early {
        private final KitPlan asked;
        private final Consumer<Choice> heard;
        private final Map<Integer, Outcome> done = new TreeMap<>();
        private int told = 1;

        Early(KitPlan asked, Consumer<Choice> heard) {
            this.asked = asked;
            this.heard = heard;
        }

        Supplier<Outcome> telling(int place, Supplier<Outcome> task) {
            return () -> done(place, task.get());
        }

        private synchronized Outcome done(int place, Outcome outcome) {
            done.put(place, outcome);
            if (outcome.planned().isPresent()) {
                Choice choice = new ChoicePlanner(work).of(asked, List.copyOf(done.values()));
                if (choice.alternatives().size() > told) {
                    told = choice.alternatives().size();
                    heard.accept(choice);
                }
            }
            return outcome;
        }
    }

    private Choice of(KitPlan asked, List<Outcome> outcomes) {
        others.clear();
        List<Planned> planned = new ArrayList<>();
        planned.add(
                new Planned(new Candidate(List.of(), asked.job()), asked, PlanFigures.of(asked, asked.isOnLattice())));
        for (Outcome outcome : outcomes) {
            outcome.planned().filter(p -> isNew(p, planned)).ifPresent(planned::add);
            outcome.reason().ifPresent(r -> leaveOut(outcome.candidate(), r));
        }
        List<Planned> good = undominated(full(planned));
        return new Choice(numbered(chosen(good, planned.get(0)), good, planned.get(0)), others);
    }

    /**
     * What came of a candidate: a plan, or why there is none.
     */
    private record Outcome(Candidate candidate, Optional<Planned> planned, Optional<String> reason) {
        static Outcome none(Candidate candidate, String reason) {
            return new Outcome(candidate, Optional.empty(), Optional.of(reason));
        }
    }

    /** What comes of each candidate, in their order: laid first, then packed side by side, each plan once. */
    private List<Outcome> outcomes(KitPlan asked, Candidates candidates, Early early) {
        List<Candidate> all = candidates.all();
        List<FloorLaying.Laid> laid = new FloorLaying(asked, candidates.base(), work)
                .lay(all.stream().map(Candidate::job).toList());
        Map<Question, Candidate> first = new HashMap<>();
        first.put(Question.of(asked.job(), asked.loops()), new Candidate(List.of(), asked.job()));
        List<Supplier<Outcome>> tasks = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Candidate candidate = all.get(i);
            Optional<LaidFloor> floor = laid.get(i).floor();
            if (floor.isEmpty()) {
                String reason = laid.get(i).reason();
                tasks.add(() -> Outcome.none(candidate, "cannot be had: " + reason));
                continue;
            }
            Candidate same =
                    first.putIfAbsent(Question.of(candidate.job(), floor.get().loops()), candidate);
            tasks.add(
                    same != null
                            ? () -> Outcome.none(candidate, SAME_PLAN + same.words())
                            : early.telling(tasks.size(), () -> planned(candidate, floor.get(), asked.isOnLattice())));
        }
        AtomicInteger at = new AtomicInteger();
        return work.each(tasks, task -> {
            work.step("packing and checking alternatives", at.incrementAndGet(), tasks.size());
            return task.get();
        });
    }

    /** All that a kit depends on once its pipe is laid. */
    private record Question(List<Object> pipes, Job.PlateRequest plates) {
        static Question of(Job job, List<KitPlan.LoopPlan> loops) {
            return new Question(ChoicePlanner.pipes(loops), job.plates());
        }
    }

    private Outcome planned(Candidate candidate, LaidFloor floor, boolean onLattice) {
        try {
            KitPlan plan = new KitPlanner(work.hushed()).plan(candidate.job(), floor);
            return new Outcome(
                    candidate,
                    Optional.of(new Planned(candidate, plan, PlanFigures.of(plan, onLattice))),
                    Optional.empty());
        } catch (Unbuildable reason) {
            return Outcome.none(candidate, "cannot be had: " + reason.getMessage());
        }
    }

    private void leaveOut(Candidate candidate, String reason) {
        others.add(new Choice.Other(candidate.changes(), reason));
    }

    /** The same pipe and the same pieces of plate are the same plan, whatever was wished; so are the same figures to a person. */
    private boolean isNew(Planned p, List<Planned> earlier) {
        for (Planned e : earlier) {
            boolean same = pipes(p.plan().loops()).equals(pipes(e.plan().loops()))
                    && p.plan().plates().pieces().equals(e.plan().plates().pieces());
            if (same || p.figures().equals(e.figures())) {
                leaveOut(
                        p.candidate(),
                        (same ? SAME_PLAN : "has the same figures as: ")
                                + e.candidate().words());
                return false;
            }
        }
        return true;
    }

    private static List<Object> pipes(List<KitPlan.LoopPlan> loops) {
        return loops.stream().map(l -> (Object) l.breakdown()).toList();
    }

    /** Plans without more failed checks than the one asked, and that serve most of the floor. */
    private List<Planned> full(List<Planned> planned) {
        long failed = failed(planned.get(0));
        long most = planned.stream()
                .filter(p -> failed(p) <= failed)
                .mapToLong(p -> p.figures().served())
                .max()
                .orElse(0);
        List<Planned> sound = kept(planned, p -> failed(p) <= failed, p -> "fails a check that the plan asked passes");
        return kept(
                sound,
                p -> p.candidate().isAsked() || p.figures().served() >= LEAST_SERVED * most,
                p -> String.format(
                        Locale.ROOT,
                        "serves %.1f %% of the floor, another plan %.1f %%",
                        p.figures().served() / 10.0,
                        most / 10.0));
    }

    private static long failed(Planned p) {
        return p.plan().checks().stream()
                .filter(c -> c.verdict() == PlanCheck.Verdict.FAIL)
                .count();
    }

    private List<Planned> undominated(List<Planned> planned) {
        return kept(
                planned,
                p -> dominator(p, planned).isEmpty(),
                p -> "is nowhere better than: "
                        + dominator(p, planned).orElseThrow().candidate().words());
    }

    /** The first plan that nothing dominates among those that dominate this one. */
    private static Optional<Planned> dominator(Planned p, List<Planned> planned) {
        List<Planned> over =
                planned.stream().filter(o -> o.figures().dominates(p.figures())).toList();
        return over.stream()
                .filter(o -> planned.stream().noneMatch(x -> x.figures().dominates(o.figures())))
                .findFirst();
    }

    private List<Planned> kept(List<Planned> planned, Predicate<Planned> good, Function<Planned, String> reason) {
        List<Planned> kept = new ArrayList<>();
        for (Planned p : planned) {
            if (good.test(p)) {
                kept.add(p);
            } else {
                leaveOut(p.candidate(), reason.apply(p));
            }
        }
        return kept;
    }

    /** For each aim in turn its best plan, one that is chosen already among equals. */
    private static List<Planned> chosen(List<Planned> good, Planned asked) {
        List<Planned> chosen = new ArrayList<>();
        for (Aim aim : Aim.values()) {
            List<Planned> best = best(aim, good, asked);
            if (chosen.size() < Choice.MOST && best.stream().noneMatch(chosen::contains)) {
                best.stream().findFirst().ifPresent(chosen::add);
            }
        }
        return chosen;
    }

    /** All that are best at an aim; among plans of any other figure equal, those that serve more of the floor come first. */
    private static List<Planned> best(Aim aim, List<Planned> good, Planned asked) {
        if (aim.regardsTheJob()) {
            boolean stands = good.contains(asked);
            Optional<Planned> better = stands ? Optional.empty() : dominator(asked, good);
            return aim == Aim.BETTER_THAN_ASKED ? better.stream().toList() : stands ? List.of(asked) : List.of();
        }
        Comparator<PlanFigures> order = aim.order();
        List<Planned> able = good.stream().filter(p -> aim.admits(p.figures())).toList();
        Optional<Planned> first = able.stream().min(Comparator.comparing(Planned::figures, order));
        return able.stream()
                .filter(p -> order.compare(p.figures(), first.orElseThrow().figures()) == 0)
                .sorted(Comparator.comparingLong(p -> -p.figures().served()))
                .toList();
    }

    private List<Alternative> numbered(List<Planned> chosen, List<Planned> good, Planned asked) {
        List<Alternative> all = new ArrayList<>();
        for (Planned p : chosen) {
            List<Aim> aims = Stream.of(Aim.values())
                    .filter(aim -> isNamed(aim, p, chosen, best(aim, good, asked)))
                    .toList();
            all.add(new Alternative(
                    all.size() + 1,
                    aims,
                    p.equals(asked) ? "What the job asks for." : sentence(p, asked),
                    p.candidate().changes(),
                    p.figures(),
                    p.plan()));
        }
        good.stream()
                .filter(p -> !chosen.contains(p))
                .forEach(p -> leaveOut(p.candidate(), "is good, but best at nothing"));
        return all;
    }

    /** The first of the best in the table has the name; where all are equal the aim tells nothing. */
    private static boolean isNamed(Aim aim, Planned p, List<Planned> chosen, List<Planned> best) {
        Optional<Planned> first = chosen.stream().filter(best::contains).findFirst();
        boolean tells = aim.regardsTheJob() || !best.containsAll(chosen);
        return tells && first.isPresent() && first.get().equals(p);
    }

    private static String sentence(Planned p, Planned asked) {
        return Against.sentence(p.figures(), asked.figures(), asked.plan().job().catalog());
    }
}
