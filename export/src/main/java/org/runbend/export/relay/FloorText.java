package org.runbend.export.relay;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.runbend.catalog.source.BadInput;
import org.runbend.catalog.source.SourceFile;
import org.runbend.optimizer.job.Job;
import org.runbend.optimizer.job.read.JobReader;
import org.runbend.optimizer.job.read.LoopDrawings;

/**
 * All that planning a job reads, so that it can be planned where none of its files is.
 *
 * @param job the name of its job file among the others
 * @param files the bytes of each file by its name below the folder that holds them all, with {@code /} between folders
 */
public record FloorText(String job, Map<String, byte[]> files) {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Copies the map, in order of the names. */
    public FloorText {
        files = new TreeMap<>(files);
    }

    /** What a job file reads; empty where it names files in a way that means nothing elsewhere. */
    public static Optional<FloorText> of(Path jobFile, LoopDrawings drawings) {
        List<SourceFile> read = JobReader.files(jobFile, drawings);
        List<Path> paths = read.stream()
                .map(f -> Path.of(f.name()).toAbsolutePath().normalize())
                .toList();
        Path folder = paths.get(0).getParent();
        while (folder != null && !holds(folder, paths)) {
            folder = folder.getParent();
        }
        if (folder == null) {
            return Optional.empty();
        }
        Map<String, byte[]> files = new TreeMap<>();
        for (int i = 0; i < paths.size(); i++) {
            files.put(name(folder, paths.get(i)), read.get(i).bytes());
        }
        FloorText text = new FloorText(name(folder, jobFile.toAbsolutePath().normalize()), files);
        return text.isWhole(drawings) ? Optional.of(text) : Optional.empty();
    }

    private static boolean holds(Path folder, List<Path> paths) {
        return paths.stream().allMatch(p -> p.startsWith(folder));
    }

    private static String name(Path folder, Path file) {
        return folder.relativize(file).toString().replace('\\', '/');
    }

    /** Whether it can be read elsewhere too. */
    private boolean isWhole(LoopDrawings drawings) {
        try {
            read(drawings);
            return true;
        } catch (BadInput | IOException e) {
            return false;
        }
    }

    /**
     * The job, read from these files alone.
     *
     * @throws IOException if they cannot be laid down on this disk
     * @throws BadInput if they are no job, or name a file that is not among them
     */
    public Job read(LoopDrawings drawings) throws IOException {
        Path folder = Files.createTempDirectory("runbend-floor-").toRealPath();
        try {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                Path place = place(folder, file.getKey());
                Files.createDirectories(place.getParent());
                Files.write(place, file.getValue());
            }
            SourceFile sent = SourceFile.sent(place(folder, job), files.get(job), folder);
            return JobReader.read(sent, Optional.empty(), drawings);
        } finally {
            delete(folder);
        }
    }

    private static Path place(Path folder, String name) throws IOException {
        Path place = folder.resolve(name).normalize();
        if (!place.startsWith(folder) || place.equals(folder)) {
            throw new IOException(name + " is no file of a floor");
        }
        return place;
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    /** As one text. */
    String text() {
        try {
            return JSON.writeValueAsString(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    /** From one text. */
    static FloorText of(String text) throws IOException {
        return JSON.readValue(text.getBytes(StandardCharsets.UTF_8), FloorText.class);
    }
}
