package org.runbend.export.dxf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.SheetBuilder;

/**
 * What LibreCAD draws of our shapes, held against the shapes themselves: every place of a line is dark in its picture, and
 * nothing else is. It prints at a scale of its own, which the frame around all shapes tells.
 */
class LibrecadPictureTest {
    private static final Extent FRAME = new Extent(0, 0, 1200, 800);

    /** Shapes to be drawn, a floor as the frame first; quarter and half circles of both hands, a circle, three quarters. */
    private static final List<Shape> SHAPES = List.of(
            Path.rectangle(FRAME),
            Path.from(new Point(100, 75))
                    .lineTo(new Point(750, 75))
                    .arcTo(new Point(825, 150), 90)
                    .arcTo(new Point(750, 225), 90)
                    .lineTo(new Point(225, 225))
                    .arcTo(new Point(225, 375), -180)
                    .lineTo(new Point(750, 375))
                    .open(),
            new Circle(new Point(1050, 640), 60),
            new Arc(new Point(600, 640), 90, 0, -270));

    /** Pixels that a line may lie beside its place: pens are some tenths of a mm, pictures have 6 pixels to the mm of paper. */
    private static final int BESIDE = 4;

    @TempDir
    java.nio.file.Path folder;

    @Test
    void linesLieWhereTheyAreDrawnAndNowhereElse() throws IOException {
        SheetBuilder sheet = new SheetBuilder("shapes");
        SHAPES.forEach(s -> sheet.add(Layer.FLOOR, s));
        Picture picture = drawn(sheet.build());
        boolean[][] near = new boolean[picture.height][picture.width];
        int places = 0;
        int bare = 0;
        for (Point p : places()) {
            int x = picture.x(p);
            int y = picture.y(p);
            mark(near, x, y);
            // the frame lies on the edge of the page, which takes some of its pen away
            if (!isOnFrame(p)) {
                places++;
                bare += picture.isDarkAround(x, y) ? 0 : 1;
            }
        }
        assertTrue(places > 1500, () -> "places of lines");
        assertEquals(0, bare, "places of lines that LibreCAD leaves white");
        int strange = 0;
        for (int y = 0; y < picture.height; y++) {
            for (int x = 0; x < picture.width; x++) {
                strange += picture.dark[y][x] && !near[y][x] ? 1 : 0;
            }
        }
        assertEquals(0, strange, "dark pixels where no line is");
    }

    private static boolean isOnFrame(Point p) {
        return Math.min(p.x() - FRAME.minX(), FRAME.maxX() - p.x()) < 1
                || Math.min(p.y() - FRAME.minY(), FRAME.maxY() - p.y()) < 1;
    }

    private static void mark(boolean[][] near, int x, int y) {
        for (int v = Math.max(0, y - BESIDE); v <= Math.min(near.length - 1, y + BESIDE); v++) {
            for (int u = Math.max(0, x - BESIDE); u <= Math.min(near[v].length - 1, x + BESIDE); u++) {
                near[v][u] = true;
            }
        }
    }

    /** Places on all lines, under 2 mm apart. */
    private static List<Point> places() {
        List<Point> all = new ArrayList<>();
        for (Shape shape : SHAPES) {
            List<Shape> parts = shape instanceof Path path ? path.parts() : List.of(shape);
            for (Shape part : parts) {
                if (part instanceof Segment s) {
                    double length = Math.hypot(s.b().x() - s.a().x(), s.b().y() - s.a().y());
                    for (double t = 0; t <= 1; t += 1.5 / length) {
                        all.add(new Point(
                                s.a().x() + t * (s.b().x() - s.a().x()), s.a().y() + t * (s.b().y() - s.a().y())));
                    }
                } else if (part instanceof Arc a) {
                    round(all, a.centre(), a.radius(), a.startAngle(), a.sweep());
                } else if (part instanceof Circle c) {
                    round(all, c.centre(), c.radius(), 0, 360);
                }
            }
        }
        return all;
    }

    private static void round(List<Point> all, Point centre, double radius, double start, double sweep) {
        for (double t = 0; t <= 1; t += 1.5 / (radius * Math.toRadians(Math.abs(sweep)))) {
            double angle = Math.toRadians(start + t * sweep);
            all.add(new Point(centre.x() + radius * Math.cos(angle), centre.y() + radius * Math.sin(angle)));
        }
    }

    private Picture drawn(Sheet sheet) throws IOException {
        java.nio.file.Path file = Files.write(folder.resolve("shapes.dxf"), DxfBackend.bytes(sheet));
        java.nio.file.Path pdf = folder.resolve("shapes.pdf");
        OutsideReader.run("librecad", "dxf2pdf", "-a", "-o", pdf.toString(), file.toString());
        java.nio.file.Path stem = folder.resolve("shapes");
        OutsideReader.run("pdftoppm", "-r", "150", "-gray", "-singlefile", pdf.toString(), stem.toString());
        return new Picture(Files.readAllBytes(folder.resolve("shapes.pgm")));
    }

    /** A picture in shades of grey (PGM, P5), and where the frame lies in it. */
    private static final class Picture {
        private final int width;
        private final int height;
        private final boolean[][] dark;
        private int left = Integer.MAX_VALUE;
        private int right;
        private int top = Integer.MAX_VALUE;
        private int bottom;

        Picture(byte[] pgm) {
            String[] head = new String(pgm, 0, Math.min(pgm.length, 40), StandardCharsets.ISO_8859_1).split("\\s+", 5);
            assertEquals("P5", head[0]);
            width = Integer.parseInt(head[1]);
            height = Integer.parseInt(head[2]);
            dark = new boolean[height][width];
            int at = pgm.length - width * height;
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    dark[y][x] = (pgm[at + y * width + x] & 255) < 200;
                    if (dark[y][x]) {
                        left = Math.min(left, x);
                        right = Math.max(right, x);
                        top = Math.min(top, y);
                        bottom = Math.max(bottom, y);
                    }
                }
            }
            double scale = (right - left) / FRAME.width();
            assertTrue(scale > 0.5, () -> "only " + scale + " pixels to the mm");
            assertEquals(FRAME.height() * scale, bottom - top, BESIDE, "the frame has its own proportions");
        }

        int x(Point p) {
            return (int) Math.round(left + (p.x() - FRAME.minX()) / FRAME.width() * (right - left));
        }

        int y(Point p) {
            return (int) Math.round(bottom - (p.y() - FRAME.minY()) / FRAME.height() * (bottom - top));
        }

        boolean isDarkAround(int x, int y) {
            for (int v = Math.max(0, y - BESIDE); v <= Math.min(height - 1, y + BESIDE); v++) {
                for (int u = Math.max(0, x - BESIDE); u <= Math.min(width - 1, x + BESIDE); u++) {
                    if (dark[v][u]) {
                        return true;
                    }
                }
            }
            return false;
        }
    }
}
