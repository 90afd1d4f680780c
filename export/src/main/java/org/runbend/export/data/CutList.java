package org.runbend.export.data;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.plates.PlateCut;
import org.runbend.optimizer.plates.PlatePiece;

/**
 * All cuts of a kit: pipe first, then plates, stock by stock. Stock from the shelf keeps the id written on it; what is
 * bought is numbered C1, C2 ... (coils) and P1, P2 ... (plates), leaving out what is taken on the shelf.
 */
public final class CutList {
    /** Two lengths are the same cut if they differ by less than a tape or saw can tell, mm. */
    private static final double SAME = 0.01;

    private static final int LETTERS = 26;

    private final KitPlan plan;
    private final Set<String> taken;
    private final List<PlatePiece> waiting;
    private final Map<PlatePiece, String> names = new LinkedHashMap<>();
    private final Map<PlatePiece, String> cutFrom = new LinkedHashMap<>();

    private CutList(KitPlan plan) {
        this.plan = plan;
        this.taken = plan.job().shelf().remnants().stream().map(Remnant::id).collect(Collectors.toSet());
        this.waiting = new ArrayList<>(plan.plates().pieces());
    }

    /** Pipe from coils, in the order of the plan. */
    public static List<StockPiece> pipe(KitPlan plan) {
        return new CutList(plan).pipe();
    }

    /** Plates from stock, in the order of the plan; equal pieces go to their places in order of flow. */
    public static List<StockPiece> plates(KitPlan plan) {
        return new CutList(plan).plates();
    }

    /** What each piece of plate is called: its stock plate, and a letter where more than one piece is cut from it. */
    public static Map<PlatePiece, String> plateNames(KitPlan plan) {
        CutList list = new CutList(plan);
        list.plates();
        return list.names;
    }

    /** The stock plate that each piece is cut from. */
    public static Map<PlatePiece, String> plateStock(KitPlan plan) {
        CutList list = new CutList(plan);
        list.plates();
        return list.cutFrom;
    }

    private List<StockPiece> pipe() {
        List<StockPiece> all = new ArrayList<>();
        int number = 0;
        for (CoilPlan.CoilCut coil : plan.coils().coils()) {
            number = coil.id().isPresent() ? number : next("C", number);
            List<Cut> cuts = coil.cuts().stream()
                    .map(c -> new Cut(c.length(), "loop " + c.loop(), "loop " + c.loop()))
                    .toList();
            all.add(new StockPiece(
                    id(coil.id(), "C", number),
                    coil.product(),
                    coil.length(),
                    cuts,
                    coil.left(),
                    coil.id().isPresent()));
        }
        return all;
    }

    private List<StockPiece> plates() {
        List<StockPiece> all = new ArrayList<>();
        int number = 0;
        for (PlateCut stock : plan.plates().stock()) {
            number = stock.id().isPresent() ? number : next("P", number);
            String id = id(stock.id(), "P", number);
            List<Cut> cuts = new ArrayList<>();
            for (double length : stock.cuts()) {
                String name = pieceName(id, cuts.size(), stock.cuts().size());
                cuts.add(new Cut(length, placeOf(stock.product(), length, name, id), name));
            }
            all.add(new StockPiece(
                    id,
                    stock.product(),
                    stock.length(),
                    cuts,
                    stock.offcut(),
                    stock.id().isPresent()));
        }
        return all;
    }

    /** What a piece of a stock plate is called. */
    static String pieceName(String stock, int index, int count) {
        if (count == 1) {
            return stock;
        }
        return index < LETTERS ? stock + (char) ('a' + index) : stock + "-" + (index + 1);
    }

    private int next(String letter, int number) {
        int next = number + 1;
        while (taken.contains(letter + next)) {
            next++;
        }
        return next;
    }

    private static String id(Optional<String> shelf, String letter, int number) {
        return shelf.orElse(letter + number);
    }

    /** Takes the first piece that still waits for a cut like this. */
    private String placeOf(String product, double length, String name, String id) {
        for (PlatePiece piece : waiting) {
            if (piece.product().equals(product) && Math.abs(piece.length() - length) < SAME) {
                waiting.remove(piece);
                names.put(piece, name);
                cutFrom.put(piece, id);
                return RunNames.of(plan, piece);
            }
        }
        throw new IllegalStateException("no piece of " + product + " is " + length + " mm long, but one is cut");
    }

    /**
     * A coil or stock plate and how it is cut.
     *
     * @param id what is written on it
     * @param product part number
     * @param length mm
     * @param cuts in the order of cutting
     * @param leftover mm
     * @param fromShelf whether it lay on the shelf
     */
    public record StockPiece(
            String id, String product, double length, List<Cut> cuts, double leftover, boolean fromShelf) {
        /** Copies the list. */
        public StockPiece {
            cuts = List.copyOf(cuts);
        }
    }

    /**
     * One cut.
     *
     * @param length mm
     * @param goesTo the loop or the place of the plate
     * @param name what is written on the piece
     */
    public record Cut(double length, String goesTo, String name) {}
}
