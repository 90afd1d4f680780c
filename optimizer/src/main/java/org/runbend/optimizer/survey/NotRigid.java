package org.runbend.optimizer.survey;

/** Lengths that do not fix one floor. The text says what is missing. */
public final class NotRigid extends RuntimeException {
    /**
     * Says what is missing.
     *
     * @param text one line
     */
    NotRigid(String text) {
        super(text);
    }
}
