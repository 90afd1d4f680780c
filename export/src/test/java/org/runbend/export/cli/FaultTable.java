package org.runbend.export.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.runbend.export.folder.OutputFolder;
import org.runbend.export.folder.TrialKit;

/** The table of faults beside the tests, {@code faults.md}, and how its cases are laid out on the disk. */
public final class FaultTable {
    private static final List<String> FILES = List.of("job.yaml", "shop.yaml", "shelf.yaml", "base.yaml", "list.yaml");
    private static final Pattern REPEATED = Pattern.compile("«(\\d+)×([^»]*)»");

    /** An escape, or text up to the next one. */
    private static final Pattern PART =
            Pattern.compile("\\\\(n|r|t|e|\\\\|x[0-9A-F]{2}|u[0-9A-F]{4})|\\\\|[^\\\\]+", Pattern.DOTALL);

    private FaultTable() {}

    /**
     * A row.
     *
     * @param name what is wrong
     * @param file the file that is spoilt, or {@code out} for the output folder
     * @param written what is replaced in it; empty for the whole file
     * @param instead what stands there instead, or in parentheses what is made in its place
     * @param lines the whole lines that {@code check} says, without the folder's name
     */
    record Row(String name, String file, String written, String instead, List<String> lines) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** All rows of the table. */
    static List<Row> rows() throws IOException {
        List<Row> rows = new ArrayList<>();
        for (String line : resource("faults.md").lines().toList()) {
            List<String> cells = Stream.of(line.split("(?<!\\\\)\\|", -1))
                    .map(c -> c.strip().replace("\\|", "|"))
                    .toList();
            if (cells.size() == 7 && cells.get(5).startsWith("`")) {
                List<String> lines = Stream.of(cells.get(5).split("<br>", -1))
                        .map(FaultTable::bare)
                        .toList();
                rows.add(new Row(cells.get(1), cells.get(2), bare(cells.get(3)), bare(cells.get(4)), lines));
            }
        }
        return rows;
    }

    private static String bare(String cell) {
        return cell.startsWith("`") ? cell.substring(1, cell.length() - 1) : cell;
    }

    private static String resource(String name) throws IOException {
        try (InputStream in = FaultTable.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), UTF_8);
        }
    }

    /** Lays a good job with all its files into a folder. */
    public static void layGood(Path folder) throws IOException {
        for (String file : FILES) {
            Files.writeString(folder.resolve(file), resource("faults/" + file));
        }
    }

    /** Lays a good job and spoils it as the row says. */
    static void lay(Row row, Path folder) throws IOException {
        layGood(folder);
        Path file = folder.resolve(row.file());
        if (row.instead().startsWith("(")) {
            Files.deleteIfExists(file);
            make(row.instead(), file);
            return;
        }
        String text = row.written().isEmpty() ? "" : Files.readString(file);
        byte[] what = bytes(row.written());
        String with = new String(bytes(row.instead()), ISO_8859_1);
        String whole = new String(text.getBytes(UTF_8), ISO_8859_1);
        String old = new String(what, ISO_8859_1);
        if (!whole.contains(old)) {
            throw new IllegalStateException(row + ": the good file holds no " + row.written());
        }
        String spoilt = old.isEmpty() ? with : whole.replace(old, with);
        Files.write(file, spoilt.getBytes(ISO_8859_1));
    }

    private static void make(String what, Path file) throws IOException {
        switch (what) {
            case "(nothing)" -> {}
            case "(file)" -> Files.writeString(file, "mine");
            case "(folder)" -> Files.createDirectory(file);
            case "(empty)" -> Files.createFile(file);
            case "(foreign folder)" ->
                Files.writeString(Files.createDirectory(file).resolve("letter.txt"), "mine");
            case "(link to itself)" -> Files.createSymbolicLink(file, file);
            case "(link to nothing)" -> Files.createSymbolicLink(file, file.resolveSibling("gone"));
            case "(link to a file)" ->
                Files.createSymbolicLink(file, Files.writeString(file.resolveSibling("letter.txt"), "mine"));
            case "(named pipe)" -> pipe(file);
            case "(link to /dev/zero)" -> Files.createSymbolicLink(file, Path.of("/dev/zero"));
            case "(foreign kit.json)" ->
                Files.writeString(Files.createDirectory(file).resolve("kit.json"), "{\"name\": \"letters\"}");
            case "(kit with a file in the way)" -> {
                new OutputFolder(file).write(TrialKit.files("old", "cuts.csv"));
                Files.writeString(file.resolve("drawing.dxf"), "mine");
            }
            case "(kit with a folder in the way)" -> {
                new OutputFolder(file).write(TrialKit.files("old", "cuts.csv"));
                Files.createDirectory(file.resolve("drawing.dxf"));
            }
            case "(50 MB)" ->
                Files.write(file, "job: x\n".repeat(50_000_000 / 7).getBytes(UTF_8));
            default -> throw new IllegalStateException("nobody knows how to make " + what);
        }
    }

    private static void pipe(Path file) throws IOException {
        try {
            if (new ProcessBuilder("mkfifo", file.toString()).start().waitFor() != 0) {
                throw new IOException("mkfifo failed");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }

    /** Text with repetitions such as «200×[» and with the escapes n, r, t, e, xNN (a byte) and uNNNN (a UTF-16 unit). */
    private static byte[] bytes(String text) {
        Matcher m = REPEATED.matcher(text);
        String all = m.replaceAll(r -> Matcher.quoteReplacement(r.group(2).repeat(Integer.parseInt(r.group(1)))));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Matcher part = PART.matcher(all);
        while (part.find()) {
            out.writeBytes(part.group(1) == null ? part.group().getBytes(UTF_8) : escaped(part.group(1)));
        }
        return out.toByteArray();
    }

    private static byte[] escaped(String code) {
        return switch (code.charAt(0)) {
            case 'n' -> new byte[] {'\n'};
            case 'r' -> new byte[] {'\r'};
            case 't' -> new byte[] {'\t'};
            case 'e' -> new byte[] {0x1B};
            case '\\' -> new byte[] {'\\'};
            case 'x' -> new byte[] {(byte) Integer.parseInt(code.substring(1), 16)};
            default ->
                String.valueOf((char) Integer.parseInt(code.substring(1), 16)).getBytes(UTF_8);
        };
    }
}
