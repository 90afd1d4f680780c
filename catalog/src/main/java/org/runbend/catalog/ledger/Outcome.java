package org.runbend.catalog.ledger;

import java.util.List;

/**
 * What came of a request.
 *
 * @param movement the movement that was made, now or when the request came first
 * @param isNew whether anything was changed
 * @param made pieces that came on the shelf by it, with their ids
 * @param notes what a person should know, a line each
 */
public record Outcome(Movement movement, boolean isNew, List<Holding> made, List<String> notes) {
    /** Copies the lists. */
    public Outcome {
        made = List.copyOf(made);
        notes = List.copyOf(notes);
    }
}
