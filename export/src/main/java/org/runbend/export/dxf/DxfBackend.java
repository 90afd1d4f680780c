package org.runbend.export.dxf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.runbend.export.drawing.Arc;
import org.runbend.export.drawing.Arrow;
import org.runbend.export.drawing.Backend;
import org.runbend.export.drawing.Circle;
import org.runbend.export.drawing.Dimension;
import org.runbend.export.drawing.Extent;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.LineStyle;
import org.runbend.export.drawing.PaperSheet;
import org.runbend.export.drawing.Paragraph;
import org.runbend.export.drawing.Path;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.Segment;
import org.runbend.export.drawing.Shape;
import org.runbend.export.drawing.Sheet;
import org.runbend.export.drawing.Text;

/** Draws a sheet as DXF: paths as polylines with bulges, dimensions as dimensions with a picture of their own. */
public final class DxfBackend implements Backend {
    /** Programs cut in the order of the file, or of its table of layers: pockets and holes before the outline frees the part. */
    private static final List<Layer> IN_ORDER_OF_WORK = Stream.concat(
                    Stream.of(Layer.CHANNEL, Layer.PIPE, Layer.SLOT, Layer.HOLE, Layer.FLOOR),
                    Arrays.stream(Layer.values()).filter(l -> l != Layer.BLANK))
            .distinct()
            .toList();

    private final DxfDocument document;
    private final boolean inParts;
    private final Map<Layer, DxfLayer> layers;
    private DxfBlock block;
    private List<String> notes = List.of();

    private DxfBackend(DxfDocument document, DxfBlock block, boolean inParts, Map<Layer, DxfLayer> layers) {
        this.document = document;
        this.block = block;
        this.inParts = inParts;
        this.layers = layers;
    }

    private DxfBackend(DxfDocument document, DxfBlock block, boolean inParts) {
        this(document, block, inParts, standard());
    }

    /** Layers of our own names, in order of work. */
    private static Map<Layer, DxfLayer> standard() {
        Map<Layer, DxfLayer> layers = new LinkedHashMap<>();
        for (Layer layer : IN_ORDER_OF_WORK) {
            int weight = (int) Math.round(layer.pen() * 100);
            layers.put(layer, new DxfLayer(layer.name(), layer.colourIndex(), name(layer.style()), weight));
        }
        return layers;
    }

