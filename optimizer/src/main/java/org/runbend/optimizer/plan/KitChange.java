package org.runbend.optimizer.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.breakdown.SamePipe;
import org.runbend.optimizer.change.EarlierKit;
import org.runbend.optimizer.coils.CoilPlan;
import org.runbend.optimizer.plates.KeptPiece;
import org.runbend.optimizer.plates.PlateCut;

/**
 * What becomes of a kit that was cut before its floor changed. Lengths in mm.
 *
 * @param was the kit before
 * @param way how the plan was found
 * @param pipe what of its pipe stays, goes and is added
 * @param staying pipe that lies where it lay, by loops and elements of the plan
 * @param gone pipe of the kit before that is no more, by its loops and elements
 * @param added pipe that was not there before, by loops and elements of the plan
 * @param plates one for each piece of plate of the kit before, in its order
 * @param pipes one for each pipe of the kit before, in the order of its loops
 * @param boards what becomes of its boards, where it or the plan has some
 * @param afresh what a plan begun afresh would do, if it is not this one
 */
public record KitChange(
        EarlierKit was,
        Way way,
        LoopChange pipe,
        List<Part> staying,
        List<Part> gone,
        List<Part> added,
        List<Fate> plates,
        List<Fate> pipes,
        Optional<BoardsChange> boards,
        Optional<LoopChange> afresh) {
    /** Pipe this much shorter than its element is all of it. */
    private static final double NOTHING = 0.5;

    /** Copies the lists. */
    public KitChange {
        staying = List.copyOf(staying);
        gone = List.copyOf(gone);
        added = List.copyOf(added);
        plates = List.copyOf(plates);
        pipes = List.copyOf(pipes);
    }

    /**
     * How a plan was found.
     *
     * @param held whether the loop before was held where it still fits; a plan begun afresh holds nothing on purpose
     * @param obstacle why that was not tried, a clause; empty if it was
     */
    public record Way(boolean held, Optional<String> obstacle) {
        /** The way in a sentence. */
        public String sentence() {
            if (obstacle.isPresent()) {
                return "The plan was begun afresh, as nothing of the loop before can be held: " + obstacle.get() + ".";
            }
            return held
                    ? "The loop before was held where it still fits. What goes was weighed against bends, bare floor and"
                            + " pipe to be bought, and the least taken of what was tried."
                    : "The plan was begun afresh: nothing that was tried keeps more of the loop before for what it is"
                            + " worth.";
        }
    }

    /**
     * A part of an element.
     *
     * @param loop number of the loop, from 0
     * @param element number of the element, from 0
     * @param pipe the part itself
     */
    public record Part(int loop, int element, Element pipe) {}

    /** What is done with a piece of the kit before. */
    public enum Use {
        /** It lies where it lay. */
        STAYS,
        /** It is used as it is in another place. */
        MOVES,
        /** It is stock that other pieces are cut from. */
        CUT_AGAIN,
        /** It comes back: nothing needs it. */
        BACK
    }

    /**
     * A piece of the kit before.
     *
     * @param id under which it stands among the stock of the plan
     * @param product part number
     * @param length mm
     * @param use what is done with it
     * @param cuts what is cut from it, mm; empty where it comes back
     * @param left what is left of it, mm
     */
    public record Fate(String id, String product, double length, Use use, List<Double> cuts, double left) {
        /** Copies the list. */
        public Fate {
            cuts = List.copyOf(cuts);
        }
    }

    /**
     * Compares a plan with the kit before.
     *
     * @param stock the pieces before, as {@link EarlierKit#remnants} names them
     * @param kept pieces that could stay
     */
    public static KitChange of(
            EarlierKit was,
            KitPlan plan,
            List<Remnant> stock,
            List<KeptPiece> kept,
            Way way,
            Optional<LoopChange> afresh) {
        List<List<Element>> before =
                was.loops().stream().map(EarlierKit.Loop::elements).toList();
        List<List<Element>> now =
                plan.loops().stream().map(l -> l.breakdown().elements()).toList();
        int pieces = was.pieces().size();
        return new KitChange(
                was,
                way,
                LoopChange.of(was.elements(), plan),
                parts(now, before, true),
                parts(before, now, false),
                parts(now, before, false),
                stock.subList(0, pieces).stream().map(r -> plate(plan, r, kept)).toList(),
                stock.subList(pieces, stock.size()).stream()
                        .map(r -> pipe(plan, r))
                        .toList(),
                BoardsChange.of(was.boards(), plan.boards()),
                afresh);
    }

    private static List<Part> parts(List<List<Element>> loops, List<List<Element>> others, boolean lying) {
        List<Element> all = others.stream().flatMap(List::stream).toList();
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < loops.size(); i++) {
            for (int j = 0; j < loops.get(i).size(); j++) {
                for (Element part : SamePipe.parts(loops.get(i).get(j), all, lying)) {
                    parts.add(new Part(i, j, part));
                }
            }
        }
        return parts;
    }

    private static Fate plate(KitPlan plan, Remnant piece, List<KeptPiece> kept) {
        boolean stays = kept.stream()
                .filter(k -> k.stock().id().equals(piece.id()))
                .anyMatch(k -> plan.plates().pieces().contains(k.piece()));
        for (PlateCut cut : plan.plates().stock()) {
            if (cut.id().filter(piece.id()::equals).isPresent()) {
                boolean whole = cut.cuts().size() == 1 && cut.cuts().get(0) > piece.length() - NOTHING;
                Use use = !whole ? Use.CUT_AGAIN : stays ? Use.STAYS : Use.MOVES;
                return new Fate(piece.id(), piece.product(), piece.length(), use, cut.cuts(), cut.offcut());
            }
        }
        return back(piece);
    }

    private static Fate pipe(KitPlan plan, Remnant pipe) {
        for (CoilPlan.CoilCut cut : plan.coils().coils()) {
            if (cut.id().filter(pipe.id()::equals).isPresent()) {
                Use use = cut.left() < NOTHING ? Use.STAYS : Use.CUT_AGAIN;
                List<Double> cuts =
                        cut.cuts().stream().map(CoilPlan.LoopCut::length).toList();
                return new Fate(pipe.id(), pipe.product(), pipe.length(), use, cuts, cut.left());
            }
        }
        return back(pipe);
    }

    private static Fate back(Remnant piece) {
        return new Fate(piece.id(), piece.product(), piece.length(), Use.BACK, List.of(), piece.length());
    }

    /** How the plan was found, in a sentence. */
    public String how() {
        return pipe.goes() + pipe.added() < NOTHING
                ? "All of the loop before stays, and nothing is added."
                : way.sentence();
    }

    /** Pieces of plate of one use. */
    public List<Fate> plates(Use use) {
        return plates.stream().filter(p -> p.use() == use).toList();
    }

    /** Groove of the kit before that is filled, as a share of all of it, 0 to 1. */
    public double thrownAway() {
        return share(pipe);
    }

    /** What goes, as a share of all that was there, 0 to 1. */
    public static double share(LoopChange change) {
        double all = change.stays() + change.goes();
        return all > 0 ? change.goes() / all : 0;
    }

    /** What is done, in sentences. */
    public List<String> sentences() {
        List<String> all = new ArrayList<>();
        all.add(pipe.sentence());
        afresh.ifPresent(a -> all.add(String.format(
                Locale.ROOT,
                "A plan begun afresh would let %.2f m go instead of %.2f m.",
                a.goes() / 1000,
                pipe.goes() / 1000)));
        all.add(String.format(
                Locale.ROOT,
                "Of %d pieces of plate %d stay, %d lie elsewhere, %d are cut again, %d come back.",
                plates.size(),
                plates(Use.STAYS).size(),
                plates(Use.MOVES).size(),
                plates(Use.CUT_AGAIN).size(),
                plates(Use.BACK).size()));
        for (int i = 0; i < pipes.size(); i++) {
            all.add(sentence(was.loops().get(i).name(), pipes.get(i)));
        }
        boards.ifPresent(b -> all.add(b.sentence()));
        return all;
    }

    private static String sentence(String loop, Fate pipe) {
        String start = String.format(Locale.ROOT, "The pipe cut for loop %s, %.2f m, ", loop, pipe.length() / 1000);
        return switch (pipe.use()) {
            case STAYS, MOVES -> start + "is used as it is.";
            case CUT_AGAIN ->
                start + String.format(Locale.ROOT, "is long enough: %.2f m are left over.", pipe.left() / 1000);
            case BACK -> start + "does not reach and comes back whole: pipe in a floor is never joined.";
        };
    }
}
