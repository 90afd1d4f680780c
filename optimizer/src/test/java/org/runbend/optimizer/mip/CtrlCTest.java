package org.runbend.optimizer.mip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Ctrl-C ends the program also while the solver searches, as it does not keep the signal for itself. */
class CtrlCTest {
    /** POSIX shells: 128 and the number of SIGINT. */
    private static final int ENDED_BY_CTRL_C = 130;

    @Test
    void endsAProgramInTheMiddleOfItsSearch() throws IOException, InterruptedException {
        Process solving = start();
        try (BufferedReader said = solving.inputReader(StandardCharsets.UTF_8)) {
            assertEquals("solving", said.readLine());
            // time for the search to begin; if it has not, the program ends as it should and nothing is tried
            assertTrue(!solving.waitFor(1, TimeUnit.SECONDS), "the search ended by itself");
            new ProcessBuilder("kill", "-INT", Long.toString(solving.pid()))
                    .start()
                    .waitFor();
            assertEquals("", said.lines().collect(Collectors.joining("\n")));
            assertEquals(ENDED_BY_CTRL_C, solving.waitFor());
        } finally {
            solving.destroyForcibly();
        }
    }

    private static Process start() throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        CtrlCTest.class.getName())
                .redirectErrorStream(true)
                .start();
    }

    /** Solves, for longer than anybody waits, a market split (Cornuejols and Dawande 1998): few rows, no structure. */
    public static void main(String[] args) {
        new IntegerSolver(1).solve(marketSplit(1, 2));
        System.out.println("solving");
        System.out.println(
                new IntegerSolver(Integer.MAX_VALUE).solve(marketSplit(6, 50)).status());
    }

    private static Model marketSplit(int rows, int columns) {
        Random random = new Random(1);
        int[][] wants = random.ints(rows, 0, 1)
                .mapToObj(r -> random.ints(columns, 0, 100).toArray())
                .toArray(int[][]::new);
        Model model = new Model();
        int[] all = new int[rows];
        for (int r = 0; r < rows; r++) {
            int half = Arrays.stream(wants[r]).sum() / 2;
            all[r] = model.row(half, half);
            model.fraction(1, new int[] {r}, new double[] {1});
            model.fraction(1, new int[] {r}, new double[] {-1});
        }
        for (int c = 0; c < columns; c++) {
            double[] entries = new double[rows];
            for (int r = 0; r < rows; r++) {
                entries[r] = wants[r][c];
            }
            model.column(0, 1, all, entries);
        }
        return model;
    }
}
