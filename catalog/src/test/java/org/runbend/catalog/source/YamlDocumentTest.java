package org.runbend.catalog.source;

import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a file may hold, and the one line that is said if it holds something else. */
class YamlDocumentTest {
    @TempDir
    Path folder;

    private String fault(String text) throws IOException {
        return fault(text.getBytes(UTF_8));
    }

    private String fault(byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve("a.yaml"), bytes);
        BadInput bad = assertThrows(BadInput.class, () -> YamlDocument.open(SourceFile.read(file), new Faults()));
        return told(bad).get(0);
    }

    private List<String> told(BadInput bad) {
        return bad.faults().stream()
                .map(f -> f.text().replace(folder + java.io.File.separator, ""))
                .toList();
    }

    /** A letter outside the first plane, two units long, at each place about the ends of the parser's pieces of 1025. */
    @Test
    void lettersAcrossThePiecesOfTheParser() throws IOException {
        String text = "\uD83D\uDE00".repeat(3) + "end";
        for (int at : List.of(10, 1000, 1022, 1023, 1024, 1025, 1026, 2047, 2048, 2049, 2050, 3073, 3074, 3075)) {
            for (String line : List.of("a: " + text + "\n", "a:   \"" + text + "\"\n", "a: b # " + text + "\n")) {
                String before = "#" + "x".repeat(at - 2 - line.indexOf(text)) + "\n";
                String read = map(before + line, new Faults()).require("a", "").text();
                assertEquals(line.contains("a: b") ? "b" : text, read, "at " + at);
            }
        }
    }

    private YamlMap map(String text, Faults faults) throws IOException {
        Path file = Files.writeString(folder.resolve("a.yaml"), text);
        return YamlDocument.open(SourceFile.read(file), faults);
    }

    @Test
    void refusesWhatIsNoFile() throws IOException {
        Path none = folder.resolve("none.yaml");
        assertEquals(
                List.of("none.yaml: no such file"), told(assertThrows(BadInput.class, () -> SourceFile.read(none))));
        Path sub = Files.createDirectory(folder.resolve("sub"));
        assertEquals(
                List.of("sub: is a folder, a file is wanted"),
                told(assertThrows(BadInput.class, () -> SourceFile.read(sub))));
    }

    @Test
    void refusesWhatIsNoText() throws IOException {
        assertEquals("a.yaml: is empty", fault(""));
        assertEquals("a.yaml: is empty", fault("# nothing but a comment\n"));
        assertEquals("a.yaml: is empty", fault("\uFEFF"));
        assertEquals("a.yaml: holds NUL characters, a text file is wanted", fault("job: a\0b"));
        assertEquals("a.yaml: is not UTF-8 text", fault(new byte[] {'a', (byte) 0xC3, '('}));
        assertEquals("a.yaml: is UTF-16 text, save it as UTF-8", fault("\uFEFFjob: x".getBytes(UTF_16LE)));
        assertEquals("a.yaml: is larger than 2 MB", fault("a: 1\n".repeat(500_000)));
    }

    @Test
    void refusesWhatIsNotYaml() throws IOException {
        assertEquals(
                "a.yaml:2:1: not YAML: expected ',' or ']', but got <stream end>, begun in line 1",
                fault("a: [1, 2\n"));
        assertEquals("a.yaml:1:5: not YAML: mapping values are not allowed here", fault("a: b: c\n"));
        for (String escape : List.of("\\x", "\\u12", "\\uzzzz", "\\UFFFFFFFF")) {
            assertTrue(fault("a: \"" + escape + "\"\n").startsWith("a.yaml"), escape);
        }
        assertEquals(
                "a.yaml:1:1: found 'just words', a mapping of keys and values is wanted", faultOfRoot("just words"));
        assertEquals("a.yaml:1:1: found a list, a mapping of keys and values is wanted", faultOfRoot("- a\n- b\n"));
    }

    private String faultOfRoot(String text) throws IOException {
        Faults faults = new Faults();
        map(text, faults).require("a", "a text");
        return told(assertThrows(BadInput.class, faults::throwIfAny)).get(0);
    }

    @Test
    void refusesWhatCouldBlowUp() throws IOException {
        String aliases = "anchors and aliases (& and *) are not allowed; quote a text that begins so";
        assertEquals("a.yaml:1:4: " + aliases, fault("a: &x [1, 1]\nb: [*x, *x]\n"));
        assertEquals("a.yaml:1:4: " + aliases, fault("a: *x\n"));
        assertEquals(
                "a.yaml:1:4: tags (!) are not allowed; quote a text that begins so",
                fault("a: !!javax.script.ScriptEngineManager [1]\n"));
        assertEquals("a.yaml:2:1: a second document begins, one is wanted", fault("a: 1\n---\nb: 2\n"));
        assertEquals("a.yaml:1:23: nested deeper than 20 levels", fault("a: " + "[".repeat(100_000)));
    }

    @Test
    void takesByteOrderMarkAndWindowsLineEnds() throws IOException {
        Faults faults = new Faults();
        YamlMap map = map("\uFEFFjob: Grüße\r\norder: 7\r\n", faults);
        assertEquals("Grüße", map.require("job", "").text());
        assertEquals("7", map.require("order", "").text());
        faults.throwIfAny();
    }

    @Test
    void tellsEveryFaultOfAMapping() throws IOException {
        Faults faults = new Faults();
        YamlMap map = map("""
                lenght: 5
                share: 85
                part: {depth: abc, tall: '1,65m', wide: -3}
                part: {}
                kind: inn
                count: 2.5
                list: 7
                money: 1.234
                """, faults);
        map.require("length", "a length").length(0, 10);
        map.require("share", "a share").share(0, 1);
        YamlMap part = map.require("part", "a mapping").map();
        part.require("depth", "a length").length(0, 10);
        part.require("tall", "a length").length(0, 10);
        part.require("wide", "a length").length(0, 10);
        map.require("kind", "a unit").oneOf(Unit.class);
        map.require("count", "a number").whole(0, 5);
        map.require("list", "a list").list(0, 5, "a list of numbers");
        map.require("money", "an amount").money(2);
        assertEquals(true, map.make(() -> "made").isEmpty());
        assertEquals(
                List.of(
                        "a.yaml:1:1: length: is missing, a length is wanted",
                        "a.yaml:1:1: lenght: unknown key, the nearest known key is 'length'",
                        "a.yaml:2:8: share: found '85', a share with %, such as 85%, is wanted",
                        "a.yaml:3:15: part.depth: found 'abc', a length in mm is wanted",
                        "a.yaml:3:26: part.tall: found '1,65m', a length in mm with a decimal point, not a comma, is wanted",
                        "a.yaml:3:41: part.wide: found '-3', a length from 0 to 10 mm is wanted",
                        "a.yaml:4:1: part: key stands twice, first in line 3",
                        "a.yaml:5:7: kind: found 'inn', one of mm, in is wanted",
                        "a.yaml:6:8: count: found '2.5', a whole number is wanted",
                        "a.yaml:7:7: list: found '7', a list of numbers is wanted",
                        "a.yaml:8:8: money: found '1.234', an amount of at most 2 decimals and not over 1000000 is wanted"),
                told(assertThrows(BadInput.class, faults::throwIfAny)));
    }

    /** FIPS 180-4's example: SHA-256 of "abc", here from two files. */
    @Test
    void fingerprintIsTheDigestOfAllBytes() throws IOException {
        SourceFile a = SourceFile.read(Files.writeString(folder.resolve("1"), "ab"));
        SourceFile b = SourceFile.read(Files.writeString(folder.resolve("2"), "c"));
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                SourceFile.fingerprint(List.of(a, b)));
    }
}
