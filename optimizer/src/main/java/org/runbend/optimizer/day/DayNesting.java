package org.runbend.optimizer.day;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.cutting.Bound;
import org.runbend.optimizer.cutting.CuttingProblem;
import org.runbend.optimizer.cutting.CuttingSolution;
import org.runbend.optimizer.cutting.Demand;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockCut;
import org.runbend.optimizer.cutting.patterns.PatternCutting;
import org.runbend.optimizer.verify.CuttingVerifier;
import org.runbend.optimizer.verify.Finding;
import org.runbend.optimizer.work.Work;

/**
 * Nests all cuts of one product for a day: least bought, then least scrap, fewest whole ones opened, fewest patterns.
 *
 * <p>Method: {@link PatternCutting}. Where many cuts of many lengths meet long stock, lengths are put on a coarse grid: for the plan
 * cuts are rounded up and stock down, so that it can be cut; for the bound cuts down and stock up, so that it holds. Limits are
 * looks of the solver, never a clock. Every plan is held against its exact problem by {@link CuttingVerifier}.
 */
public final class DayNesting {
    /** Lengths of more cuts than this, half of them different, go on a grid: measured, see BENCH.md. */
    private static final int EXACT_CUTS = 250;

    /** Grid of pipe cuts, hundredths of mm: 100 mm, 0.3 % of a usual loop. */
    private static final long GRID = 10_000;
    /** Stock that is so long is worth a grid: plates are not, hundredths of mm. */
    private static final long LONG = 1_000_000;
    /** Looks of the solver: measured, see BENCH.md. */
    private static final long LOOKS = 150;

    private static final long LOOKS_FOR_BOUND = 40;
    /** A gap of one part in so many is little: 1 %. */
    private static final long LITTLE = 100;
    /** Pieces of the shelf that an order alone chooses from in the comparison. */
    private static final int SHELF_OF_ONE = 60;

    private final int exactCuts;

    /** A nesting of days of any size. */
    public DayNesting() {
        this(EXACT_CUTS);
    }

    /** A nesting that puts the lengths of more cuts than this on a grid. */
    DayNesting(int exactCuts) {
        this.exactCuts = exactCuts;
    }

    /** The plan, or why there is none. */
    public Answer<DayPlan> nest(DayMaterial material) {
        CuttingProblem exact = problem(material);
        return isCoarse(exact) ? coarse(material, exact) : solved(material, exact, exact, LOOKS);
    }

    private static CuttingProblem problem(DayMaterial m) {
        List<Demand> demands = m.cuts().stream()
                .map(c -> new Demand(c.goesTo(), c.length(), 1))
                .toList();
        return new CuttingProblem(m.stock(), demands, m.kerf(), m.trim(), m.keepFrom());
    }

    private boolean isCoarse(CuttingProblem p) {
        long longest = p.stock().stream().mapToLong(Stock::length).max().orElse(0);
        Set<Long> sizes = new HashSet<>();
        p.demands().forEach(d -> sizes.add(d.length()));
        return longest >= LONG && p.demands().size() > exactCuts && sizes.size() > exactCuts / 2;
    }

    /** Where length alone proves that little can be won, no other bound is sought. */
    private static Answer<DayPlan> coarse(DayMaterial material, CuttingProblem exact) {
        Answer<DayPlan> safe = solved(material, exact, onGrid(exact, true), LOOKS);
        Answer<DayPlan> answer = safe.value().isPresent() ? safe : solved(material, exact, exact, LOOKS);
        Optional<DayPlan> plan = answer.value();
        if (plan.isEmpty()
                || (plan.get().cost() - plan.get().bound().value()) * LITTLE
                        <= plan.get().cost()) {
            return answer;
        }
        Answer<CuttingSolution> floor = new PatternCutting(new LookLimit(LOOKS_FOR_BOUND)).solve(onGrid(exact, false));
        return floor.value()
                .map(f -> Answer.found(plan.get().withBound(f.costBound())))
                .orElse(answer);
    }

    /** Lengths on the grid; {@code safe}: whatever fits there fits in truth, else the other way round. */
    private static CuttingProblem onGrid(CuttingProblem p, boolean safe) {
        List<Stock> stock = new ArrayList<>();
        for (Stock s : p.stock()) {
            long length = safe ? s.length() / GRID * GRID : (s.length() + GRID - 1) / GRID * GRID;
            boolean usable = length > 0;
            stock.add(new Stock(s.name(), usable ? length : 1, s.cost(), usable ? s.available() : 0, s.id()));
        }
        List<Demand> demands = p.demands().stream()
                .map(d -> new Demand(
                        d.name(),
                        Math.max(1, safe ? (d.length() + GRID - 1) / GRID * GRID : d.length() / GRID * GRID),
                        1))
                .toList();
        return new CuttingProblem(stock, demands, p.kerf(), p.endTrim(), p.keepFrom());
    }

