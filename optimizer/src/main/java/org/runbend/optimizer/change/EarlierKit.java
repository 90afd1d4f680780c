package org.runbend.optimizer.change;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.runbend.catalog.shelf.Remnant;
import org.runbend.catalog.shelf.Shelf;
import org.runbend.optimizer.boards.CutLayer;
import org.runbend.optimizer.breakdown.Element;
import org.runbend.optimizer.job.Point;

/**
 * A kit that was cut before its floor changed. Sizes in mm.
 *
 * @param fingerprint of the plan that it was cut by
 * @param pipe part number of its pipe
 * @param place where its runs lay; empty where a designer drew them
 * @param loops its loops
 * @param pieces its pieces of plate
 * @param boards the layers of its boards from the bottom up; none where it has no boards
 */
public record EarlierKit(
        String fingerprint,
        String pipe,
        Optional<Place> place,
        List<Loop> loops,
        List<PlateCutBefore> pieces,
        List<CutLayer> boards) {
    /** Copies the lists. */
    public EarlierKit {
        loops = List.copyOf(loops);
        pieces = List.copyOf(pieces);
        boards = List.copyOf(boards);
    }

    /**
     * Where runs lay.
     *
     * @param origin a place where two of them could cross
     * @param angle of the runs, degrees
     * @param spacing centre to centre of neighbouring runs
     */
    public record Place(Point origin, double angle, double spacing) {}

    /**
     * A loop as it was routed.
     *
     * @param name A, B, ...
     * @param elements in order of flow, at least one
     * @param leadIn elements at its start that lead to a hole
     * @param leadOut elements at its end that do
     * @param cutLength pipe that was cut for it
     * @param bare places that it left out
     */
    public record Loop(
            String name, List<Element> elements, int leadIn, int leadOut, double cutLength, List<Point> bare) {
        /** Copies the lists and checks the counts. */
        public Loop {
            elements = List.copyOf(elements);
            bare = List.copyOf(bare);
            if (leadIn < 0 || leadOut < 0 || leadIn + leadOut >= elements.size() || !(cutLength >= 1)) {
                throw new IllegalArgumentException("loop " + name + " has no pipe between its lead-ins");
            }
        }
    }

    /**
     * A piece of plate that was cut.
     *
     * @param product part number
     * @param length mm
     * @param grooves where it lay, one place for each groove
     */
    public record PlateCutBefore(String product, double length, List<Groove> grooves) {
        /** Copies the list. */
        public PlateCutBefore {
            grooves = List.copyOf(grooves);
        }
    }

    /**
     * Where a groove of a piece lay.
     *
     * @param from where the piece began
     * @param to where it ended
     */
    public record Groove(Point from, Point to) {}

    /** All pipe of all loops. */
    public List<Element> elements() {
        return loops.stream().flatMap(l -> l.elements().stream()).toList();
    }

    /**
     * What was cut, as stock beside what lies on a shelf: first the pieces of plate in their order, then the pipes.
     *
     * @param shelf whose ids are not used twice
     */
    public List<Remnant> remnants(Shelf shelf) {
        Set<String> taken =
                new HashSet<>(shelf.remnants().stream().map(Remnant::id).toList());
        List<Remnant> all = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            PlateCutBefore p = pieces.get(i);
            all.add(new Remnant(free("was-" + (i + 1), taken), p.product(), p.length()));
        }
        loops.forEach(l -> all.add(new Remnant(free("was-" + l.name(), taken), pipe, l.cutLength())));
        return all;
    }

    private static String free(String wanted, Set<String> taken) {
        String id = wanted;
        for (int n = 2; !taken.add(id); n++) {
            id = wanted + "-" + n;
        }
        return id;
    }
}
