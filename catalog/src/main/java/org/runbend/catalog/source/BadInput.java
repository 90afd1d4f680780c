package org.runbend.catalog.source;

import java.util.List;

/** An input that cannot be used. The message is the line of the first fault; the others stand beside it. */
public final class BadInput extends RuntimeException {
    private final List<Fault> faults;

    /**
     * An exception for at least one fault.
     *
     * @param faults in the order in which they are told
     */
    public BadInput(List<Fault> faults) {
        super(faults.get(0).text());
        this.faults = List.copyOf(faults);
    }

    /** An exception for one fault. */
    public BadInput(Fault fault) {
        this(List.of(fault));
    }

    /** All faults that were found, by file in the order of reading, then by place. */
    public List<Fault> faults() {
        return faults;
    }
}
