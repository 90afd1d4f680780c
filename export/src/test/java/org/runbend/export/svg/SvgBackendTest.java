package org.runbend.export.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.OutsideReader;
import org.runbend.export.drawing.Anchor;
import org.runbend.export.drawing.DemoSheet;
import org.runbend.export.drawing.Layer;
import org.runbend.export.drawing.Point;
import org.runbend.export.drawing.SheetBuilder;
import org.runbend.export.drawing.Text;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SvgBackendTest {
    @TempDir
    Path folder;

    /** Read with the JDK's XML parser: one group a layer, in the order of painting. */
    @Test
    void oneGroupALayer() throws Exception {
        NodeList groups = parsed(SvgBackend.bytes(DemoSheet.sheet())).getElementsByTagName("g");
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < groups.getLength(); i++) {
            ids.add(((Element) groups.item(i)).getAttribute("id"));
        }
        assertEquals(
                List.of(
                        "FLOOR",
                        "UNHEATED",
                        "PLATE",
                        "KEEP_OUT",
                        "CHANNEL",
                        "PIPE",
                        "SENSOR",
                        "SCREW",
                        "DIMENSION",
                        "NOTE",
                        "TITLE"),
                ids);
    }

    /** y is turned: anticlockwise (positive) quarter arcs go with sweep flag 0; by hand from the demo pipe. */
    @Test
    void arcsAreArcs() {
        String svg = SvgBackend.svg(DemoSheet.sheet());
        assertTrue(
                svg.contains("M0 -75L750 -75A75 75 0 0 0 825 -150A75 75 0 0 0 750 -225L225 -225A75 75 0 0 1 225 -375"));
    }

    @Test
    void hostileTextStaysText() throws Exception {
        String hostile = "</title><script>alert(1)</script>\u0000\uD800\uFFFE\"'&";
        SheetBuilder sheet = new SheetBuilder(hostile);
        sheet.add(Layer.NOTE, Text.level(new Point(0, 0), 10, Anchor.BOTTOM_LEFT, hostile));
        Document document = parsed(SvgBackend.bytes(sheet.build()));
        assertEquals(0, document.getElementsByTagName("script").getLength());
        assertEquals(
                "</title><script>alert(1)</script> \"'&",
                document.getElementsByTagName("text").item(0).getTextContent());
    }

    /** The demo's box is drawn in true size: width in mm and width of the view are the same number. */
    @Test
    void trueSize() throws Exception {
        Element root = parsed(SvgBackend.bytes(DemoSheet.sheet())).getDocumentElement();
        String[] view = root.getAttribute("viewBox").split(" ", -1);
        assertEquals(view[2] + "mm", root.getAttribute("width"));
        assertEquals(view[3] + "mm", root.getAttribute("height"));
    }

    @Test
    void librsvgDrawsIt() throws IOException {
        Path svg = Files.write(folder.resolve("demo.svg"), SvgBackend.bytes(DemoSheet.sheet()));
        Path png = folder.resolve("demo.png");
        OutsideReader.run("rsvg-convert", "-w", "800", "-o", png.toString(), svg.toString());
        assertTrue(Files.size(png) > 5000);
    }

    private static Document parsed(byte[] svg) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg));
    }
}
