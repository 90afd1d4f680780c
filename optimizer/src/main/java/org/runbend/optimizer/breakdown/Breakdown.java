package org.runbend.optimizer.breakdown;

import java.util.List;

/**
 * A loop as runs and bends in order of flow; each starts where the one before ends.
 *
 * @param elements runs and bends, no run after a run
 */
public record Breakdown(List<Element> elements) {
    /** Copies the list. */
    public Breakdown {
        elements = List.copyOf(elements);
        if (elements.isEmpty()) {
            throw new IllegalArgumentException("a loop has at least one element");
        }
    }

    /** Pipe on the floor, mm: the sum of all lengths. */
    public double floorLength() {
        return elements.stream().mapToDouble(Element::length).sum();
    }

    /** Straight pipe, mm. */
    public double straightLength() {
        return elements.stream()
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
}
