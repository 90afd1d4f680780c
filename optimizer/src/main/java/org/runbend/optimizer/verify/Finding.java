package org.runbend.optimizer.verify;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/**
 * A rule that does not hold: which, where, and its numbers. Words are made by whoever prints it.
 *
 * @param rule the rule, as the pattern of the sentence that tells it
 * @param about places, values and limits in the order of the pattern
 */
public record Finding(String rule, List<Object> about) {
    /** Copies the list. */
    public Finding {
        about = List.copyOf(about);
    }

    /**
     * A place along the pipe.
     *
     * @param loop index of the loop
     * @param element index of the run or bend; -1 for the loop as a whole
     */
    public record Place(int loop, int element) {
        /** Loops are called A, B, ... in their order, elements count from 0. */
        @Override
        public String toString() {
            String name = "loop " + (char) ('A' + loop);
            return element < 0 ? name : name + " element " + element;
        }
    }

    /**
     * A spot on the floor, told at the end of a sentence.
     *
     * @param x mm
     * @param y mm
     */
    public record Spot(double x, double y) {
        @Override
        public String toString() {
            return String.format(Locale.ROOT, ", at (%.1f, %.1f)", x, y);
        }
    }

    /** The places that it is about, in order. */
    public List<Place> places() {
        return about.stream()
                .filter(Place.class::isInstance)
                .map(Place.class::cast)
                .toList();
    }

    /** Its numbers in order: what was found, then what was asked. */
    public List<Double> numbers() {
        return about.stream()
                .filter(Number.class::isInstance)
                .map(n -> ((Number) n).doubleValue())
                .toList();
    }

    /** The sentence, with places named by somebody who knows them. Numbers print the same in every country. */
    public String words(Function<Place, String> name) {
        Object[] values = about.stream()
                .map(o -> o instanceof Place p ? name.apply(p) : o)
                .toArray();
        return String.format(Locale.ROOT, rule, values);
    }

    /** The sentence, with places named by loop and element. */
    @Override
    public String toString() {
        return words(Place::toString);
    }
}
