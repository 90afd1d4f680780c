package org.runbend.export.pdf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.runbend.export.drawing.Sheet;

/** Writes a document from top to bottom, frame by frame, and opens pages as it needs them. */
public final class PdfFlow {
    private static final double COMPACT_SIZE = 7.2;
    private static final double CAUTION_SPACE = 3.4;
    /** What follows a caution stands on its page at least this far, mm. */
    private static final double AFTER_CAUTION = 8;

    private static final double PARAGRAPH_SPACE = 1.2;
    private static final double CAUTION_BAR = 1.4;
    /** What a heading needs with the beginning of what follows it, mm. */
    private static final double BEGUN = 25;

    private static final double BEGUN_COMPACT = 16;

    private final PdfDocument document;
    private final Deque<Box> frames = new ArrayDeque<>();
    private PageFormat format;
    private PdfPage page;
    private Box frame;
    private double y;
    private boolean compact;
    private PDOutlineItem chapter;
    private PdfPart section;
    private PdfPart list;
    /** A heading that is written with what follows it. */
    private Optional<String> pending = Optional.empty();
    /** Cautions and words under that heading, written with it. */
    private final List<Lead> leads = new ArrayList<>();

    private record Lead(String text, boolean isCaution) {}

    /** Starts on a new page of the document. */
    public PdfFlow(PdfDocument document) {
        this.document = document;
        format = document.format();
        pageBreak();
    }

    /** Fills places on a page one after the other, at least one; what has no room there goes to new pages. */
    public PdfFlow(PdfDocument document, PdfPage page, List<Box> places) {
        this.document = document;
        this.page = page;
        format = page.format();
        frames.addAll(places);
        enter(frames.remove());
    }

    /** From here on smaller letters and tighter rows. */
    public PdfFlow compact() {
        compact = true;
        return this;
    }

    /** The name of the paper. */
    public PdfFlow title(String text) {
        chapter = document.bookmark(null, text, page, y);
        section = document.structure().whole().part(PdfRole.SECTION);
        lines(PdfRole.TITLE, text, TextStyle.TITLE);
        return space(1.5);
    }

    /** A heading, written together with what follows. */
    public PdfFlow heading(String text) {
        settle(0);
        pending = Optional.of(text);
        return this;
    }

    /** Writes the heading that waits, on a page where {@code following} mm have room under it. */
    private void settle(double following) {
        if (pending.isEmpty()) {
            return;
        }
        String text = pending.get();
        pending = Optional.empty();
        List<Lead> under = List.copyOf(leads);
        leads.clear();
        double leading = under.stream().mapToDouble(this::height).sum();
        TextStyle style = compact ? body().sized(8.5).bold() : TextStyle.HEADING;
        double before = compact ? 1.5 : 4;
        double after = compact ? 0.5 : 1;
        double own = before + document.wrap(text, style, width()).size() * style.pitch() + after;
        keep(Math.max(
                compact ? BEGUN_COMPACT : BEGUN,
                Math.min(
                        own + leading + (under.isEmpty() ? following : Math.max(following, AFTER_CAUTION)),
                        frame.height())));
        if (y < top()) {
            space(before);
        }
        document.bookmark(chapter, text, page, y);
        section = document.structure().whole().part(PdfRole.SECTION);
        lines(PdfRole.HEADING, text, style);
        space(after);
        for (Lead lead : under) {
            if (lead.isCaution()) {
                caution(lead.text());
            } else {
                paragraph(lead.text());
            }
        }
    }

    private double height(Lead lead) {
        return lead.isCaution()
                ? cautionLines(lead.text()).size() * body().pitch() + CAUTION_SPACE
                : document.wrap(lead.text(), body(), width()).size() * body().pitch() + PARAGRAPH_SPACE;
    }

    /** Words under a heading that lead to what follows; they are not parted from it. */
    public PdfFlow lead(String text) {
        if (pending.isEmpty()) {
            return paragraph(text);
        }
        leads.add(new Lead(text, false));
        return this;
    }

    /** Running text; line breaks in it are kept. */
    public PdfFlow paragraph(String text) {
        return paragraph(text, body());
    }

    /** Running text in another style. */
    public PdfFlow paragraph(String text, TextStyle style) {
        lines(PdfRole.PARAGRAPH, text, style);
        return space(PARAGRAPH_SPACE);
    }

