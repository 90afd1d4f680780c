package org.runbend.export.folder;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a work folder is for, so that a later run can clear up after one that was killed.
 *
 * @param folder name of the output folder, as {@link Disk#rawName} spells it
 * @param made names of the files of the new kit
 * @param old names of the files of the kit that it replaces
 */
record Journal(String folder, Set<String> made, Set<String> old) {
    private static final String HEAD = "runbend work folder, may be deleted if no run is at work";
    private static final String END = "end";
    private static final int MOST = 100_000;

    /** Keeps the names in order. */
    Journal {
        made = new TreeSet<>(made);
        old = new TreeSet<>(old);
    }

    /** Whether a name is that of a file which Runbend made, old or new. */
    boolean isOurs(Path name) {
        return made.contains(Names.listed(name)) || old.contains(Names.listed(name));
    }

    /** The sub-folders that files of Runbend lie in, old or new. */
    Set<String> folders() {
        Set<String> folders = Names.folders(made);
        folders.addAll(Names.folders(old));
        return folders;
    }

    /** Whether it names files of the output folder only. Whoever sends a folder could have written a journal too. */
    private boolean isPlain() {
        return Stream.concat(made.stream(), old.stream()).allMatch(KitListing::isPlain);
    }

    /** Whether it tells of the output folder {@code target}. */
    boolean isOf(Path target) {
        return folder.equals(Disk.rawName(target));
    }

    byte[] bytes() {
        List<String> lines = List.of(HEAD, coded(Stream.of(folder)), coded(made.stream()), coded(old.stream()), END);
        return (String.join("\n", lines) + "\n").getBytes(UTF_8);
    }

    /** The journal of a file; empty if it was not written to its end or is none. */
    static Optional<Journal> read(Path file) throws IOException {
        if (!Disk.isFile(file) || Files.size(file) > MOST) {
            return Optional.empty();
        }
        List<String> lines = List.of(new String(Files.readAllBytes(file), UTF_8).split("\n", -1));
        if (lines.size() != 6 || !lines.get(0).equals(HEAD) || !lines.get(4).equals(END)) {
            return Optional.empty();
        }
        try {
            Journal journal = new Journal(
                    decoded(lines.get(1)).stream().findFirst().orElse(""),
                    decoded(lines.get(2)),
                    decoded(lines.get(3)));
            return Optional.of(journal).filter(Journal::isPlain);
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // an escape that is none
        }
    }

    private static String coded(Stream<String> names) {
        return names.map(n -> URLEncoder.encode(n, UTF_8)).collect(Collectors.joining(" "));
    }

    private static Set<String> decoded(String line) {
        return Stream.of(line.split(" ", -1))
                .filter(n -> !n.isEmpty())
                .map(n -> URLDecoder.decode(n, UTF_8))
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
