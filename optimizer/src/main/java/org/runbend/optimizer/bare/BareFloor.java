package org.runbend.optimizer.bare;

import java.util.List;
import java.util.Locale;
import org.runbend.optimizer.job.Point;

/**
 * A part of the heated floor that stays bare.
 *
 * @param reason why
 * @param places lattice places on it; where there are none, its area over the area of a place, rounded
 * @param area m2
 * @param spots number of separate spots it consists of
 * @param at a point on it, mm
 * @param where what a person recognises the point by
 * @param cause why, in words, as the end of a sentence
 * @param remedies changes that were tried and free at least a part of it, the mildest kind first
 */
public record BareFloor(
        Reason reason,
        int places,
        double area,
        int spots,
        Point at,
        String where,
        String cause,
        List<Remedy> remedies) {
    /** Copies the list. */
    public BareFloor {
        remedies = List.copyOf(remedies);
    }

    /** Everything in words. */
    public String sentence() {
        StringBuilder text = new StringBuilder(head()).append(where).append(spots > 1 ? " and elsewhere" : "");
        text.append(cause);
        remedies.forEach(r -> text.append(' ').append(r.sentence()));
        if (remedies.isEmpty() && reason != Reason.TURNS) {
            text.append(" No change of one size was found that serves it.");
        }
        return text.toString();
    }

    private String head() {
        String count = places == 1 ? "1 place " : places + " places ";
        return switch (reason) {
            case JOINED_BY_ONE, NOT_JOINED -> "Out of reach: " + count;
            case TOO_NARROW, BETWEEN_PLACES -> String.format(Locale.ROOT, "No place for pipe: %.2f m2 ", area);
            case NO_ARC, COLOURS, TURNS -> "Left bare: " + count;
        };
    }
}
