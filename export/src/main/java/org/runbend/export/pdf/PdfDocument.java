package org.runbend.export.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * A PDF document, tagged, with bookmarks, and in the form of ISO 19005-2 (level B). No clock and no random id: equal calls
 * give equal bytes. Written once by {@link #toBytes()}. A footer and "page x of y" stand at the foot of every page that has
 * a margin.
 */
public final class PdfDocument implements AutoCloseable {
    private static final long DOCUMENT_ID = 0x72756E62656E64L;

    private final PDDocument document = new PDDocument();
    private final PdfFonts fonts = new PdfFonts(document);
    private final PageFormat format;
    private final List<PdfPage> pages = new ArrayList<>();
    private final List<PDPageContentStream> streams = new ArrayList<>();
    private final PdfStructure structure = new PdfStructure();
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private final String title;
    private final String language;
    private String footer = "";
    private String warning = "";

    /** An empty document; {@code language} is a tag such as {@code en}. */
    public PdfDocument(String title, String language, PageFormat format) {
        this.format = format;
        this.title = fonts.showable(title, false);
        this.language = language;
        document.setDocumentId(DOCUMENT_ID);
        document.getDocumentInformation().setTitle(this.title);
        document.getDocumentCatalog().setLanguage(language);
        PDViewerPreferences viewer = new PDViewerPreferences(new COSDictionary());
        viewer.setDisplayDocTitle(true);
        viewer.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        document.getDocumentCatalog().setViewerPreferences(viewer);
    }

    /** What stands at the foot of every page, left of the page number. */
    public PdfDocument footer(String text) {
        footer = text;
        return this;
    }

    /** A new page of the document's format. */
    public PdfPage addPage() {
        return addPage(format);
    }

    /** A new page of another format. */
    public PdfPage addPage(PageFormat other) {
        PDPage page = new PDPage(new PDRectangle(points(other.width()), points(other.height())));
        document.addPage(page);
        try {
            PDPageContentStream stream = new PDPageContentStream(document, page);
            streams.add(stream);
            PdfPage added = new PdfPage(other, page, stream, fonts, structure);
            pages.add(added);
            return added;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The pages so far. */
    public List<PdfPage> pages() {
        return List.copyOf(pages);
    }

    /** The format of pages that are not told another. */
    public PageFormat format() {
        return format;
    }

    /** The logical structure. */
    PdfStructure structure() {
        return structure;
    }

    /** A bookmark that leads to a place on a page; {@code under} is the one it stands under, or null. */
    PDOutlineItem bookmark(PDOutlineItem under, String words, PdfPage page, double y) {
        PDPageXYZDestination place = new PDPageXYZDestination();
        place.setPage(page.page());
        place.setLeft(0);
        place.setTop(Math.round(points(y)));
        PDOutlineItem item = new PDOutlineItem();
        item.setTitle(fonts.showable(words, true));
        item.setDestination(place);
        if (under == null) {
            outline.addLast(item);
        } else {
            under.addLast(item);
        }
        return item;
    }

    /** Length of a line of letters, mm. */
    public double width(String text, TextStyle style) {
        return fonts.width(text, style);
    }

    /** Breaks a text into lines of at most {@code room} mm. */
    public List<String> wrap(String text, TextStyle style, double room) {
        return fonts.wrap(text, style, room);
    }

    /** Writes the footers, where pages have a margin, and ends the document. An empty document gets one empty page. */
    public byte[] toBytes() {
        if (pages.isEmpty()) {
            addPage();
        }
        structure.setAside();
        writeFooters();
        try {
            for (PDPageContentStream stream : streams) {
                stream.close();
            }
            structure.close(document);
            ArchiveForm.apply(document, title, language);
            if (outline.hasChildren()) {
                document.getDocumentCatalog().setDocumentOutline(outline);
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            document.close();
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Frees what an unfinished document holds; harmless after {@link #toBytes()}. */
    @Override
    public void close() {
        try {
            document.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Words that stand over every page, in letters that nobody overlooks; none by default. */
    public PdfDocument warning(String words) {
        warning = words;
        return this;
    }

    private void writeFooters() {
        for (int i = 0; i < pages.size(); i++) {
            PdfPage page = pages.get(i);
            if (page.format().margin() <= 0) {
                continue;
            }
            Box inside = page.format().inside();
            if (!warning.isEmpty()) {
                TextStyle loud = TextStyle.TITLE.sized(12);
                page.text(
                        inside.x() + inside.width() / 2, inside.y() + inside.height() + 2, loud, Align.CENTRE, warning);
            }
            double y = Math.max(4, page.format().margin() - 7);
            String number = String.format(Locale.ROOT, "page %d of %d", i + 1, pages.size());
            page.text(inside.x() + inside.width(), y, TextStyle.SMALL, Align.RIGHT, number);
            double room = inside.width() - width(number, TextStyle.SMALL) - 5;
            footer(page, y, wrap(footer, TextStyle.SMALL, room));
        }
    }

    /** Up to two lines over the foot of the page; what has no room in them is said to be there. */
    private static void footer(PdfPage page, double y, List<String> lines) {
        double x = page.format().inside().x();
        if (lines.size() == 1) {
            page.text(x, y, TextStyle.SMALL, Align.LEFT, lines.get(0));
            return;
        }
        page.text(x, y + TextStyle.SMALL.pitch(), TextStyle.SMALL, Align.LEFT, lines.get(0));
        page.text(x, y, TextStyle.SMALL, Align.LEFT, lines.get(1) + (lines.size() > 2 ? " \u2026" : ""));
    }

    private static float points(double mm) {
        return (float) (mm * 72 / 25.4);
    }
}
