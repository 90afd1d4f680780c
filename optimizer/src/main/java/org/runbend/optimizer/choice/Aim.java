package org.runbend.optimizer.choice;

import java.util.Comparator;

/** What a plan can be best at, in the order in which alternatives are numbered. */
public enum Aim {
    /** The job as it is. */
    AS_ASKED("as asked"),
    /** What stands in for the job as it is, being no worse in any figure and better in some. */
    BETTER_THAN_ASKED("better than asked"),
    /** The most heat into the room. */
    WARMEST("warmest"),
    /** The fewest minutes of work. */
    LEAST_WORK("least work"),
    /** Lowest price. */
    LEAST_PRICE("lowest price"),
    /** The most floor that can be served with little left of the coils. */
    FITS_COIL("fits a coil"),
    /** Least difference of warmth. */
    EVEN_HEAT("most even");

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

    /** Whether a plan of such figures can be meant: without its heat nobody knows the warmest. */
    boolean admits(PlanFigures f) {
        return switch (this) {
            case FITS_COIL -> f.fitsCoil();
            case WARMEST -> f.watts().isPresent();
            default -> true;
        };
    }

    /** The best first; equal ones are equally good at this aim. */
    Comparator<PlanFigures> order() {
        return switch (this) {
            case AS_ASKED, BETTER_THAN_ASKED -> Comparator.comparingInt(f -> 0);
            case WARMEST -> Comparator.comparingLong(f -> -f.watts().orElse(0));
            case LEAST_WORK -> Comparator.comparingLong(PlanFigures::minutes);
            case LEAST_PRICE -> Comparator.comparingLong(PlanFigures::price);
            case FITS_COIL -> Comparator.comparingLong(f -> -f.served());
            case EVEN_HEAT -> Comparator.comparingLong(PlanFigures::uneven);
        };
    }
}