    /**
     * The sheet as a DXF file with these layers, in their order, and no others.
     *
     * @param inParts whether paths are single lines and arcs
     */
    public static byte[] bytes(Sheet sheet, Map<Layer, DxfLayer> layers, DxfVersion version, boolean inParts) {
        DxfDocument document = new DxfDocument(version);
        try {
            sheet.drawOn(new DxfBackend(document, document.model(), inParts, new LinkedHashMap<>(layers)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return document.toBytes();
    }

    /** The sheet as a DXF file in R2000. */
    public static byte[] bytes(Sheet sheet) {
        return bytes(sheet, Optional.empty(), DxfVersion.R2000);
    }

    /** The sheet as a DXF file, with a sheet of paper to print it on. R12 files have no paper, its words stand in the drawing too. */
    public static byte[] bytes(Sheet sheet, Optional<PaperSheet> paper, DxfVersion version) {
        return bytes(sheet, paper, version, false);
    }

    /**
     * The sheet as a DXF file.
     *
     * @param inParts whether paths are single lines and arcs, for programs that read no polylines or no arcs in them
     */
    public static byte[] bytes(Sheet sheet, Optional<PaperSheet> paper, DxfVersion version, boolean inParts) {
        DxfDocument document = new DxfDocument(version);
        try {
            sheet.drawOn(new DxfBackend(document, document.model(), inParts));
            if (paper.isPresent() && version != DxfVersion.R12) {
                drawPaper(document, paper.get());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return document.toBytes();
    }

    private static void drawPaper(DxfDocument document, PaperSheet paper) throws IOException {
        DxfBackend backend =
                new DxfBackend(document, document.paper(paper.name(), paper.width(), paper.height()), false);
        Extent w = paper.window();
        // The layer's line is the frame of the window, so it needs none drawn.
        document.view(
                Layer.TITLE.name(),
                w.minX(),
                w.minY(),
                w.maxX(),
                w.maxY(),
                paper.middle().x(),
                paper.middle().y(),
                paper.scale());
        paper.marks().drawMarksOn(backend);
    }

    @Override
    public List<Layer> order() {
        return List.copyOf(layers.keySet());
    }

    @Override
    public void begin(String title, Extent extent) {
        for (LineStyle style : LineStyle.values()) {
            document.lineType(new DxfLineType(name(style), "", style.dashes()));
        }
        layers.values().forEach(document::layer);
        document.extent(extent.minX(), extent.minY(), extent.maxX(), extent.maxY());
        document.lineTypeScale(extent.mmPerPaperMm());
    }

    @Override
    public void notes(List<String> lines) {
        notes = lines;
        block.notes(lines);
    }

    @Override
    public void segment(Layer layer, Segment s) {
        block.line(name(layer), s.a().x(), s.a().y(), s.b().x(), s.b().y());
    }

    @Override
    public void arc(Layer layer, Arc arc) {
        if (Math.abs(arc.sweep()) == 360) {
            circle(layer, new Circle(arc.centre(), arc.radius()));
            return;
        }
        double from = Math.min(arc.startAngle(), arc.startAngle() + arc.sweep());
        double to = Math.max(arc.startAngle(), arc.startAngle() + arc.sweep());
        block.arc(name(layer), arc.centre().x(), arc.centre().y(), arc.radius(), from, to);
    }

    @Override
    public void circle(Layer layer, Circle c) {
        block.circle(name(layer), c.centre().x(), c.centre().y(), c.radius());
    }

    @Override
    public void path(Layer layer, Path path) throws IOException {
        if (inParts) {
            for (Shape part : path.parts()) {
                block.notes(notes.isEmpty() ? notes : partNotes());
                part.drawOn(this, layer);
            }
            return;
        }
        List<DxfVertex> vertices = path.vertices().stream()
                .map(v -> new DxfVertex(v.x(), v.y(), v.bulge()))
                .toList();
        block.polyline(name(layer), vertices, path.closed());
    }

    /** Each part says that it is one, so that a reader puts them together again. */
    private List<String> partNotes() {
        List<String> all = new ArrayList<>(notes);
        all.add("part=yes");
        return all;
    }

    @Override
    public void arrow(Layer layer, Arrow arrow) {
        List<Point> c = arrow.corners();
        block.triangle(
                name(layer),
                c.get(0).x(),
                c.get(0).y(),
                c.get(1).x(),
                c.get(1).y(),
                c.get(2).x(),
                c.get(2).y());
    }

    @Override
    public void text(Layer layer, Text t) {
        block.text(
                name(layer),
                t.at().x(),
                t.at().y(),
                t.height(),
                t.angle(),
                t.anchor().column(),
                t.anchor().row(),
                t.string());
    }

    @Override
    public void paragraph(Layer layer, Paragraph p) {
        // Width 0: no program may break the lines anew.
        block.multiLineText(name(layer), p.at().x(), p.at().y(), p.height(), 0, p.lines());
    }

    @Override
    public void dimension(Layer layer, Dimension d) throws IOException {
        DxfBlock drawing = block;
        block = drawing.dimension(name(layer), entity(d));
        for (Shape part : d.parts()) {
            part.drawOn(this, layer);
        }
        block = drawing;
    }

    @Override
    public void end() {
        // The document is complete as it is.
    }

    private static DxfDimension entity(Dimension d) {
        Text label = d.label();
        Point middle = label.at().polar(label.height() / 2, label.angle() + 90);
        Point line = d.lineEnd();
        return new DxfDimension(
                d.a().x(),
                d.a().y(),
                d.b().x(),
                d.b().y(),
                line.x(),
                line.y(),
                middle.x(),
                middle.y(),
                d.angle(),
                d.height(),
                d.text(),
                d.textMoved());
    }

    private String name(Layer layer) {
        return layers.get(layer).name();
    }

    /** The name of a style of lines in the file. */
    public static String name(LineStyle style) {
        // Names without underscore: some programs know DASHED and DASHDOT by name only and draw their own.
        return style == LineStyle.CONTINUOUS ? "Continuous" : style.name().replace("_", "");
    }
}
