package org.runbend.optimizer.boards.nesting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.runbend.optimizer.boards.nesting.NestingProblem.Item;
import org.runbend.optimizer.boards.nesting.NestingSolution.Place;
import org.runbend.optimizer.verify.NestingVerifier;

/** Packings beside published instances of two-dimensional bin packing, beside a shelf heuristic, and spoilt ones. */
class BoardNestingTest {
    private static final String BENG5 =
            "8x6 11x4 10x3 4x7 12x6 11x6 12x8 3x6 4x3 3x8 9x1 1x3 8x6 11x3 11x1 9x8 9x1 11x5 1x7 7x8 "
                    + "10x3 2x8 8x3 7x3 8x4 2x7 12x7 1x2 3x8 1x1 12x7 3x4 8x4 11x5 5x6 8x8 4x1 10x3 12x7 12x3 "
                    + "10x7 5x4 3x2 7x7 11x8 10x5 4x7 5x4 2x3 3x3 8x3 11x4 8x1 8x7 6x5 8x5 4x8 8x8 7x2 6x2 "
                    + "9x2 7x6 1x5 5x2 11x4 11x3 3x1 9x2 11x7 10x4 5x4 11x2 7x3 12x6 11x5 2x6 10x4 10x4 1x3 2x4 "
                    + "5x6 11x1 1x1 7x7 3x8 10x8 4x7 7x6 9x5 5x2 7x3 11x6 9x7 7x6 9x6 4x2 4x6 3x1 12x4 4x2";

    /**
     * Instances of the literature, pieces not turned, as others hold them in public copies; fewest boards from Martello and
     * Vigo 1998, from memory: gcut1 (Beasley 1985), cgcut1 (Christofides and Whitlock 1977), ngcut1 and ngcut10 (Beasley 1985),
     * beng1, 3 and 5 (Bengtsson 1982; 1 and 3 are the first 20 and 60 pieces of 5).
     */
    private static String instance(String name) {
        return switch (name) {
            case "gcut1" -> "167x184 114x118 167x152 83x140 70x86 143x166 120x160 66x148 87x141 69x165";
            case "cgcut1" -> "8x4 8x4 3x7 8x2 8x2 8x2 3x4 3x4 3x4 3x4 3x4 3x3 3x3 3x2 3x2 2x1";
            case "ngcut1" -> "3x7 3x7 8x2 8x2 10x2 5x4 5x4 5x4 2x9 2x9";
            case "ngcut10" -> "1x30 1x30 1x30 25x7 27x9 27x9 27x9 30x2 30x2 30x2 26x7 26x7 26x7";
            case "beng1" -> first(20);
            case "beng3" -> first(60);
            default -> BENG5;
        };
    }

    private static String first(int count) {
        return String.join(" ", Arrays.asList(BENG5.split(" ", -1)).subList(0, count));
    }

    private static NestingProblem problem(String items, double length, double width, boolean turnable) {
        List<Item> all = new ArrayList<>();
        for (String item : items.split(" ", -1)) {
            String[] sides = item.split("x", -1);
            all.add(new Item(Double.parseDouble(sides[0]), Double.parseDouble(sides[1]), turnable));
        }
        return new NestingProblem(length, width, 0, 0, true, all);
    }

    @ParameterizedTest
    @CsvSource({
        "gcut1, 250, 250, 5",
        "cgcut1, 15, 10, 2",
        "ngcut1, 10, 10, 3",
        "ngcut10, 30, 30, 3",
        "beng1, 25, 10, 4",
        "beng3, 25, 10, 9",
        "beng5, 25, 10, 14"
    })
    void besideTheLiterature(String name, double length, double width, int fewest) {
        NestingProblem problem = problem(instance(name), length, width, false);
        NestingSolution solution = new BoardNesting(20_000).solve(problem);
        assertEquals(List.of(), NestingVerifier.verify(problem, solution));
        assertTrue(solution.bound() <= fewest, () -> "bound " + solution.bound());
        assertEquals(fewest, solution.boards());
        assertTrue(solution.boards() <= shelves(problem), () -> "shelves need " + shelves(problem));
    }

    /** Never more boards than first-fit decreasing height with shelves on boards, over 60 seeded orders; fewer on some. */
    @Test
    void besideFirstFitDecreasingHeight() {
        int fewer = 0;
        for (int seed = 0; seed < 60; seed++) {
            SplittableRandom dice = new SplittableRandom(seed);
            List<Item> items = new ArrayList<>();
            for (int i = 0; i < 8 + dice.nextInt(20); i++) {
                items.add(new Item(150 + dice.nextInt(1100), 150 + dice.nextInt(450), false));
            }
            NestingProblem problem = new NestingProblem(
                    1250,
                    600,
                    0,
                    0,
                    true,
                    items.stream()
                            .map(i -> new Item(Math.min(i.length(), 1250), i.width(), false))
                            .toList());
            NestingSolution solution = new BoardNesting(300).solve(problem);
            assertEquals(List.of(), NestingVerifier.verify(problem, solution));
            int shelves = shelves(problem);
            assertTrue(solution.boards() <= shelves, "seed " + seed);
            fewer += solution.boards() < shelves ? 1 : 0;
        }
        assertTrue(fewer > 10, "fewer on " + fewer);
    }

