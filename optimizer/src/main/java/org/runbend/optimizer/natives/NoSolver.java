package org.runbend.optimizer.natives;

/** The solver's libraries cannot be loaded on this machine. The message says why and what would help, in one line. */
public final class NoSolver extends RuntimeException {
    NoSolver(String message, Throwable cause) {
        super(message, cause);
    }
}
