package org.runbend.optimizer.mip;

/** Looks on while a solver works: hears of each better plan or bound, and may ask it to come to an end. */
public interface Watch {
    /** Hears nothing and never asks for an end. */
    Watch NONE = new Watch() {
        @Override
        public boolean asksForEnd() {
            return false;
        }

        @Override
        public void learned(long cost, long bound) {
            // nobody listens
        }
    };

    /** True when the solver should return what it has. It is asked often, by more than one thread. */
    boolean asksForEnd();

    /** A plan of this cost (Long.MAX_VALUE: none yet) and this proved bound are known. */
    void learned(long cost, long bound);
}
