package org.runbend.optimizer.plates;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.runbend.catalog.product.PlateStock;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.cutting.CoverAnswer;
import org.runbend.optimizer.cutting.CoverCutting;
import org.runbend.optimizer.cutting.CoverProblem;
import org.runbend.optimizer.cutting.CoverSolution;
import org.runbend.optimizer.cutting.Impossible;
import org.runbend.optimizer.cutting.RunByRunCutting;
import org.runbend.optimizer.cutting.Stock;
import org.runbend.optimizer.cutting.StockUse;
import org.runbend.optimizer.cutting.Stretch;
import org.runbend.optimizer.job.Unbuildable;

/**
 * Decides which stretches get plates, in which pieces and from which stock plates, at least cost for the coverage asked.
 *
 * <p>Lengths and cutting are one problem, see {@link CoverCutting}. The single-groove products of the narrowest width
 * named are used; the bound holds for all products named, because for the others the price of a covered millimetre is
 * taken as a bound too.
 */
public final class PlatePacking {
    private static final double HUNDREDTHS = 100;

    /**
     * The plates.
     *
     * @throws Unbuildable if no product named can be used or no stock is long enough for the least piece
     */
    public PlatePlan pack(PlateProblem problem) {
        List<SpreaderPlate> usable = usable(problem.wish().products());
        double width = usable.get(0).width();
        List<PlateStretch> stretches = new StretchFinder(problem.floor(), problem.wish(), width).find(problem.loops());
        List<SpreaderPlate> sources = new ArrayList<>();
        List<Stock> stock = stock(problem, usable, sources);
        double step = usable.stream().mapToDouble(SpreaderPlate::step).max().orElseThrow();
        double kerf = usable.stream().mapToDouble(SpreaderPlate::kerf).max().orElseThrow();
        CoverProblem cover = coverProblem(problem, stretches, stock, step, kerf);
        CoverSolution solution = found(new CoverCutting().solve(cover));
        CoverSolution apart = found(new RunByRunCutting().solve(cover));
        PlateBound bound = PlateBound.of(solution.bound(), cover, problem.wish().products(), usable);
        double straight =
                problem.loops().stream().mapToDouble(l -> l.straightLength()).sum();
        List<PlatePiece> pieces = place(problem, stretches, solution, sources);
        return new PlatePlan(
                pieces,
                cuts(solution, stock, sources),
                kerf,
                stretches.stream().mapToDouble(PlateStretch::length).sum(),
                pieces.stream().mapToDouble(PlatePiece::length).sum(),
                straight,
                solution.cost(),
                bound.value(),
                bound.proof(),
                Math.max(apart.cost(), solution.cost()),
                remarks(problem.wish().products(), usable));
    }

    private static List<SpreaderPlate> usable(List<SpreaderPlate> named) {
        List<SpreaderPlate> single = named.stream()
                .filter(p -> p.grooves() == 1)
                .sorted(Comparator.comparingDouble(SpreaderPlate::width))
                .toList();
        if (single.isEmpty()) {
            throw new Unbuildable(
                    "plates.product",
                    "only twin-groove plates are named; name a single-groove plate beside them, twin ones are not packed yet");
        }
        return single.stream().filter(p -> p.width() == single.get(0).width()).toList();
    }

    private static List<String> remarks(List<SpreaderPlate> named, List<SpreaderPlate> usable) {
        return named.stream()
                .filter(p -> !usable.contains(p))
                .map(p -> "Plate " + p.sku() + " is named in the job but not used: "
                        + (p.grooves() == 2 ? "twin-groove plates are not packed yet." : "a narrower one is named."))
                .toList();
    }

    private static List<Stock> stock(PlateProblem problem, List<SpreaderPlate> usable, List<SpreaderPlate> sources) {
        List<Stock> stock = new ArrayList<>();
        for (SpreaderPlate plate : usable) {
            for (Remnant r : problem.shelf().of(plate.sku())) {
                stock.add(Stock.single(plate.sku(), r.id(), (long) Math.floor(r.length() * HUNDREDTHS), 0));
                sources.add(plate);
            }
            for (PlateStock s : plate.stock()) {
                stock.add(Stock.bought(plate.sku(), Math.round(s.length() * HUNDREDTHS), s.cost()));
                sources.add(plate);
            }
        }
        return stock;
    }

    /** The last step of a stretch is not asked for, so that all that is asked can be had. */
    private static CoverProblem coverProblem(
            PlateProblem problem, List<PlateStretch> stretches, List<Stock> stock, double step, double kerf) {
        double asked = stretches.stream().mapToDouble(s -> s.length() - step).sum()
                * problem.wish().coverage();
        return new CoverProblem(
                stretches.stream()
                        .map(s -> new Stretch((long) Math.floor(s.length() * HUNDREDTHS + 0.001)))
                        .toList(),
                stock,
                Math.round(problem.wish().gap() * HUNDREDTHS),
                Math.max(1, Math.round(problem.wish().minPiece() * HUNDREDTHS)),
                Long.MAX_VALUE,
                Math.round(step * HUNDREDTHS),
                Math.round(kerf * HUNDREDTHS),
                Math.max(0, (long) Math.floor(asked * HUNDREDTHS)));
    }

    private static CoverSolution found(CoverAnswer answer) {
        if (answer instanceof CoverSolution solution) {
            return solution;
        }
        throw new Unbuildable(
                "plates.coverage", "the plates cannot cover what is asked: " + ((Impossible) answer).reason());
    }

    private static List<PlatePiece> place(
            PlateProblem problem, List<PlateStretch> stretches, CoverSolution solution, List<SpreaderPlate> sources) {
        List<Long> byProduct = new ArrayList<>();
        List<String> products = new ArrayList<>();
        for (StockUse use : solution.stock()) {
            for (long piece : use.pieces()) {
                byProduct.add(piece);
                products.add(sources.get(use.stock()).sku());
            }
        }
        List<PlatePiece> placed = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            double at = stretches.get(i).from();
            for (long piece : solution.pieces().get(i)) {
                int taken = byProduct.indexOf(piece);
                String product = products.remove(taken);
                byProduct.remove(taken);
                double length = piece / HUNDREDTHS;
                PlatePiece.Place place = new PlatePiece.Place(
                        stretches.get(i).loop(), stretches.get(i).element(), at);
                placed.add(new PlatePiece(product, length, List.of(place)));
                at += length + problem.wish().gap();
            }
        }
        return placed;
    }

    private static List<PlateCut> cuts(CoverSolution solution, List<Stock> stock, List<SpreaderPlate> sources) {
        return solution.stock().stream()
                .map(use -> new PlateCut(
                        sources.get(use.stock()).sku(),
                        stock.get(use.stock()).length() / HUNDREDTHS,
                        use.pieces().stream().map(p -> p / HUNDREDTHS).toList(),
                        use.leftover() / HUNDREDTHS,
                        stock.get(use.stock()).id()))
                .toList();
    }
}
