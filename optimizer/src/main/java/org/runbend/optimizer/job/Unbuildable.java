package org.runbend.optimizer.job;

import java.util.List;

/** A job that is well written but cannot be built as asked. The text says what is wrong and what would be right. */
public final class Unbuildable extends RuntimeException {
    private final String key;
    private final List<String> lines;

    /**
     * Names the place and the reason.
     *
     * @param key path of the key in the job file, such as floor.port.at
     * @param text one sentence
     */
    public Unbuildable(String key, String text) {
        this(key, List.of(text));
    }

    /**
     * Names the place and every reason.
     *
     * @param key path of the key in the job file
     * @param lines one sentence for each fault, at least one
     */
    public Unbuildable(String key, List<String> lines) {
        super(lines.get(0));
        this.key = key;
        this.lines = List.copyOf(lines);
    }

    /** One sentence for each fault. */
    public List<String> lines() {
        return lines;
    }

    /** Path of the key in the job file. */
    public String key() {
        return key;
    }
}
