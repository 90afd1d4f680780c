package org.runbend.optimizer.choice;

import java.util.Comparator;

/** What a plan can be best at, in the order in which alternatives are numbered. */
public enum Aim {
    /** The job as it is. */
    AS_ASKED("as asked"),
    /** What stands in for the job as it is, being no worse in any figure and better in some. */
    BETTER_THAN_ASKED("better than asked"),
    /** Fewest quarter bends. */
    FEWEST_BENDS("fewest bends"),
    /** Fewest places left out; among equals the most floor served. */
    FULL_COVERAGE("fewest places left out"),
    /** Least pipe. */
    LEAST_PIPE("least pipe"),
    /** The most floor that can be served with little left of the coils. */
    FITS_COIL("fits a coil"),
    /** Least difference of warmth. */
    EVEN_HEAT("most even heat"),
    /** Lowest price. */
    LEAST_PRICE("lowest price");

    private final String words;

    Aim(String words) {
        this.words = words;
    }

    /** As a person reads it. */
    public String words() {
        return words;
    }

    /** Whether it is told by the job asked and not by figures. */
    boolean regardsTheJob() {
        return this == AS_ASKED || this == BETTER_THAN_ASKED;
    }

    /** Whether a plan of such figures can be meant. */
    boolean admits(PlanFigures f) {
        return this != FITS_COIL || f.fitsCoil();
    }

    /** The best first; equal ones are equally good at this aim. */
    Comparator<PlanFigures> order() {
        return switch (this) {
            case AS_ASKED, BETTER_THAN_ASKED -> Comparator.comparingInt(f -> 0);
            case FEWEST_BENDS -> Comparator.comparingInt(PlanFigures::bends);
            case FULL_COVERAGE -> Comparator.comparingInt(PlanFigures::leftOut).thenComparingLong(f -> -f.served());
            case FITS_COIL -> Comparator.comparingLong(f -> -f.served());
            case LEAST_PIPE -> Comparator.comparingLong(PlanFigures::pipe);
            case EVEN_HEAT -> Comparator.comparingLong(PlanFigures::uneven);
            case LEAST_PRICE -> Comparator.comparingLong(PlanFigures::price);
        };
    }
}