    /** An item of a list behind a mark such as a number or a box to tick; {@code indent} is the room for it, mm. */
    public PdfFlow item(String mark, double indent, String text) {
        TextStyle style = body();
        List<String> lines = document.wrap(text, style, width() - indent);
        keep(Math.min(lines.size(), compact ? 6 : 3) * style.pitch());
        PdfPart listed = list == null ? section().part(PdfRole.LIST) : list;
        PdfPart item = listed.part(PdfRole.ITEM);
        PdfPart before = document.structure().enter(item.part(PdfRole.MARK));
        page.text(left(), y - style.ascent(), style, Align.LEFT, mark);
        document.structure().enter(item.part(PdfRole.WORDS));
        for (String line : lines) {
            keep(style.pitch());
            page.text(left() + indent, y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
        document.structure().enter(before);
        list = listed;
        return space(0.8);
    }

    /** A caution: bold, behind a bar that nobody overlooks, before the step that it belongs to. */
    public PdfFlow caution(String text) {
        if (pending.isPresent()) {
            leads.add(new Lead(text, true));
            return this;
        }
        TextStyle style = body().bold();
        double indent = CAUTION_BAR * 3;
        List<String> lines = cautionLines(text);
        double height = lines.size() * style.pitch() + 1;
        keep(height + AFTER_CAUTION);
        page.fill(new Box(left(), y - height, CAUTION_BAR, height), TextStyle.BODY.colour());
        y -= 0.5;
        list = null;
        enter(PdfRole.PARAGRAPH, null);
        for (String line : lines) {
            page.text(left() + indent, y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
        leave();
        y -= 0.5;
        return space(CAUTION_SPACE - 2);
    }

    private List<String> cautionLines(String text) {
        return document.wrap(text, body().bold(), width() - CAUTION_BAR * 3);
    }

    /** A table over the whole width. */
    public PdfFlow table(PdfTable table) {
        boolean headed = pending.isPresent();
        if (!headed && y < top()) {
            space(1);
        }
        list = null;
        new TablePrinter(this, table).print(headed ? 1 : 0);
        return space(compact ? 1.5 : 3);
    }

    /** A drawing over the whole width, fitted into {@code height} mm; the next page is used when there is no room. */
    public PdfFlow drawing(Sheet sheet, double height) {
        double used = Math.min(height, format.inside().height());
        figure("Drawing: " + sheet.title(), used, (on, box) -> on.sheet(sheet, box));
        return space(2);
    }

    /** A drawing at a scale of so many drawing mm to a mm of paper, in the middle of the width; the next page is used when there is no room. */
    public PdfFlow scaled(Sheet sheet, double scale) {
        double high = sheet.extent().height() / scale + 2;
        figure(
                "Drawing: " + sheet.title(),
                high,
                (on, box) -> on.sheet(sheet, box, Placement.scaled(sheet.extent(), box, 1 / scale)));
        return space(1.5);
    }

    /** Goes to a new page of another format, in which the next ones are too. */
    public PdfFlow page(PageFormat other) {
        settle(0);
        frames.clear();
        format = other;
        return pageBreak();
    }

    /** Something drawn by hand over the whole width; {@code words} say what it shows. */
    public PdfFlow figure(String words, double height, BiConsumer<PdfPage, Box> drawing) {
        keep(height);
        list = null;
        PdfPart before =
                document.structure().enter(section().part(PdfRole.FIGURE).describe(words));
        drawing.accept(page, new Box(left(), y - height, width(), height));
        document.structure().enter(before);
        y -= height;
        return this;
    }

    /** Leaves {@code mm} free; at the foot of a page nothing. */
    public PdfFlow space(double mm) {
        settle(0);
        y = Math.max(bottom(), y - mm);
        return this;
    }

    /** Goes to a new page unless {@code mm} are left on this one. */
    public PdfFlow keep(double mm) {
        settle(mm);
        if (room() < mm && y < top()) {
            pageBreak();
        }
        return this;
    }

    /** Goes to the next free place on the page, or to a new page. */
    public PdfFlow pageBreak() {
        settle(0);
        if (frames.isEmpty()) {
            page = document.addPage(format);
            enter(format.inside());
        } else {
            enter(frames.remove());
        }
        return this;
    }

    /** Goes to the next free place on the page if there is one. */
    public PdfFlow nextPlace() {
        settle(0);
        return frames.isEmpty() ? this : pageBreak();
    }

    private void enter(Box place) {
        frame = place;
        y = top();
    }

    /** The page written on. */
    public PdfPage page() {
        settle(0);
        return page;
    }

    /** Where the next thing begins, mm from the foot of the page. */
    public double y() {
        settle(0);
        return y;
    }

    /** Left edge, mm. */
    public double left() {
        return frame.x();
    }

    /** Width between the margins, mm. */
    public double width() {
        return frame.width();
    }

    /** What is left of the page, mm. */
    public double room() {
        settle(0);
        return y - bottom();
    }

    /** How running text and tables look. */
    TextStyle body() {
        return compact ? TextStyle.BODY.sized(COMPACT_SIZE) : TextStyle.BODY;
    }

    /** Room between the letters of a cell and its rim, mm. */
    double pad() {
        return compact ? 0.55 : 1.3;
    }

    void down(double mm) {
        y -= mm;
    }

    List<String> wrap(String text, TextStyle style, double room) {
        return document.wrap(text, style, room);
    }

    double widthOf(String text, TextStyle style) {
        return document.width(text, style);
    }

    /** The part that is being written. */
    private PdfPart section() {
        if (section == null) {
            section = document.structure().whole().part(PdfRole.SECTION);
        }
        return section;
    }

    /** Begins a part within the one being written; what is drawn belongs to it until {@link #leave}. */
    PdfPart enter(PdfRole role, PdfPart under) {
        PdfPart part = (under == null ? section() : under).part(role);
        document.structure().enter(part);
        return part;
    }

    /** What is drawn now is read by nobody, such as a rule. */
    void leave() {
        document.structure().enter(null);
    }

    private void lines(PdfRole role, String text, TextStyle style) {
        settle(style.pitch());
        list = null;
        enter(role, null);
        for (String line : document.wrap(text, style, width())) {
            keep(style.pitch());
            page.text(left(), y - style.ascent(), style, Align.LEFT, line);
            y -= style.pitch();
        }
        leave();
    }

    private double top() {
        return frame.y() + frame.height();
    }

    private double bottom() {
        return frame.y();
    }
}
