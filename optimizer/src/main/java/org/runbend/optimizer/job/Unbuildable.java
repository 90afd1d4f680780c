package org.runbend.optimizer.job;

/** A job that is well written but cannot be built as asked. The text says what is wrong and what would be right. */
public final class Unbuildable extends RuntimeException {
    private final String key;

    /**
     * Names the place and the reason.
     *
     * @param key path of the key in the job file, such as floor.port.at
     * @param text one sentence
     */
    public Unbuildable(String key, String text) {
        super(text);
        this.key = key;
    }

    /** Path of the key in the job file. */
    public String key() {
        return key;
    }
}
