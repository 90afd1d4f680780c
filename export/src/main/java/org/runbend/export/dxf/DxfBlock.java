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
    private final Tags entities = new Tags();

    DxfBlock(String name, DxfDocument document) {
        this.name = name;
        this.document = document;
        recordHandle = document.nextHandle();
        beginHandle = document.nextHandle();
        endHandle = document.nextHandle();
    }

    /** A straight line. */
    public void line(String layer, double x1, double y1, double x2, double y2) {
        boolean flat = Tags.coordinate(x1).equals(Tags.coordinate(x2))
                && Tags.coordinate(y1).equals(Tags.coordinate(y2));
        if (!flat) {
            entity("LINE", layer, "AcDbLine").point(10, x1, y1).point(11, x2, y2);
        }
    }

    /** An arc, always anticlockwise from {@code from} to {@code to} degrees. */
    public void arc(String layer, double x, double y, double radius, double from, double to) {
        entity("ARC", layer, "AcDbCircle")
                .point(10, x, y)
                .coordinate(40, radius)
                .put(100, "AcDbArc")
                .shape(50, fullTurn(from))
                .shape(51, fullTurn(to));
    }

    /** A whole circle. */
    public void circle(String layer, double x, double y, double radius) {
        entity("CIRCLE", layer, "AcDbCircle").point(10, x, y).coordinate(40, radius);
    }

    /** A polyline; arcs over 180 degrees are written as two. A closed one does not repeat its first vertex. */
    public void polyline(String layer, List<DxfVertex> vertices, boolean closed) {
        List<DxfVertex> ready = Polyline.ready(vertices, closed);
        if (ready.size() < 2) {
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
                .put(1, DxfText.line(text))
                .shape(50, fullTurn(angle))
                .put(7, "Standard");
        boolean plain = column == 0 && row == 0;
        if (!plain) {
            tags.put(72, column).point(11, x, y);
        }
        tags.put(100, "AcDbText");
        if (!plain && row > 0) {
            tags.put(73, row + 1L);
        }
    }

    /** Lines of letters below each other; (x, y) is their upper left corner. */
    public void multiLineText(String layer, double x, double y, double height, double width, List<String> lines) {
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

    /** A dimension; draw its lines, arrow heads and text into the block that is returned. */
    public DxfBlock dimension(String layer, DxfDimension d) {
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
                .put(100, "AcDbAlignedDimension")
                .point(13, d.x1(), d.y1())
                .point(14, d.x2(), d.y2())
                .shape(50, fullTurn(d.angle()))
                .put(100, "AcDbRotatedDimension");
        return picture;
    }

    Tags entities() {
        return entities;
    }

    private Tags entity(String type, String layer, String subclass) {
        document.requireLayer(layer);
        return entities.put(0, type)
                .handle(5, document.nextHandle())
                .handle(330, recordHandle)
                .put(100, "AcDbEntity")
                .put(8, layer)
                .put(100, subclass);
    }

    private static double fullTurn(double angle) {
        double turned = angle % 360;
        return turned < 0 ? turned + 360 : turned;
    }
}
