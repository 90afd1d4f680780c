package org.runbend.optimizer.breakdown;

import java.util.ArrayList;
import java.util.List;
import org.runbend.optimizer.job.Point;

/**
 * A loop as runs and bends in order of flow; each starts where the one before ends.
 *
 * @param elements runs and bends; a run follows a run only where a lead-in meets the loop on the lattice
 * @param leadIn how many of the first lead from the hole of the flow to the lattice
 * @param leadOut how many of the last lead from the lattice to the hole of the return
 * @param slots where the groove is deepened at the two holes, flow first; empty where holes were left out of account
 */
public record Breakdown(List<Element> elements, int leadIn, int leadOut, List<Slot> slots) {
    /** Copies the lists. */
    public Breakdown {
        elements = List.copyOf(elements);
        slots = List.copyOf(slots);
        if (elements.isEmpty()) {
            throw new IllegalArgumentException("a loop has at least one element");
        }
        if (leadIn < 0 || leadOut < 0 || leadIn + leadOut >= elements.size()) {
            throw new IllegalArgumentException("lead-ins of " + leadIn + " and " + leadOut + " elements leave none of "
                    + elements.size() + " for the loop");
        }
    }

    /** A loop that begins and ends on the lattice. */
    public Breakdown(List<Element> elements) {
        this(elements, 0, 0, List.of());
    }

    /** The same loop between two lead-ins, both in order of flow. */
    public Breakdown between(List<Element> before, List<Element> after) {
        List<Element> all = new ArrayList<>(before);
        all.addAll(elements);
        all.addAll(after);
        return new Breakdown(all, before.size(), after.size(), slots);
    }

    /** The same loop with other slots. */
    public Breakdown with(List<Slot> others) {
        return new Breakdown(elements, leadIn, leadOut, others);
    }

    /** Whether an element belongs to a lead-in. */
    public boolean isLead(int element) {
        return element < leadIn || element >= elements.size() - leadOut;
    }

    /** The loop on the lattice, without its lead-ins. */
    public List<Element> laid() {
        return elements.subList(leadIn, elements.size() - leadOut);
    }

    /** The whole pipe, each straight in one piece: where a lead-in goes straight on into a run, both are one. */
    public List<Element> pipe() {
        List<Element> whole = new ArrayList<>();
        for (Element e : elements) {
            int last = whole.size() - 1;
            if (e instanceof Element.Run run && last >= 0 && whole.get(last) instanceof Element.Run before) {
                whole.set(last, new Element.Run(before.from(), run.to()));
            } else {
                whole.add(e);
            }
        }
        return whole;
    }

    /** Pipe on the floor, mm: the sum of all lengths. */
    public double floorLength() {
        return elements.stream().mapToDouble(Element::length).sum();
    }

    /** Straight pipe that can take plates, mm: without lead-ins. */
    public double straightLength() {
        return laid().stream()
                .filter(Element.Run.class::isInstance)
                .mapToDouble(Element::length)
                .sum();
    }

    /** Quarter bends laid; a return bend counts two. */
    public int quarterBends() {
        return elements.stream()
                .filter(Element.Bend.class::isInstance)
                .mapToInt(e -> ((Element.Bend) e).quarters())
                .sum();
    }

    /** Return bends laid. */
    public int returnBends() {
        return (int) elements.stream()
                .filter(e -> e instanceof Element.Bend b && b.quarters() == 2)
                .count();
    }

    /** The centreline as points, lead-ins included; arcs go as chords of so many degrees at most. */
    public List<Point> chords(double degrees) {
        List<Point> points = new ArrayList<>();
        points.add(elements.get(0).from());
        elements.forEach(e -> points.addAll(e.onwards(degrees)));
        return points;
    }
}
