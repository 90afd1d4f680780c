package org.runbend.export.papers;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * What a page's own operators draw (ISO 32000-1, 8.5.2): ends of lines and curves, and rectangles. Our papers set no matrix for
 * paths, so operands are points of the page; here they are mm.
 */
record PdfMarks(List<double[]> ends, List<double[]> rectangles) {
    private static final double MM = 25.4 / 72;

    /** The marks of each page. */
    static List<PdfMarks> of(byte[] pdf) throws IOException {
        List<PdfMarks> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (PDPage page : document.getPages()) {
                pages.add(of(page));
            }
        }
        return pages;
    }

    private static PdfMarks of(PDPage page) throws IOException {
        PdfMarks marks = new PdfMarks(new ArrayList<>(), new ArrayList<>());
        List<Double> operands = new ArrayList<>();
        for (Object token : new PDFStreamParser(page).parse()) {
            if (token instanceof COSNumber number) {
                operands.add(number.floatValue() * MM);
            } else if (token instanceof Operator operator) {
                marks.add(operator.getName(), operands);
                operands.clear();
            }
        }
        return marks;
    }

    private void add(String operator, List<Double> o) {
        int n = o.size();
        switch (operator) {
            case "m", "l", "c" -> ends.add(new double[] {o.get(n - 2), o.get(n - 1)});
            case "re" -> rectangles.add(new double[] {o.get(0), o.get(1), o.get(2), o.get(3)});
            case "cm" -> throw new IllegalStateException("a matrix is set: operands are no longer places of the page");
            default -> {}
        }
    }

    /** How many rectangles have a width, to 0.2 mm. */
    long rectanglesOfWidth(double width) {
        return rectangles.stream().filter(r -> Math.abs(r[2] - width) < 0.2).count();
    }
}
