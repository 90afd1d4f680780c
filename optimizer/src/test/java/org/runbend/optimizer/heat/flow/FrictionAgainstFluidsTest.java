package org.runbend.optimizer.heat.flow;

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
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Friction, bends and the turn to turbulence beside the library fluids, run live; skipped with a word where it is missing. */
class FrictionAgainstFluidsTest {
    private static final Path PYTHON = Path.of("/usr/bin/python3");
    private static final int POINTS = 500;

    private record Point(double reynolds, double roughness, double bore, double radius, double angle) {
        static Point random(SplittableRandom random) {
            double bore = 0.006 + 0.02 * random.nextDouble();
            return new Point(
                    Math.pow(10, 1.2 + 3.8 * random.nextDouble()),
                    random.nextInt(4) == 0 ? 0 : Math.pow(10, -5 + 3.3 * random.nextDouble()),
                    bore,
                    bore * (1.5 + 15 * random.nextDouble()),
                    5 + 175 * random.nextDouble());
        }

        String line() {
            return reynolds + " " + roughness + " " + bore + " " + radius + " " + angle;
        }
    }

    @Test
    void fiveHundredPoints(@TempDir Path folder) throws IOException, InterruptedException {
        SplittableRandom random = new SplittableRandom(1977);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < POINTS; i++) {
            points.add(Point.random(random));
        }
        List<String> answers = fluids(folder, points);
        assertEquals(POINTS, answers.size());
        for (int i = 0; i < POINTS; i++) {
            compare(points.get(i), answers.get(i).split(" "));
        }
    }

    private static void compare(Point p, String[] theirs) {
        double friction = new Churchill1977().friction(p.reynolds(), p.roughness());
        near(theirs[0], friction, p);
        near(theirs[1], new White1929().friction(p.reynolds(), p.bore() * 1000, p.radius() * 1000), p);
        near(theirs[2], new Schmidt1967().critical(p.bore() * 1000, p.radius() * 1000), p);
        near(theirs[3], new Rennels2012().loss(friction, Math.toRadians(p.angle()), p.radius() / p.bore()), p);
    }

    private static void near(String theirs, double ours, Point point) {
        double expected = Double.parseDouble(theirs);
        assertEquals(expected, ours, 1e-6 * expected, point::line);
    }

    private static List<String> fluids(Path folder, List<Point> points) throws IOException, InterruptedException {
        need(
                Files.isExecutable(PYTHON) && run(folder, List.of(PYTHON.toString(), "-c", "import fluids")) == 0,
                "python3 cannot import fluids (python3-fluids is not installed)");
        Path script = folder.resolve("friction_points.py");
        try (InputStream in = FrictionAgainstFluidsTest.class.getResourceAsStream("friction_points.py")) {
            Files.write(script, in.readAllBytes());
        }
        Path data = folder.resolve("points.txt");
        Files.write(data, points.stream().map(Point::line).toList());
        int code = run(folder, List.of(PYTHON.toString(), script.toString(), data.toString()));
        List<String> answers = Files.readAllLines(folder.resolve("out.txt"), StandardCharsets.UTF_8);
        assertEquals(0, code, () -> String.join("\n", answers));
        return answers;
    }

    private static int run(Path folder, List<String> command) throws IOException, InterruptedException {
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("out.txt").toFile())
                .start()
                .waitFor();
    }

    private static void need(boolean there, String word) {
        if (!there && "true".equals(System.getenv("CI"))) {
            fail(word + ", but CI must have it");
        }
        assumeTrue(there, word);
    }
}
