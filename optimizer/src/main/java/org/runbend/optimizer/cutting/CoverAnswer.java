package org.runbend.optimizer.cutting;

/** What {@link CoverCutting} says: a plan, or why there is none. */
public sealed interface CoverAnswer permits CoverSolution, Impossible {}