    private static Answer<DayPlan> solved(
            DayMaterial material, CuttingProblem exact, CuttingProblem asked, long looks) {
        Work.check();
        Answer<CuttingSolution> answer = new PatternCutting(new LookLimit(looks)).solve(asked);
        if (answer.value().isEmpty()) {
            return answer instanceof Answer.None<CuttingSolution>
                    ? Answer.none(answer.reason())
                    : Answer.unknown(answer.reason());
        }
        CuttingSolution found = answer.value().get();
        Bound proved = asked.equals(exact) ? found.costBound() : material(exact, found.cost());
        List<DayUse> uses = new ArrayList<>();
        for (StockCut cut : found.cuts()) {
            uses.add(use(material, exact, cut));
        }
        check(material, exact, uses);
        uses.sort(Comparator.comparing((DayUse u) -> u.stock().id().isEmpty()));
        return Answer.found(new DayPlan(material.product(), uses, found.cost(), proved));
    }

    /** The dearest that could be needed is never under this: length wanted less what the shelf holds, at the best price. */
    private static Bound material(CuttingProblem p, long cost) {
        long wanted = p.demands().stream().mapToLong(d -> d.length()).sum();
        long shelf = p.stock().stream()
                .filter(s -> s.cost() == 0 && !s.unlimited())
                .mapToLong(s -> Math.multiplyExact(s.length(), (long) s.available()))
                .sum();
        double rate = p.stock().stream()
                .filter(s -> s.cost() > 0)
                .mapToDouble(s -> (double) s.cost() / s.length())
                .min()
                .orElse(0);
        long least = (long) Math.floor(Math.max(0, wanted - shelf) * rate * (1 - 1e-9));
        return new Bound(Math.min(cost, least), Bound.Proof.MATERIAL);
    }

    private static DayUse use(DayMaterial material, CuttingProblem exact, StockCut cut) {
        Stock stock = exact.stock().get(cut.stock());
        List<DayCut> cuts = cut.demands().stream()
                .map(material.cuts()::get)
                .sorted(Comparator.comparingLong(DayCut::length).reversed())
                .toList();
        long used = cuts.stream().mapToLong(c -> c.length() + material.kerf()).sum() + material.trim();
        return new DayUse(stock, cuts, Math.max(0, stock.length() - used));
    }

    /** Each cut is made once and fits; nothing of the shelf is cut twice. */
    private static void check(DayMaterial material, CuttingProblem exact, List<DayUse> uses) {
        Map<DayCut, List<Integer>> places = new LinkedHashMap<>();
        for (int i = 0; i < material.cuts().size(); i++) {
            places.computeIfAbsent(material.cuts().get(i), c -> new ArrayList<>())
                    .add(i);
        }
        List<StockCut> cuts = new ArrayList<>();
        long cost = 0;
        for (DayUse use : uses) {
            int kind = exact.stock().indexOf(use.stock());
            List<Integer> demands = new ArrayList<>();
            use.cuts().forEach(c -> demands.add(places.get(c).remove(0)));
            demands.sort(Comparator.naturalOrder());
            cuts.add(new StockCut(kind, demands, use.leftover()));
            cost += use.stock().cost();
        }
        Bound none = new Bound(0, Bound.Proof.MATERIAL);
        long scrap = uses.stream()
                .mapToLong(DayUse::leftover)
                .filter(l -> l < material.keepFrom())
                .sum();
        int opened = (int) uses.stream().filter(u -> u.stock().id().isEmpty()).count();
        CuttingSolution told = new CuttingSolution(cuts, cost, scrap, opened, cuts.size(), none, none, none, none);
        List<Finding> wrong = CuttingVerifier.verify(exact, told).stream()
                .filter(f -> !f.rule().contains("patterns")) // those of the day are not counted here
                .toList();
        if (!wrong.isEmpty()) {
            throw new IllegalStateException(material.product() + ": " + wrong.get(0));
        }
    }

    /**
     * What the day would cost order by order: each nested by itself in turn, from what those before it left on the shelf. An order
     * chooses from the first pieces of the shelf that take one of its cuts, 60 at most.
     */
    public long costOrderByOrder(DayMaterial material) {
        Map<String, List<DayCut>> orders = new LinkedHashMap<>();
        material.cuts().forEach(c -> orders.computeIfAbsent(c.order(), o -> new ArrayList<>())
                .add(c));
        List<Stock> whole =
                material.stock().stream().filter(s -> s.id().isEmpty()).toList();
        Map<String, Stock> shelf = new LinkedHashMap<>();
        material.stock().stream().filter(s -> s.id().isPresent()).forEach(s -> shelf.put(s.id().get(), s));
        long cost = 0;
        int fresh = 0;
        for (List<DayCut> cuts : orders.values()) {
            long shortest = cuts.stream().mapToLong(DayCut::length).min().orElse(0);
            List<Stock> stock = new ArrayList<>(whole);
            shelf.values().stream()
                    .filter(s -> s.length() - material.trim() >= shortest)
                    .limit(SHELF_OF_ONE)
                    .forEach(stock::add);
            DayMaterial one = new DayMaterial(
                    material.product(), stock, cuts, material.kerf(), material.trim(), material.keepFrom());
            CuttingProblem exact = problem(one);
            Optional<DayPlan> plan = solved(one, exact, exact, 2).value();
            if (plan.isEmpty()) {
                continue;
            }
            cost += plan.get().cost();
            for (DayUse use : plan.get().uses()) {
                use.stock().id().ifPresent(shelf::remove);
                if (use.leftover() >= material.keepFrom()) {
                    String id = "rest-" + fresh++;
                    shelf.put(id, Stock.single(material.product(), id, use.leftover(), 0));
                }
            }
        }
        return cost;
    }
}
