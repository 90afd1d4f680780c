package org.runbend.export.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.runbend.export.CommandRun;
import org.runbend.export.OutsideReader;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Whatever people write into titles and names does no harm in any file of the kit, nor on the terminal. */
class HarmlessTextTest {
    private static final String LONG = "Word ".repeat(100).strip();

    /** Four scripts, accents put together, a lorry, a turn of direction, markup, control codes of CAD and of terminals. */
    private static final String ODD = "\u0623\u0631\u0636\u064A\u0629 \u4E8C\u0308 \uD83D\uDE90 \u202Egnp.\u202C"
            + " <script>alert('1')</script> & %%d %%%%c \\\\U+0041 \\\\P ^J {x} \\e[2J \\\"a: b # c\\\"";

    @TempDir
    Path folder;

    private Path kit;
    private CommandRun run;

    @BeforeEach
    void plan() throws IOException {
        FaultTable.layGood(folder);
        Path job = folder.resolve("job.yaml");
        Files.writeString(
                job,
                Files.readString(job)
                        .replace(
                                "job: Trial floor",
                                "job: " + LONG + "\ncustomer: \"" + ODD + "\"\ndate: " + "W".repeat(500))
                        .replace("order: T-1", "order: \"=1+1\\r\\nT\"")
                        .replace("text: door", "text: " + LONG)
                        .replace("name: post", "name: \"" + "K".repeat(500) + "\"")
                        .replace("name: locker", "name: \"" + ODD + "\""));
        Path shelf = folder.resolve("shelf.yaml");
        Files.writeString(
                shelf,
                Files.readString(shelf)
                        .replace("length: 430", "length: 560")
                        .replace("O3", "\"=HYPERLINK(1,2)\"")
                        .replace("C7", "\"\uFF1D1+1\""));
        kit = folder.resolve("kit");
        run = CommandRun.of("plan", job.toString(), "--shelf", shelf.toString(), "--out", kit.toString());
        assertEquals(0, run.code(), run::err);
    }

    @Test
    void drawingInSvgIsMarkupOfOursOnly() throws Exception {
        byte[] bytes = Files.readAllBytes(kit.resolve("floor.svg"));
        Document svg = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(bytes));
        assertEquals(0, svg.getElementsByTagName("script").getLength());
        String text = new String(bytes, UTF_8);
        assertTrue(text.contains("&lt;script&gt;alert(&#39;1&#39;)&lt;/script&gt;"));
        assertTrue(text.codePoints().noneMatch(c -> c == 0x202E || c == 0x1B));
        String[] box = svg.getDocumentElement().getAttribute("viewBox").split(" ", -1);
        assertTrue(Double.parseDouble(box[2]) < 3 * 1200, "width of the sheet, of a floor of 1200: " + box[2]);
        NodeList texts = svg.getElementsByTagName("text");
        for (int i = 0; i < texts.getLength(); i++) {
            assertTrue(texts.item(i).getTextContent().length() <= 80, texts.item(i)::getTextContent);
        }
    }

    /** ezdxf finds nothing to mend and reads the letters back; what CAD takes for a command is shown by its neighbours. */
    @Test
    void drawingInDxfIsReadBack() throws IOException {
        List<String> facts = OutsideReader.ezdxf(kit.resolve("drawing.dxf"));
        assertTrue(facts.containsAll(List.of("errors 0", "fixes 0")), facts::toString);
        String texts = String.join(
                "\n", facts.stream().filter(f -> f.startsWith("text")).toList());
        assertTrue(texts.contains("\\u0623\\u0631\\u0636\\u064a\\u0629 \\u4e8c\\u0308"), texts);
        assertTrue(texts.contains("<script>alert("), texts);
        assertFalse(texts.contains("%%"), texts);
        assertFalse(texts.contains("\\u202e"), texts);
        assertTrue(texts.contains("/U+0041"), texts);
    }

    @Test
    void paperIsReadBack() throws IOException {
        String file = kit.resolve("pick-list.pdf").toString();
        assertTrue(OutsideReader.run("qpdf", "--check", file).contains("No syntax or stream encoding errors found"));
        String text = OutsideReader.run("pdftotext", file, "-").replaceAll("\\s+", " ");
        assertTrue(text.contains("<script>alert('1')</script> & %%d %%%%c \\U+0041 \\P ^J {x}"), text);
        assertTrue(text.contains(LONG), text);
    }

    /** JSON says what was written, to the letter. */
    @Test
    void dataSaysWhatWasWritten() throws IOException {
        Path script = Files.write(
                folder.resolve("read.py"),
                List.of(
                        "import json, sys",
                        "k = json.load(open(sys.argv[1], encoding='utf-8'))",
                        "print(ascii([k['job'], k['order'], k['customer'], len(k['date'])]))"));
        String read = OutsideReader.python(
                        script, List.of("json"), kit.resolve("kit.json").toString())
                .strip();
        assertEquals(
                "['" + LONG
                        + "', '=1+1\\r\\nT', '\\u0623\\u0631\\u0636\\u064a\\u0629 \\u4e8c\\u0308 \\U0001f690 \\u202egnp.\\u202c"
                        + " <script>alert(\\'1\\')</script> & %%d %%%%c \\\\U+0041 \\\\P ^J {x} \\x1b[2J \"a: b # c\"', 500]",
                read);
    }

    @Test
    void tableHoldsNoFormula() throws IOException {
        String cuts = Files.readString(kit.resolve("cuts.csv"));
        assertTrue(cuts.contains("pipe,'\uFF1D1+1,P-16,18250,"), cuts);
        assertTrue(cuts.contains("plate,\"'=HYPERLINK(1,2)\",S-1,560,"), cuts);
    }

    @Test
    void terminalGetsNoControlLetters() {
        CommandRun loop = CommandRun.of(
                "loop",
                folder.resolve("job.yaml").toString(),
                "--svg",
                folder.resolve("loop.svg").toString());
        assertEquals(0, loop.code(), loop::err);
        assertTrue(loop.out().contains("=1+1 T"), loop::out);
        for (CommandRun each : List.of(run, loop)) {
            assertTrue((each.out() + each.err())
                    .codePoints()
                    .noneMatch(c -> c != '\n' && c != '\r' && (Character.isISOControl(c) || c == 0x202E)));
            assertEquals(-1, each.out().indexOf('\r'), "no carriage return takes a line back");
        }
    }
}
