package org.runbend.optimizer.loop.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.lattice.BiconnectedBlock;
import org.runbend.optimizer.lattice.Heading;
import org.runbend.optimizer.lattice.LatticeGraph;
import org.runbend.optimizer.lattice.PortPair;
import org.runbend.optimizer.loop.LoopProblem;
import org.runbend.optimizer.loop.LoopSolution;
import org.runbend.optimizer.loop.Preference;
import org.runbend.optimizer.loop.WorkLimit;
import org.runbend.optimizer.verify.LoopVerifier;

/**
 * 300 random floors of up to 120 nodes: rectangles with notched corners, pillars and a little unheated floor. The bounded
 * program, the plain one, the beam, the windows and the merged cycle cover have little in common; where two prove a
 * best loop they must have found the same objective, and no loop may beat it.
 */
class MethodsAgreeTest {
    private static final int FLOORS = 300;
    private static final int BEAM = 400;
    /** Every so many floors are large, and get a cycle cover; the others have at most 60 nodes. */
    private static final int LARGE = 10;

    private int proved;
    private int complete;
    private int covers;
    private int worse;
    private int mended;

    @Test
    void onThreeHundredFloors() {
        Random random = new Random(300);
        int largest = 0;
        int floors = 0;
        while (floors < FLOORS) {
            LatticeGraph graph = floor(random, floors % LARGE == 0 ? 120 : 60);
            List<BiconnectedBlock> blocks = BiconnectedBlock.all(graph);
            if (!blocks.isEmpty()) {
                BiconnectedBlock block = blocks.get(0);
                compare(graph, block, ports(graph, block, random), floors % LARGE == 0);
                largest = Math.max(largest, block.size());
                floors++;
            }
        }
        assertTrue(proved > FLOORS * 9 / 10, "only " + proved + " floors had a loop");
        assertTrue(complete > FLOORS / 10, "only " + complete + " beams lost nothing");
        assertTrue(covers > FLOORS / LARGE / 2, "only " + covers + " covers were merged");
        assertTrue(2 * mended > worse, "windows mended " + mended + " of " + worse + " loops");
        assertTrue(largest > 100, "largest floor " + largest);
    }

    private void compare(LatticeGraph graph, BiconnectedBlock block, List<PortPair> ports, boolean withCover) {
        LoopProblem problem = new LoopProblem(graph, ports, Preference.longRuns(), WorkLimit.standard());
        BlockProblem blockProblem = new BlockProblem(problem, block, ports);
        Answer<LoopSolution> plain = new ExactLaying(blockProblem).solve();
        Answer<LoopSolution> bounded = new BoundedLaying(blockProblem).solve();
        assertEquals(plain.getClass(), bounded.getClass());
        if (plain instanceof Answer.Found<LoopSolution>) {
            int best = proved(problem, plain);
            assertEquals(best, proved(problem, bounded));
            beam(blockProblem, problem, best);
            if (withCover) {
                cover(blockProblem, problem, best);
            }
        }
    }

    /** The objective of a loop that the verifier passes and that is proved. */
    private int proved(LoopProblem problem, Answer<LoopSolution> outcome) {
        LoopSolution loop = outcome.value().orElseThrow();
        assertEquals(List.of(), LoopVerifier.verify(problem, loop));
        assertTrue(loop.isProvedBest());
        proved += outcome instanceof Answer.Found<LoopSolution> ? 1 : 0;
        return loop.objective();
    }

    private void beam(BlockProblem blockProblem, LoopProblem problem, int best) {
        Sweep beam = new Sweep(blockProblem.frontier(), blockProblem.encoding(), Sweep.NONE);
        beam.runBeam(BEAM);
        if (beam.best() == Sweep.NONE) {
            assertTrue(beam.truncated(), "nothing was lost, so the loop cannot have been");
            return;
        }
        int objective = verified(blockProblem, problem, beam.trace());
        assertEquals(beam.best(), objective);
        assertTrue(beam.truncated() ? objective >= best : objective == best);
        complete += beam.truncated() ? 0 : 1;
        windows(blockProblem, problem, beam.trace(), best);
    }

