/**
 * Finds the loop: a frontier dynamic program, what bounds it, what stands in where it would grow too large.
 *
 * <p>The way of a state. {@link org.runbend.optimizer.loop.search.LoopSolver} takes a problem apart at its port: a
 * {@code PortBlock} is the biconnected part that holds a pair of places at the port, a {@code BlockProblem} the question for it, with
 * a link between the pair that the cycle must use. {@code NodeOrder} lines the places up and {@code Frontier} says, for each
 * step of that order, which links are still open between places done and places to come. A state is what is known on one such
 * line: for each open link whether the cycle uses it, and which of the used ones are two ends of one path ({@code StateEncoding} puts
 * that in a long). {@code StateExpansion} takes the next place into a state: every way in which the cycle can pass it or leave it
 * out gives a state of the next {@code StateLayer}, with turns and places left out added up; of equal states the better one stays,
 * with the step it came by. {@code LayeredProgram} does so layer by layer; what tells one search from another are its
 * {@code Rules} (which states go on, what a step costs, what a state carries beyond its links) and its {@code Thinning}.
 * {@code Sweep} has the plainest rules: until one state is left, the cycle, closed. {@code CycleTrace}
 * walks the steps back and gives the places in order.
 *
 * <p>Wider floors have too many states. {@code ConfigurationProgram} solves a linear program over {@code Configurations} (the ways of
 * passing one place); {@code ConnectivitySeparation} adds the connectivity cuts that forbid split cycles. Its duals ({@code ReducedCosts}) say of a state what
 * completing it must cost at least, and {@code BoundedSweep} drops those that cannot beat a loop in hand. {@code OrderTrial}
 * chooses among orders; {@code OneWaySweep}s from both ends meet in a {@code BidirectionalJoin} ({@code BidirectionalSweep}). Where that is still
 * too much, {@code BidirectionalBeam} keeps the best states of each layer only, {@code WindowSearch} lays part of a loop anew, window by
 * window (POPMUSIC), and {@code PatchedCover} patches the cycles of a cover; what is proved then is the bound of the linear program or nothing.
 * {@code StiffSweep} carries with each open link what its earlier end did, for pipe that cannot turn twice in a row.
 *
 * <p>Where straight pieces have a price, a state also holds a label of each open link ({@code StraightPieces}): whether its earlier end
 * is a corner, and of short pieces how many places they pass; {@code StraightJoin} adds up what lies over the seam of two passes, and
 * {@code StraightRow}s put the ends of pieces into the linear program. What is left out is then part of the same cost
 * ({@code PriceUnits#inside}), for at prices about a turn there would be dozens of numbers of places to be asked one by one.
 * {@code BestOfEqual}, {@code TieSearch} and {@code EvenSearch} choose among loops of equal objective.
 *
 * <p>Open to others: {@code LoopSolver}, {@code LimitedSolver} (loops of limited length), {@code LoopSketch} (a bound and a
 * guess in little time), {@code NextPairs} (the loops that serve one place more or less) and {@code CircuitModel} (the same
 * problem as an integer program, for comparison).
 */
package org.runbend.optimizer.loop.search;
