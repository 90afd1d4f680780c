package org.runbend.export.dxf.read;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.runbend.export.drawing.DemoSheet;
import org.runbend.export.dxf.DxfBackend;

/** Small drawings of our own, spoiled by the line and by the byte; the same number gives the same bytes. */
public final class DamagedDrawings {
    private static final List<String> ODD = List.of(
            "",
            "0",
            "-1",
            "1",
            "8",
            "10",
            "70",
            "90",
            "1e308",
            "-1e12",
            "NaN",
            "1,5",
            "2000000000",
            "99999999999",
            "INSERT",
            "BLOCK",
            "ENDBLK",
            "SECTION",
            "ENDSEC",
            "EOF",
            "POLYLINE",
            "VERTEX",
            "SEQEND",
            "SPLINE",
            "ELLIPSE",
            "LAYER",
            "A",
            "B",
            "\\U+D800",
            "\u00e9",
            "0.0",
            "30000",
            "ATTRIB",
            "999",
            "101",
            "1e-300");

    private final List<byte[]> whole = whole();

    /** What is spoiled, before. */
    public static List<byte[]> whole() {
        return List.of(
                DxfBackend.bytes(DemoSheet.sheet()),
                Snippets.everything().getBytes(StandardCharsets.UTF_8),
                Snippets.binary(Snippets.everything(), false),
                Snippets.binary(Snippets.everything(), true));
    }

    /** Case number n. */
    public byte[] spoiled(long n) {
        SplittableRandom random = new SplittableRandom(n);
        return spoiled(whole.get(random.nextInt(whole.size())), random);
    }

    /** A drawing spoiled in way number n. */
    public static byte[] spoiled(byte[] drawing, long n) {
        return spoiled(drawing, new SplittableRandom(n));
    }

    private static byte[] spoiled(byte[] drawing, SplittableRandom random) {
        byte[] file = drawing.clone();
        int times = random.nextInt(1, 6);
        for (int i = 0; i < times; i++) {
            boolean text = file.length > 0 && file[0] != 'A';
            file = text && random.nextInt(3) > 0 ? byLine(file, random) : byByte(file, random);
        }
        return file;
    }

    private static byte[] byLine(byte[] file, SplittableRandom random) {
        List<String> lines = new ArrayList<>(List.of(new String(file, StandardCharsets.ISO_8859_1).split("\n", -1)));
        int at = random.nextInt(lines.size());
        int other = random.nextInt(lines.size());
        switch (random.nextInt(6)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(other));
            case 2 -> lines.set(at, lines.get(other));
            case 3 ->
                lines.subList(Math.min(at, other), Math.min(at, other) + Math.abs(at - other) / 8)
                        .clear();
            case 4 -> {
                int even = at & ~1;
                int length = Math.min(lines.size() - even, 2 * random.nextInt(1, 40));
                lines.addAll(other & ~1, List.copyOf(lines.subList(even, even + length)));
            }
            default -> lines.set(at, ODD.get(random.nextInt(ODD.size())));
        }
        return String.join("\n", lines).getBytes(StandardCharsets.ISO_8859_1);
    }

    private static byte[] byByte(byte[] file, SplittableRandom random) {
        if (file.length < 4) {
            return file;
        }
        int at = random.nextInt(file.length);
        switch (random.nextInt(4)) {
            case 0 -> {
                return Arrays.copyOf(file, at);
            }
            case 1 -> file[at] = (byte) random.nextInt(256);
            case 2 -> file[at] ^= (byte) (1 << random.nextInt(8));
            default -> {
                byte[] longer = Arrays.copyOf(file, file.length + 1);
                System.arraycopy(file, at, longer, at + 1, file.length - at);
                longer[at] = (byte) random.nextInt(256);
                return longer;
            }
        }
        return file;
    }
}
