package org.runbend.optimizer.lattice;

/** The lattice axis along which runs are wanted. */
public enum Axis {
    /** Runs along the columns' axis, that is east and west. */
    X,
    /** Runs along the rows' axis, that is north and south. */
    Y,
    /** Either. */
    NONE
}
