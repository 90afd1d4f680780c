package org.runbend.optimizer.loop;

import java.util.Objects;

/** What came of an attempt to lay a loop. */
public sealed interface LoopOutcome {
    /** A loop was laid. */
    record Found(LoopSolution solution) implements LoopOutcome {
        /** Checks presence. */
        public Found {
            Objects.requireNonNull(solution, "solution");
        }
    }

    /** It is certain that no loop exists; the reason is a sentence part for people. */
    record NoLoop(String reason) implements LoopOutcome {
        /** Checks presence. */
        public NoLoop {
            Objects.requireNonNull(reason, "reason");
        }
    }

    /** The work limit was reached before anything was certain. */
    record TooWide(String what) implements LoopOutcome {
        /** Checks presence. */
        public TooWide {
            Objects.requireNonNull(what, "what");
        }
    }
}
