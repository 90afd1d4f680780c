package org.runbend.export.dxf;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A place entities are drawn into: the drawing itself or the picture of a dimension. Coordinates in mm, y up, angles in
 * degrees. Every layer named must have been declared. Lines that would be written with equal ends are left out.
 */
public final class DxfBlock {
    final String name;
    final long recordHandle;
    final long beginHandle;
    final long endHandle;
    private final DxfDocument document;
    private final boolean onPaper;
    private final Tags entities;
    private List<String> notes = List.of();

    DxfBlock(String name, DxfDocument document, boolean onPaper) {
        this.name = name;
        this.document = document;
        this.onPaper = onPaper;
        this.entities = new Tags(document.version());
        recordHandle = document.nextHandle();
        beginHandle = document.nextHandle();
        endHandle = document.nextHandle();
    }

    /** What programs find with the next line, circle, polyline or line of letters, as extended data of our own. */
    public void notes(List<String> lines) {
        notes = List.copyOf(lines);
    }

    /** Extended data, group codes 1001 and 1000; a text over 250 letters goes on in the next one, which begins with a plus. */
    private void writeNotes() {
        if (notes.isEmpty()) {
            return;
        }
        entities.put(1001, DxfNames.APPLICATION);
        for (String note : notes) {
            String sign = "";
            for (String part : DxfText.parts(DxfText.line(note))) {
                entities.put(1000, sign + part);
                sign = "+";
            }
        }
        notes = List.of();
    }

    /** A straight line. */
    public void line(String layer, double x1, double y1, double x2, double y2) {
        boolean flat = Tags.coordinate(x1).equals(Tags.coordinate(x2))
                && Tags.coordinate(y1).equals(Tags.coordinate(y2));
        if (!flat) {
            entity("LINE", layer, "AcDbLine").point(10, x1, y1).point(11, x2, y2);
            writeNotes();
        }
    }

    /** An arc, always anticlockwise from {@code from} to {@code to} degrees. */
    public void arc(String layer, double x, double y, double radius, double from, double to) {
        entity("ARC", layer, "AcDbCircle")
                .point(10, x, y)
                .coordinate(40, radius)
                .marker("AcDbArc")
                .shape(50, fullTurn(from))
                .shape(51, fullTurn(to));
        writeNotes();
    }

    /** A whole circle. */
    public void circle(String layer, double x, double y, double radius) {
        entity("CIRCLE", layer, "AcDbCircle").point(10, x, y).coordinate(40, radius);
        writeNotes();
    }

    /** A polyline; arcs over 180 degrees are written as two. A closed one does not repeat its first vertex. */
    public void polyline(String layer, List<DxfVertex> vertices, boolean closed) {
        List<DxfVertex> ready = Polyline.ready(vertices, closed);
        if (ready.size() < 2) {
            return;
        }
        if (!isModern()) {
            chain(layer, ready, closed);
            return;
        }
        Tags tags = entity("LWPOLYLINE", layer, "AcDbPolyline")
                .put(90, ready.size())
                .put(70, closed ? 1 : 0)
                .coordinate(43, 0);
        for (DxfVertex v : ready) {
            tags.coordinate(10, v.x()).coordinate(20, v.y());
            if (v.bulge() != 0) {
                tags.shape(42, v.bulge());
            }
        }
        writeNotes();
    }

    /** A filled triangle. */
    public void triangle(String layer, double x1, double y1, double x2, double y2, double x3, double y3) {
        entity("SOLID", layer, "AcDbTrace")
                .point(10, x1, y1)
                .point(11, x2, y2)
                .point(12, x3, y3)
                .point(13, x3, y3);
    }

    /**
     * One line of letters. {@code column} 0 left, 1 centre, 2 right; {@code row} 0 baseline, 1 middle, 2 top; (x, y) is
     * that place of the line.
     */
    public void text(String layer, double x, double y, double height, double angle, int column, int row, String text) {
        Tags tags = entity("TEXT", layer, "AcDbText")
                .point(10, x, y)
                .coordinate(40, height)
                .put(1, oneLine(text))
                .shape(50, fullTurn(angle))
                .put(7, "Standard");
        boolean plain = column == 0 && row == 0;
        if (!plain) {
            tags.put(72, column).point(11, x, y);
        }
        tags.marker("AcDbText");
        if (!plain && row > 0) {
            tags.put(73, row + 1L);
        }
        writeNotes();
    }

    /** Lines of letters below each other; (x, y) is their upper left corner. */
    public void multiLineText(String layer, double x, double y, double height, double width, List<String> lines) {
        if (!isModern()) {
            for (int i = 0; i < lines.size(); i++) {
                text(layer, x, y - i * LINE_PITCH * height, height, 0, 0, 2, lines.get(i));
            }
            return;
        }
        String content = lines.stream().map(DxfText::multiLine).collect(Collectors.joining("\\P"));
        Tags tags = entity("MTEXT", layer, "AcDbMText")
                .point(10, x, y)
                .coordinate(40, height)
                .coordinate(41, width)
                .put(71, 1)
                .put(72, 1);
        DxfText.chunks(tags, content);
        tags.put(7, "Standard");
    }

    /** Single spacing of lines by their height, as programs take it. */
    private static final double LINE_PITCH = 5.0 / 3;

