package org.runbend.optimizer.heat.limits;

/** Whether somebody sleeps on a floor. */
public enum Sleeping {
    /** Somebody may. */
    YES,
    /** Nobody does. */
    NO,
    /** Nobody said so: what would happen is told, and bounds nothing. */
    UNSAID
}
