package org.runbend.optimizer.cutting;

/** What {@link PatternCutting} says: a plan, or why there is none. */
public sealed interface CuttingAnswer permits CuttingSolution, Impossible {}
