package org.runbend.catalog.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/**
 * What a process did to the files of a folder, as {@code lost_writes.cpp} told it, and what a disk would hold had the power gone at
 * some moment: what was forced to it, and of everything else whatever the dice say.
 */
final class LostWrites {
    private final Path log;
    private final List<Event> events = new ArrayList<>();

    private LostWrites(Path log) {
        this.log = log;
    }

    /** One thing that was done, before it was done. */
    record Event(char kind, String path, long number, ByteBuffer data) {}

    /** What is to stand before a command so that what it does is told. */
    static List<String> before(Path work, Path folder, Path log) throws IOException, InterruptedException {
        Path library = work.resolve("lost_writes.so");
        if (!Files.exists(library)) {
            build(work, library);
        }
        return List.of(
                "env", "LD_PRELOAD=" + library, "LOST_WRITES_FOLDER=" + folder.toRealPath(), "LOST_WRITES_LOG=" + log);
    }

    private static void build(Path work, Path library) throws IOException, InterruptedException {
        Path source = work.resolve("lost_writes.cpp");
        try (InputStream in = LostWrites.class.getResourceAsStream("lost_writes.cpp")) {
            Files.copy(in, source);
        }
        int code = -1;
        try {
            code = new ProcessBuilder(
                            "g++", "-shared", "-fPIC", "-O1", "-o", library.toString(), source.toString(), "-ldl")
                    .inheritIO()
                    .start()
                    .waitFor();
        } catch (IOException e) {
            // there is no compiler
        }
        if (code != 0 && "true".equals(System.getenv("CI"))) {
            fail("g++ is wanted: " + code);
        }
        assumeTrue(code == 0, "no g++ here");
    }

    /** Reads a log. */
    static LostWrites read(Path log) throws IOException {
        LostWrites writes = new LostWrites(log);
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(log)).order(ByteOrder.nativeOrder());
        while (bytes.hasRemaining()) {
            char kind = (char) bytes.get();
            String path = new String(next(bytes, bytes.getLong()), StandardCharsets.UTF_8);
            long number = bytes.getLong();
            writes.events.add(new Event(kind, path, number, ByteBuffer.wrap(next(bytes, bytes.getLong()))));
        }
        return writes;
    }

    private static byte[] next(ByteBuffer bytes, long length) {
        byte[] some = new byte[(int) length];
        bytes.get(some);
        return some;
    }

    int count() {
        return events.size();
    }

    /** How many events are of a kind. */
    long count(char kind) {
        return events.stream().filter(e -> e.kind() == kind).count();
    }

    /** What was told before a moment. */
    List<String> told(int moment) {
        StringBuilder text = new StringBuilder();
        events.subList(0, moment).stream()
                .filter(e -> e.kind() == 'O')
                .forEach(e -> text.append(new String(e.data().array(), StandardCharsets.UTF_8)));
        List<String> lines = new ArrayList<>(text.toString().lines().toList());
        if (text.length() > 0 && text.charAt(text.length() - 1) != '\n') {
            lines.remove(lines.size() - 1);
        }
        return lines;
    }

    /** A file: what it holds when everything is as the process sees it, and what the disk surely holds. */
    private static final class Content {
        private byte[] seen;
        private byte[] sure;
        private final List<Event> open = new ArrayList<>();

        Content(byte[] bytes) {
            seen = bytes;
            sure = bytes;
        }

        void change(Event e) {
            seen = changed(seen, e);
            open.add(e);
        }

        void force() {
            sure = seen;
            open.clear();
        }

        /** What the disk holds: of what was not forced some, in any order it likes. */
        byte[] afterwards(Random dice) {
            byte[] bytes = sure;
            int mood = dice.nextInt(3); // nothing of it, all of it, some of it
            for (Event e : open) {
                if (mood == 1 || (mood == 2 && dice.nextBoolean())) {
                    bytes = changed(bytes, e);
                }
            }
            return bytes;
        }

        private static byte[] changed(byte[] bytes, Event e) {
            if (e.kind() == 'T') {
                return Arrays.copyOf(bytes, (int) e.number());
            }
            int end = (int) e.number() + e.data().capacity();
            byte[] more = Arrays.copyOf(bytes, Math.max(bytes.length, end));
            System.arraycopy(
                    e.data().array(), 0, more, (int) e.number(), e.data().capacity());
            return more;
        }
    }

    /**
     * Writes into a folder what the disk holds after the power went.
     *
     * @param start the files before the first event, by their paths
     * @param syncs whether the disk does what it says when it is told to force something
     */
    void cut(Map<String, byte[]> start, int moment, Random dice, boolean syncs, Path to) throws IOException {
        Map<String, Content> seen = new TreeMap<>();
        start.forEach((path, bytes) -> seen.put(path, new Content(bytes)));
        Map<String, Content> sure = new TreeMap<>(seen);
        for (Event e : events.subList(0, moment)) {
            switch (e.kind()) {
                case 'C' -> seen.put(e.path(), new Content(new byte[0]));
                case 'U' -> seen.remove(e.path());
                case 'W', 'T' -> seen.get(e.path()).change(e);
                case 'S' -> {
                    if (syncs) {
                        seen.get(e.path()).force();
                    }
                }
                case 'D' -> {
                    if (syncs) {
                        sure.clear();
                        sure.putAll(seen);
                    }
                }
                default -> assertEquals('O', e.kind(), log.toString());
            }
        }
        Map<String, Content> left = new HashMap<>(sure);
        if (dice.nextBoolean()) { // names that were not forced are there or not
            left.clear();
            left.putAll(seen);
        }
        for (Map.Entry<String, Content> file : left.entrySet()) {
            Files.write(
                    to.resolve(Path.of(file.getKey()).getFileName().toString()),
                    file.getValue().afterwards(dice));
        }
    }
}
