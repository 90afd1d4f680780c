package org.runbend.export.batch;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.runbend.catalog.source.Sha256;
import org.runbend.export.folder.Disk;
import org.runbend.optimizer.answer.Answer;
import org.runbend.optimizer.natives.UserCache;
import org.runbend.optimizer.work.Memory;

/**
 * Loops and covers that were found before by this version of the program, by all that they depend on: images of a floor share one
 * answer, whatever the order, and the shelf has no part in it. Two threads that ask the same wait for one of them. Answers are kept
 * in a folder, each with a sum of its own; one that is damaged is as good as none.
 */
public final class KnownAnswers implements Memory {
    private static final int MOST = 10_000;
    private static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new Jdk8Module())
            .visibility(PropertyAccessor.ALL, JsonAutoDetect.Visibility.NONE)
            .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
            .visibility(PropertyAccessor.CREATOR, JsonAutoDetect.Visibility.ANY)
            .addMixIn(Answer.class, AnswerKinds.class)
            .build();

    private final Optional<Path> folder;
    private final String version;
    private final Map<String, String> answers = new ConcurrentHashMap<>();
    private final Map<String, Object> locks = new ConcurrentHashMap<>();

    private KnownAnswers(Optional<Path> folder, String version) {
        this.folder = folder;
        this.version = version;
    }

    /** How an answer says of which kind it is. */
    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "is")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Answer.Found.class, name = "found"),
        @JsonSubTypes.Type(value = Answer.None.class, name = "none"),
        @JsonSubTypes.Type(value = Answer.Unknown.class, name = "unknown")
    })
    private interface AnswerKinds {}

    /** What nobody keeps. */
    public static KnownAnswers passing(String version) {
        return new KnownAnswers(Optional.empty(), version);
    }

    /** What is kept in this user's folder of a version, where there can be one; the oldest of very many are deleted. */
    public static KnownAnswers ofUser(String version) {
        return UserCache.folder()
                .map(f -> in(f.resolve("laid-" + version), version))
                .orElseGet(() -> passing(version));
    }

    /** What is kept in a folder, which need not exist; where it cannot be made nothing is kept. */
    public static KnownAnswers in(Path folder, String version) {
        try {
            Files.createDirectories(folder);
            thin(folder);
        } catch (IOException e) {
            return passing(version);
        }
        return new KnownAnswers(Optional.of(folder), version);
    }

    private static void thin(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> all = files.toList();
            if (all.size() > MOST) {
                all.stream()
                        .sorted(Comparator.comparing(KnownAnswers::written))
                        .limit(all.size() - MOST / 2)
                        .forEach(KnownAnswers::delete);
            }
        }
    }

    private static FileTime written(Path file) {
        try {
            return Files.getLastModifiedTime(file);
        } catch (IOException e) {
            return FileTime.fromMillis(0);
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // it stays until the next time
        }
    }

    @Override
    public <T extends Record> T recall(Record question, Class<T> kind, Supplier<T> answer) {
        String key = Sha256.of(version + "\n" + kind.getName() + "\n" + text(question));
        synchronized (locks.computeIfAbsent(key, k -> new Object())) {
            Optional<T> known = find(key).flatMap(text -> read(text, kind));
            if (known.isPresent()) {
                return known.get();
            }
            T made = answer.get();
            keep(key, text(made));
            return made;
        }
    }

    /** All answers that were asked for or added, by their keys. */
    public Map<String, String> texts() {
        return Map.copyOf(answers);
    }

    /** Takes answers that others found by the same version. */
    public void add(Map<String, String> others) {
        others.forEach(this::keep);
    }

    private Optional<String> find(String key) {
        String text = answers.get(key);
        if (text != null || folder.isEmpty()) {
            return Optional.ofNullable(text);
        }
        Optional<String> kept = kept(folder.get().resolve(key));
        kept.ifPresent(k -> answers.put(key, k));
        return kept;
    }

    private static Optional<String> kept(Path file) {
        try {
            String all = Files.isRegularFile(file) ? Files.readString(file) : "";
            int end = all.indexOf('\n');
            String text = all.substring(end + 1);
            return end > 0 && all.substring(0, end).equals(Sha256.of(text)) ? Optional.of(text) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private void keep(String key, String text) {
        answers.put(key, text);
        folder.ifPresent(f -> {
            try {
                Disk.replace(f.resolve(key), (Sha256.of(text) + "\n" + text).getBytes(StandardCharsets.UTF_8));
            } catch (IOException e) {
                // it is found again another time
            }
        });
    }

    private static String text(Record record) {
        try {
            return JSON.writeValueAsString(record);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(record.getClass() + " cannot be kept", e);
        }
    }

    private static <T> Optional<T> read(String text, Class<T> kind) {
        try {
            return Optional.of(JSON.readValue(text, kind));
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }
}
