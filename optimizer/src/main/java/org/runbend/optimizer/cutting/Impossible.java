package org.runbend.optimizer.cutting;

import java.util.Objects;

/**
 * No plan was found.
 *
 * @param reason one sentence with the names and lengths (mm) in question
 * @param proved true when no plan exists; false when the work limit ended the search for one
 */
public record Impossible(String reason, boolean proved) implements CuttingAnswer, CoverAnswer {
    /** Refuses a missing reason. */
    public Impossible {
        Objects.requireNonNull(reason, "reason");
    }
}
