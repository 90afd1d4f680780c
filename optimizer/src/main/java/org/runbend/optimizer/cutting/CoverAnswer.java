package org.runbend.optimizer.cutting;

import org.runbend.optimizer.cutting.cover.CoverCutting;

/** What {@link CoverCutting} says: a plan, or why there is none. */
public sealed interface CoverAnswer permits CoverSolution, Impossible {}