    /** Windows keep the loop a loop and never make it worse; how often they reach the best is counted. */
    private void windows(BlockProblem blockProblem, LoopProblem problem, int[] start, int best) {
        PriceUnits prices = new PriceUnits(blockProblem.frontier());
        ConfigurationProgram program = new ConfigurationProgram(new Configurations(blockProblem.frontier()), prices);
        int[] improved = new WindowSearch(blockProblem, prices, program::reducedCosts, 200_000, best).improve(start);
        int objective = verified(blockProblem, problem, improved);
        assertTrue(objective >= best, "a window laid a loop better than the best");
        assertTrue(objective <= blockProblem.objective(start), "a window made the loop worse");
        worse += blockProblem.objective(start) > best ? 1 : 0;
        mended += blockProblem.objective(start) > best && objective == best ? 1 : 0;
    }

    private void cover(BlockProblem blockProblem, LoopProblem problem, int best) {
        int[] legs = new PatchedCover(blockProblem, 2).find();
        if (legs.length > 0) {
            assertTrue(verified(blockProblem, problem, legs) >= best);
            covers++;
        }
    }

    private static int verified(BlockProblem blockProblem, LoopProblem problem, int[] legs) {
        LoopSolution loop = blockProblem.solution(legs, OptionalInt.empty(), OptionalInt.empty(), List.of());
        assertEquals(List.of(), LoopVerifier.verify(problem, loop));
        return loop.objective();
    }

    /** Up to four links that follow each other along the rim or into the floor. */
    private static List<PortPair> ports(LatticeGraph graph, BiconnectedBlock block, Random random) {
        List<PortPair> links = Lattices.links(graph).stream()
                .filter(p -> block.contains(p.from()) && block.contains(p.to()))
                .toList();
        int first = random.nextInt(links.size());
        return links.subList(first, Math.min(links.size(), first + 1 + random.nextInt(4)));
    }

    private static LatticeGraph floor(Random random, int most) {
        int columns = 3 + random.nextInt(most > 60 ? 10 : 8);
        int rows = Math.max(3, Math.min(14, most / columns - random.nextInt(3)));
        char[][] lines = new char[rows][columns];
        for (char[] line : lines) {
            Arrays.fill(line, 'o');
        }
        for (int notch = random.nextInt(4); notch > 0; notch--) {
            int c = random.nextBoolean() ? 0 : columns - 1 - random.nextInt(2);
            int r = random.nextBoolean() ? 0 : rows - 1 - random.nextInt(2);
            fill(lines, c, r, 1 + random.nextInt(2), 1 + random.nextInt(2), '.');
        }
        for (int pillar = random.nextInt(3); pillar > 0; pillar--) {
            fill(lines, random.nextInt(columns), random.nextInt(rows), 1, 1, '.');
        }
        if (random.nextInt(3) == 0) {
            fill(lines, random.nextInt(columns), random.nextInt(rows), 2, 2, '0');
        }
        return forbidSomeBends(lines, random);
    }

    private static LatticeGraph forbidSomeBends(char[][] lines, Random random) {
        List<String> drawing = new ArrayList<>();
        for (char[] line : lines) {
            drawing.add(new String(line));
        }
        LatticeGraph.Builder builder = Lattices.picturing(String.join("\n", drawing));
        int size = builder.build().size();
        for (int i = random.nextInt(5); i > 0; i--) {
            Heading leg = Heading.ofIndex(random.nextInt(4));
            builder.forbidBend(random.nextInt(size), leg, leg.left());
        }
        return builder.build();
    }

    private static void fill(char[][] lines, int column, int row, int width, int height, char with) {
        for (int r = row; r < Math.min(lines.length, row + height); r++) {
            for (int c = column; c < Math.min(lines[r].length, column + width); c++) {
                lines[r][c] = with;
            }
        }
    }
}
