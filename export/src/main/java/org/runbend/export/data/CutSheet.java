package org.runbend.export.data;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.product.SpreaderPlate;
import org.runbend.optimizer.plan.KitPlan;

/**
 * What saw and coil are worked from: stock that is cut alike in groups, each with the measures at which it is cut, and the
 * lengths that the stop is set to, longest first, so that it moves once over its way.
 *
 * @param plates plates in groups
 * @param coils coils, one by one
 * @param settings lengths for the stop
 */
public record CutSheet(List<Group> plates, List<Group> coils, List<Setting> settings) {
    private static final double USED_UP = 0.01;

    /** Copies the lists. */
    public CutSheet {
        plates = List.copyOf(plates);
        coils = List.copyOf(coils);
        settings = List.copyOf(settings);
    }

    /**
     * Stock that is cut alike.
     *
     * @param product part number
     * @param length of one, mm
     * @param stock each of them
     * @param pieces where each piece of one begins and ends, from the end that is cut first, mm
     * @param left what is left of one, mm
     * @param restName what is written on what is left of the last one, if it is kept
     */
    public record Group(
            String product,
            double length,
            List<CutList.StockPiece> stock,
            List<Piece> pieces,
            double left,
            Optional<String> restName) {
        /** Copies the lists. */
        public Group {
            stock = List.copyOf(stock);
            pieces = List.copyOf(pieces);
        }
    }

    /**
     * A piece of a stock plate or coil.
     *
     * @param from running measure to its begin, mm
     * @param to to its end, where it is cut
     */
    public record Piece(double from, double to) {
        /** mm. */
        public double length() {
            return to - from;
        }
    }

    /**
     * A length that the stop is set to.
     *
     * @param product part number
     * @param length mm
     * @param pieces their names
     */
    public record Setting(String product, double length, List<String> pieces) {
        /** Copies the list. */
        public Setting {
            pieces = List.copyOf(pieces);
        }
    }

    /** The sheet of a plan. */
    public static CutSheet of(KitPlan plan) {
        List<CutList.StockPiece> plates = CutList.plates(plan);
        List<Group> coils = CutList.pipe(plan).stream()
                .map(c -> group(List.of(c), 0, 0, Optional.of(c.id() + "r").filter(n -> c.leftover() > USED_UP)))
                .toList();
        Map<List<Object>, List<CutList.StockPiece>> alike = new LinkedHashMap<>();
        for (CutList.StockPiece p : plates) {
            List<Object> key = new ArrayList<>(List.of(p.product(), p.length(), p.fromShelf()));
            p.cuts().forEach(c -> key.add(Math.round(c.length() * 100)));
            alike.computeIfAbsent(key, k -> new ArrayList<>()).add(p);
        }
        List<Group> groups = alike.values().stream()
                .map(stock -> group(
                        stock,
                        plan.plates().kerf(),
                        trim(plan, stock.get(0)),
                        Optional.of(stock.get(0).id() + "r").filter(n -> isKept(plan, stock.get(0)))))
                .toList();
        return new CutSheet(groups, coils, settings(plates));
    }

    /** Whether what is left of a plate is long enough for a piece of another floor; else it is scrap. */
    public static boolean isKept(KitPlan plan, CutList.StockPiece plate) {
        return plate.leftover() >= plan.job().plates().minPiece();
    }

    private static double trim(KitPlan plan, CutList.StockPiece plate) {
        return plate.fromShelf()
                ? 0
                : plan.job()
                        .catalog()
                        .findPlate(plate.product())
                        .map(SpreaderPlate::trim)
                        .orElse(0.0);
    }

    private static Group group(List<CutList.StockPiece> stock, double kerf, double trim, Optional<String> rest) {
        CutList.StockPiece one = stock.get(0);
        List<Piece> pieces = new ArrayList<>();
        double at = trim;
        for (CutList.Cut c : one.cuts()) {
            pieces.add(new Piece(at, at + c.length()));
            at += c.length() + kerf;
        }
        return new Group(one.product(), one.length(), stock, pieces, one.leftover(), rest);
    }

    /** Lengths that have to be cut off; a stock plate that is used whole needs no stop. */
    private static List<Setting> settings(List<CutList.StockPiece> plates) {
        Map<List<Object>, List<String>> byLength = new LinkedHashMap<>();
        for (CutList.StockPiece p : plates) {
            if (p.cuts().size() == 1 && p.length() - p.cuts().get(0).length() < USED_UP) {
                continue;
            }
            for (CutList.Cut c : p.cuts()) {
                byLength.computeIfAbsent(List.of(p.product(), c.length()), k -> new ArrayList<>())
                        .add(c.name());
            }
        }
        return byLength.entrySet().stream()
                .map(e -> new Setting(
                        (String) e.getKey().get(0), (Double) e.getKey().get(1), e.getValue()))
                .sorted(Comparator.comparingDouble((Setting s) -> -s.length()).thenComparing(Setting::product))
                .toList();
    }
}
