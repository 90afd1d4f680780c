package org.runbend.optimizer.heat.quantity;

/** A number or a combination that nothing can be reckoned with; the message is one line that says what would be right. */
public final class OddInput extends IllegalArgumentException {
    private static final long serialVersionUID = 1;

    /** With one line for a person. */
    public OddInput(String line) {
        super(line);
    }
}