    /** Saw and trim, turned pieces: what the verifier says, and the same answer twice. */
    @Test
    void kerfTrimAndTurns() {
        for (int seed = 0; seed < 40; seed++) {
            SplittableRandom dice = new SplittableRandom(seed);
            List<Item> items = new ArrayList<>();
            for (int i = 0; i < 12; i++) {
                items.add(new Item(100 + dice.nextInt(470), 100 + dice.nextInt(470), dice.nextInt(2) == 0));
            }
            NestingProblem problem = new NestingProblem(1250, 600, 4, 10, true, items);
            NestingSolution solution = new BoardNesting(200).solve(problem);
            assertEquals(List.of(), NestingVerifier.verify(problem, solution));
            assertEquals(solution, new BoardNesting(200).solve(problem));
        }
    }

    /** Two halves with a saw cut between do not come from one board; 2 x 2 pieces of over half a side need four. */
    @Test
    void boundsByHand() {
        Item half = new Item(500, 1000, false);
        assertEquals(
                1,
                new BoardNesting(10)
                        .solve(new NestingProblem(1000, 1000, 0, 0, true, List.of(half, half)))
                        .boards());
        NestingSolution sawn =
                new BoardNesting(10).solve(new NestingProblem(1000, 1000, 3, 0, true, List.of(half, half)));
        assertEquals(2, sawn.bound());
        Item over = new Item(510, 510, true);
        NestingSolution four =
                new BoardNesting(10).solve(new NestingProblem(1000, 1000, 0, 0, true, List.of(over, over, over, over)));
        assertEquals(4, four.bound(), "by area two would do");
        assertTrue(four.isProvedBest());
    }

    @Test
    void spoiltPackingsAreFound() {
        NestingProblem problem = problem(instance("beng1"), 25, 10, false);
        NestingSolution good = new BoardNesting(2000).solve(problem);
        for (int i = 0; i < good.places().size(); i++) {
            Place p = good.places().get(i);
            int at = i;
            for (Place bad : List.of(
                    new Place(p.board(), p.x() + 25, p.y(), false),
                    new Place(good.boards(), p.x(), p.y(), false),
                    new Place(p.board(), p.x(), p.y(), true))) {
                List<Place> places = new ArrayList<>(good.places());
                places.set(i, bad);
                assertFalse(
                        NestingVerifier.verify(problem, new NestingSolution(places, good.boards(), good.bound()))
                                .isEmpty(),
                        () -> "piece " + at + " " + bad);
            }
        }
        // the pinwheel: five pieces that no cut from edge to edge parts
        NestingProblem pinwheel = new NestingProblem(
                3,
                3,
                0,
                0,
                true,
                List.of(
                        new Item(2, 1, false),
                        new Item(1, 2, false),
                        new Item(2, 1, false),
                        new Item(1, 2, false),
                        new Item(1, 1, false)));
        List<Place> round = List.of(
                new Place(0, 0, 0, false),
                new Place(0, 2, 0, false),
                new Place(0, 1, 2, false),
                new Place(0, 0, 1, false),
                new Place(0, 1, 1, false));
        assertFalse(NestingVerifier.verify(pinwheel, new NestingSolution(round, 1, 1))
                .isEmpty());
    }

    /** Shelves by first fit over heights in falling order, then shelves onto boards by first fit (Chung, Garey and Johnson 1982). */
    private static int shelves(NestingProblem problem) {
        List<Item> sorted = new ArrayList<>(problem.items());
        sorted.sort(Comparator.comparingDouble(i -> -i.width()));
        List<double[]> shelves = new ArrayList<>();
        for (Item i : sorted) {
            double[] shelf = shelves.stream()
                    .filter(s -> s[0] + i.length() <= problem.length() + 1e-9)
                    .findFirst()
                    .orElse(null);
            if (shelf == null) {
                shelf = new double[] {0, i.width()};
                shelves.add(shelf);
            }
            shelf[0] += i.length();
        }
        List<double[]> boards = new ArrayList<>();
        for (double[] s : shelves) {
            double[] board = boards.stream()
                    .filter(b -> b[0] + s[1] <= problem.width() + 1e-9)
                    .findFirst()
                    .orElse(null);
            if (board == null) {
                board = new double[] {0};
                boards.add(board);
            }
            board[0] += s[1];
        }
        return boards.size();
    }
}
