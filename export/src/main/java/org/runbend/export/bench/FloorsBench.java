package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.runbend.export.batch.KnownAnswers;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.Unbuildable;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.plan.KitPlan;
import org.runbend.optimizer.service.PlanService;
import org.runbend.optimizer.service.Running;
import org.runbend.optimizer.work.Progress;
import org.runbend.optimizer.work.Work;

/**
 * How long the different floors of a day take to plan, and again when their loops are known.
 *
 * <p>Usage: {@code java -Xmx2g -cp export/target/runbend.jar org.runbend.export.bench.FloorsBench examples/workshop.yaml [FLOORS]}.
 * Floors (200) of 0.6 to 3.5 m2: rectangles and L shapes with up to two posts, seeded. Prints a line when so many are planned, and CSV
 * {@code run,floors,notBuildable,seconds} for both runs.
 */
public final class FloorsBench {
    private static final int FLOORS = 200;
    private static final int SEED = 20;

    private FloorsBench() {}

    /** Runs the bench. */
    public static void main(String[] args) throws IOException {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        if (args.length == 0) {
            out.println("usage: FloorsBench CATALOG [FLOORS]");
            return;
        }
        int floors = args.length == 1 ? FLOORS : Integer.parseInt(args[1]);
        List<Job> jobs = jobs(Path.of(args[0]).toAbsolutePath(), floors);
        KnownAnswers known = KnownAnswers.passing("bench");
        out.println("run,floors,notBuildable,seconds");
        run("anew", jobs, known, out);
        run("known", jobs, known, out);
    }

    private static void run(String name, List<Job> jobs, KnownAnswers known, PrintWriter out) {
        long start = System.nanoTime();
        int failed = 0;
        try (PlanService service = new PlanService(Runtime.getRuntime().availableProcessors())) {
            List<Running<KitPlan>> running = new ArrayList<>();
            jobs.forEach(j -> running.add(service.plan(j, new Work(Progress.SILENT, 1, known))));
            for (int i = 0; i < jobs.size(); i++) {
                try {
                    running.set(i, null).get();
                } catch (Unbuildable e) {
                    failed++;
                }
            }
        }
        out.printf(Locale.ROOT, "%s,%d,%d,%.1f%n", name, jobs.size(), failed, (System.nanoTime() - start) / 1e9);
    }

    private static List<Job> jobs(Path catalog, int floors) throws IOException {
        Random dice = new Random(SEED);
        List<Job> jobs = new ArrayList<>();
        Path file = Files.createTempFile("runbend-floor", ".yaml");
        try {
            for (int i = 0; i < floors; i++) {
                Files.writeString(file, text(catalog, i, dice));
                jobs.add(JobReader.read(file, Optional.empty()));
            }
        } finally {
            Files.delete(file);
        }
        return jobs;
    }

    /** The job file of one of its floors; they differ as the dice fall. */
    public static String text(Path catalog, int number, Random dice) {
        int width = 900 + 10 * dice.nextInt(140);
        int depth = 700 + 10 * dice.nextInt(80);
        int notch = 100 + 10 * dice.nextInt(30);
        String outline = dice.nextBoolean()
                ? String.format(Locale.ROOT, "[[0, 0], [%d, 0], [%d, %d], [0, %d]]", width, width, depth, depth)
                : String.format(
                        Locale.ROOT,
                        "[[0, 0], [%d, 0], [%d, %d], [%d, %d], [%d, %d], [0, %d]]",
                        width,
                        width,
                        depth - notch,
                        width - notch,
                        depth - notch,
                        width - notch,
                        depth,
                        depth);
        List<String> posts = new ArrayList<>();
        for (int p = dice.nextInt(3); p > 0; p--) {
            posts.add(String.format(
                    Locale.ROOT,
                    "{name: post %d, kind: pillar, circle: {centre: [%d, %d], radius: 30}, clearance: 30}",
                    p,
                    250 + dice.nextInt(width - 600),
                    200 + dice.nextInt(depth - 500)));
        }
        return String.format(
                Locale.ROOT,
                """
                job: Floor %d
                order: B-%d
                catalog: %s
                floor:
                  outline: %s
                  keepOut: [%s]
                  port: {at: [0, %d], reach: 300}
                layout: {spacing: %d}
                pipe: {product: PX-16}
                plates: {product: SP-1}
                """,
                number,
                number,
                catalog,
                outline,
                String.join(", ", posts),
                depth / 2,
                dice.nextBoolean() ? 150 : 160);
    }
}
