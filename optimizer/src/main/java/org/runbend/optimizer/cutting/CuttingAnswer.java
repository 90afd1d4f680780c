package org.runbend.optimizer.cutting;

import org.runbend.optimizer.cutting.patterns.PatternCutting;

/** What {@link PatternCutting} says: a plan, or why there is none. */
public sealed interface CuttingAnswer permits CuttingSolution, Impossible {}
