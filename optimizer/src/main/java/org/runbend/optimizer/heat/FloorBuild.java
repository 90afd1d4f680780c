package org.runbend.optimizer.heat;

import java.util.Optional;
import org.runbend.optimizer.heat.output.PipeWall;
import org.runbend.optimizer.heat.output.Stack;

/**
 * What the floor is made of.
 *
 * @param stack layers as bought
 * @param pipe pipe
 * @param coverHeat heat that the cover holds, J/(m3 K)
 * @param pipeLimit highest temperature that the pipe stands, degrees C, if its maker says so
 * @param timber whether the floor's top is timber
 */
public record FloorBuild(Stack stack, PipeWall pipe, double coverHeat, Optional<Double> pipeLimit, boolean timber) {}
