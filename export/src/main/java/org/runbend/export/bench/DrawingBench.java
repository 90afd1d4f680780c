package org.runbend.export.bench;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.runbend.export.drawing.Vertex;
import org.runbend.export.dxf.DxfBackend;
import org.runbend.export.dxf.DxfBlock;
import org.runbend.export.dxf.DxfDocument;
import org.runbend.export.dxf.DxfLayer;
import org.runbend.export.dxf.DxfVertex;
import org.runbend.export.dxf.read.DxfReader;

/**
 * Times the writing of a large floor's drawing and the reading of a far larger one, both made here.
 *
 * <p>Usage: {@code java -Xmx1g -cp export/target/runbend.jar org.runbend.export.bench.DrawingBench}. Prints CSV: {@code
 * what,run,things,megabytes,seconds,cpu}. Three runs each; the first is that of a cold JVM.
 * {@code cpu} is what the work itself takes where others share the machine.
 */
public final class DrawingBench {
    private static final int RUNS = 3;

    /** Side of a square floor of 25 m2, mm. */
    private static final double SIDE = 5000;

    /** What a customer's largest drawing may have, bytes. */
    private static final int LARGE = 50_000_000;

    /** Serpentines side by side on the floor, each 20 mm beside the one before. */
    private static final int SERPENTINES = 8;

    private static final int LANES = 32;
    private static final double LANE = 4650;
    private static final double RADIUS = 75;

    private DrawingBench() {}

    /** Runs the bench. */
    public static void main(String[] args) throws IOException {
        PrintWriter out = new PrintWriter(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        out.println("what,run,things,megabytes,seconds,cpu");
        for (int run = 1; run <= RUNS; run++) {
            out.println(write(run));
        }
        Path file = Files.createTempFile("runbend-bench-", ".dxf");
        try {
            makeLarge(file);
            for (int run = 1; run <= RUNS; run++) {
                out.println(read(file, run));
            }
        } finally {
            Files.delete(file);
        }
    }

    private static String write(int run) {
        double metres = SERPENTINES * (LANES * LANE + (LANES - 1) * Math.PI * RADIUS) / 1000;
        Watch watch = new Watch();
        Sheet sheet = floor();
        byte[] bytes = DxfBackend.bytes(sheet);
        String times = watch.times();
        String what = String.format(Locale.ROOT, "write %.0f m", metres);
        return line(what, run, sheet.marks().size(), bytes.length, times);
    }

    private static String read(Path file, int run) throws IOException {
        Watch watch = new Watch();
        int things = new DxfReader().read(file, Optional.empty()).entities().size();
        return line("read", run, things, Files.size(file), watch.times());
    }

    private static String line(String what, int run, int things, long bytes, String times) {
        return String.format(Locale.ROOT, "%s,%d,%d,%.2f,%s", what, run, things, bytes / 1e6, times);
    }

    /** Serpentines until over 1,200 m are drawn, a rectangle and a word every 400 mm of each row of plates. */
    private static Sheet floor() {
        SheetBuilder sheet = new SheetBuilder("25 m2");
        sheet.add(Layer.FLOOR, rectangle(0, 0, SIDE, SIDE));
        for (int i = 0; i < SERPENTINES; i++) {
            sheet.add(Layer.CHANNEL, new org.runbend.export.drawing.Path(serpentine(20 * i), false));
        }
        for (double y = 100; y < SIDE - 100; y += 100) {
            for (double x = 100; x < SIDE - 400; x += 400) {
                sheet.add(Layer.PLATE, rectangle(x, y, 390, 60));
                sheet.add(Layer.NOTE, Text.level(new Point(x, y), 10, Anchor.BOTTOM_LEFT, "plate"));
            }
        }
        return sheet.build();
    }

    private static Shape rectangle(double x, double y, double width, double height) {
        return org.runbend.export.drawing.Path.rectangle(new Extent(x, y, x + width, y + height));
    }

    private static List<Vertex> serpentine(double shift) {
        List<Vertex> vertices = new ArrayList<>();
        for (int lane = 0; lane < LANES; lane++) {
            double y = 10 + shift + 2 * RADIUS * lane;
            boolean back = lane % 2 == 1;
            double left = 100;
            double right = left + LANE;
            double turn = back ? -1 : 1;
            vertices.add(new Vertex(back ? right : left, y, 0));
            vertices.add(new Vertex(back ? left : right, y, lane == LANES - 1 ? 0 : turn));
        }
        return vertices;
    }

    /** Rows of polylines with arcs, lines, circles and words, as many as the size asks for by the size of the first. */
    private static void makeLarge(Path file) throws IOException {
        int sample = 100;
        int bytes = rows(sample).length;
        Files.write(file, rows((int) Math.ceil(1.01 * LARGE * sample / bytes)));
    }

    private static byte[] rows(int count) {
        DxfDocument document = new DxfDocument();
        document.layer(new DxfLayer("MESS", 7, "Continuous", 18));
        for (int i = 0; i < count; i++) {
            row(document.model(), i);
        }
        return document.toBytes();
    }

    private static void row(DxfBlock model, int row) {
        double y = row * 7.123;
        List<DxfVertex> vertices = new ArrayList<>();
        for (int i = 0; i < 39; i++) {
            vertices.add(new DxfVertex(i * 20.5, y + i % 2 * 0.125, i % 3 == 0 ? 0.1 : 0));
        }
        model.polyline("MESS", vertices, false);
        for (int i = 0; i < 4; i++) {
            model.line("MESS", i * 20, y, i * 20 + 11.5, y + 3.25);
            model.circle("MESS", i * 31.5, y, 1.5);
        }
        model.text("MESS", 0, y, 2.5, 0, 0, 0, "row " + row);
    }

    /** Seconds since it was made, and those of them in which this thread worked. */
    private static final class Watch {
        private final long start = System.nanoTime();
        private final long worked = worked();

        String times() {
            double seconds = (System.nanoTime() - start) / 1e9;
            return String.format(Locale.ROOT, "%.3f,%.3f", seconds, (worked() - worked) / 1e9);
        }

        private static long worked() {
            return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        }
    }
}