    /**
     * Solid areas: closed contours, the inner ones left free (odd parity). R12 has none of it, there nothing is drawn.
     *
     * @throws IllegalArgumentException if a contour has under 2 vertices
     */
    public void hatch(String layer, List<List<DxfVertex>> contours) {
        if (!isModern()) {
            return;
        }
        Tags tags = entity("HATCH", layer, "AcDbHatch").point(10, 0, 0);
        tags.coordinate(210, 0).coordinate(220, 0).coordinate(230, 1);
        tags.put(2, "SOLID").put(70, 1).put(71, 0).put(91, contours.size());
        for (List<DxfVertex> contour : contours) {
            List<DxfVertex> ready = Polyline.ready(contour, true);
            if (ready.size() < 2) {
                throw new IllegalArgumentException(
                        "a contour of a hatch has " + ready.size() + " vertices, 2 or more are needed");
            }
            tags.put(92, 3).put(72, 1).put(73, 1).put(93, ready.size());
            ready.forEach(v -> tags.coordinate(10, v.x()).coordinate(20, v.y()).shape(42, v.bulge()));
            tags.put(97, 0);
        }
        tags.put(75, 0).put(76, 1).put(98, 0);
    }

    /** A block of the document put in place: scaled, then turned by {@code angle} degrees, then moved to (x, y). */
    public void insert(String layer, DxfBlock block, double x, double y, double scale, double angle) {
        if (block == this) {
            throw new IllegalArgumentException("block " + name + " cannot hold itself");
        }
        entity("INSERT", layer, "AcDbBlockReference")
                .put(2, block.name)
                .point(10, x, y)
                .shape(41, scale)
                .shape(42, scale)
                .shape(43, scale)
                .shape(50, fullTurn(angle));
    }

    /** A dimension; draw its lines, arrow heads and text into the block that is returned. R12 gets just these. */
    public DxfBlock dimension(String layer, DxfDimension d) {
        if (!isModern()) {
            return this;
        }
        DxfBlock picture = document.dimensionBlock();
        String style = document.dimensionStyle(d.height());
        entity("DIMENSION", layer, "AcDbDimension")
                .put(2, picture.name)
                .point(10, d.lineX(), d.lineY())
                .point(11, d.textX(), d.textY())
                .put(70, d.textMoved() ? 32 + 128 : 32)
                .put(1, DxfText.multiLine(d.text()))
                .put(71, 5)
                .put(3, style)
                .marker("AcDbAlignedDimension")
                .point(13, d.x1(), d.y1())
                .point(14, d.x2(), d.y2())
                .shape(50, fullTurn(d.angle()))
                .marker("AcDbRotatedDimension");
        return picture;
    }

    /**
     * A window on paper through which the model is seen; model mm are {@code scale} times as large as paper mm.
     *
     * @param number 1 for the paper itself, then 2, 3 ...
     */
    void viewport(String layer, int number, DxfExtent place, double viewX, double viewY, double scale) {
        double width = place.maxX() - place.minX();
        double height = place.maxY() - place.minY();
        Tags t = entity("VIEWPORT", layer, "AcDbViewport");
        t.point(10, (place.minX() + place.maxX()) / 2, (place.minY() + place.maxY()) / 2);
        t.coordinate(40, width).coordinate(41, height).put(68, number).put(69, number);
        t.coordinate(12, viewX).coordinate(22, viewY).coordinate(13, 0).coordinate(23, 0);
        t.coordinate(14, 10).coordinate(24, 10).coordinate(15, 10).coordinate(25, 10);
        t.coordinate(16, 0).coordinate(26, 0).coordinate(36, 1).point(17, 0, 0);
        t.coordinate(42, 50).coordinate(43, 0).coordinate(44, 0).coordinate(45, height * scale);
        t.coordinate(50, 0).coordinate(51, 0).put(72, 1000).put(90, number == 1 ? 32864 : 32868 | LOCKED);
        t.put(1, "").put(281, 0).put(71, 1).put(74, 0);
        t.point(110, 0, 0).coordinate(111, 1).coordinate(121, 0).coordinate(131, 0);
        t.coordinate(112, 0).coordinate(122, 1).coordinate(132, 0).put(79, 0).coordinate(146, 0);
    }

    /** Bit of a viewport whose scale is not to be moved by hand. */
    private static final int LOCKED = 0x4000;

    Tags entities() {
        return entities;
    }

    private Tags entity(String type, String layer, String subclass) {
        document.requireLayer(layer);
        entities.put(0, type)
                .handle(5, document.nextHandle())
                .owner(recordHandle)
                .marker("AcDbEntity");
        if (onPaper) {
            entities.put(67, 1);
        }
        return entities.put(8, layer).marker(subclass);
    }

    /** A polyline of R12: a head, an entity for each vertex, an end. */
    private void chain(String layer, List<DxfVertex> vertices, boolean closed) {
        entity("POLYLINE", layer, "").put(66, 1).point(10, 0, 0).put(70, closed ? 1 : 0);
        writeNotes();
        for (DxfVertex v : vertices) {
            Tags tags = entity("VERTEX", layer, "").point(10, v.x(), v.y());
            if (v.bulge() != 0) {
                tags.shape(42, v.bulge());
            }
        }
        entity("SEQEND", layer, "");
    }

    private String oneLine(String text) {
        return isModern() ? DxfText.line(text) : DxfText.asciiLine(text);
    }

    private boolean isModern() {
        return document.version().hasMarkers();
    }

    private static double fullTurn(double angle) {
        double turned = angle % 360;
        return turned < 0 ? turned + 360 : turned;
    }
}
