package org.runbend.optimizer.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The adjustment against scipy.optimize.least_squares, run live; skipped with a word where SciPy is not installed. */
class SurveyAgainstSciPyTest {
    private static final String PYTHON = "/usr/bin/python3";
    private static final int FLOORS = 200;

    @TempDir
    Path folder;

    @Test
    void sameFloorsAndResidualsAsSciPy() throws Exception {
        need(Files.isExecutable(Path.of(PYTHON)), "python3 is not installed");
        need(run(PYTHON, "-c", "import scipy.optimize").code() == 0, "python3 has no SciPy");
        Path script = folder.resolve("adjust.py");
        try (InputStream in = SurveyAgainstSciPyTest.class.getResourceAsStream("adjust.py")) {
            Files.write(script, in.readAllBytes());
        }
        RandomFloors floors = new RandomFloors(200);
        List<SurveyProblem> problems = new ArrayList<>();
        List<SurveySolution> ours = new ArrayList<>();
        while (problems.size() < FLOORS) {
            int n = 4 + problems.size() % 6;
            List<Place> truth = floors.floor(n);
            SurveyProblem problem =
                    new SurveyProblem(RandomFloors.names(n), floors.lengths(truth, 0.9, 3.0), problems.size() % 2 == 1);
            try {
                ours.add(new FloorSurvey().adjust(problem));
                problems.add(problem);
            } catch (NotRigid e) {
                // the draw left out too many diagonals; the next one is as good
            }
        }
        Path given = Files.writeString(folder.resolve("floors.txt"), text(problems));
        Result result = run(PYTHON, script.toString(), given.toString());
        assertEquals(0, result.code(), result.output());
        List<String> theirs = result.output().lines().toList();
        assertEquals(FLOORS, theirs.size());
        for (int i = 0; i < FLOORS; i++) {
            assertSame(ours.get(i), theirs.get(i).split(" "), "floor " + i);
        }
    }

    /** One line a floor: corners, side of the first side, then from, to and length of each measurement. */
    private static String text(List<SurveyProblem> problems) {
        return problems.stream()
                .map(p -> p.corners().size() + " " + (p.clockwise() ? -1 : 1) + " "
                        + p.measurements().stream()
                                .map(m -> m.from() + " " + m.to() + " " + m.length())
                                .collect(Collectors.joining(" ")))
                .collect(Collectors.joining("\n"));
    }

    private static void assertSame(SurveySolution ours, String[] theirs, String which) {
        int k = 0;
        for (Place p : ours.places()) {
            assertEquals(Double.parseDouble(theirs[k++]), p.x(), 1e-3, which);
            assertEquals(Double.parseDouble(theirs[k++]), p.y(), 1e-3, which);
        }
        for (Residual r : ours.residuals()) {
            assertEquals(Double.parseDouble(theirs[k++]), r.value(), 1e-3, which);
        }
        assertEquals(theirs.length, k, which);
    }

    private static void need(boolean there, String word) {
        if (!there && "true".equals(System.getenv("CI"))) {
            fail(word + ", but CI must have it");
        }
        assumeTrue(there, word);
    }

    private record Result(int code, String output) {}

    private static Result run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Result(process.waitFor(), output);
    }
}
