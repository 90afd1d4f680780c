package org.runbend.export.stock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.runbend.catalog.ledger.Held;
import org.runbend.catalog.ledger.Holding;
import org.runbend.catalog.ledger.Movement;
import org.runbend.catalog.ledger.Outcome;

/** What a person is told of a movement, and who makes movements here. */
public final class Told {
    private Told() {}

    /** Lines for a terminal: what it was, what is to be written on pieces, and what else there is to know. */
    public static List<String> lines(Outcome outcome) {
        List<String> lines = new ArrayList<>();
        if (outcome.isNew()) {
            lines.add(title(outcome.movement()));
        }
        labels(outcome).forEach(label -> lines.add("  " + label));
        Map<String, Integer> notes = new LinkedHashMap<>();
        outcome.notes().forEach(note -> notes.merge(note, 1, Integer::sum));
        notes.forEach((note, times) ->
                lines.add((outcome.isNew() ? "  " : "") + note + (times > 1 ? " (" + times + " times)" : "")));
        return lines;
    }

    /** The movement in a few words. */
    public static String title(Movement m) {
        String undone = m.undoes().isPresent() ? " of movement " + m.undoes().getAsLong() : "";
        return "Movement " + m.number() + ": " + m.kind().word() + undone
                + (m.order().isEmpty() ? "" : " " + m.order());
    }

    /** What came on the shelf by a movement that was just made, and what to write on it, a line each. */
    public static List<String> labels(Outcome outcome) {
        List<String> labels = new ArrayList<>();
        for (Holding made : outcome.isNew() ? outcome.made() : List.<Holding>of()) {
            if (made.amount() > 0) {
                labels.add("on the shelf: " + made.spec().words() + ", " + Held.length(made.amount()) + ": write "
                        + made.id() + " on it");
            }
        }
        return labels;
    }

    /** Who works here: $RUNBEND_WHO, or the user of the machine. */
    public static String user() {
        return System.getenv()
                .getOrDefault("RUNBEND_WHO", System.getProperty("user.name"))
                .strip();
    }
}
