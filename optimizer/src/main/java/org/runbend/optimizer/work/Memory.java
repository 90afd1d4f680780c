package org.runbend.optimizer.work;

import java.util.function.Supplier;

/** Answers that are known beyond one piece of work: of an earlier run, or of another machine. It may be asked from any thread. */
public interface Memory {
    /** Remembers nothing. */
    Memory NONE = new Memory() {
        @Override
        public <T extends Record> T recall(Record question, Class<T> kind, Supplier<T> answer) {
            return answer.get();
        }
    };

    /**
     * The answer to a question: the one that is known, or the one worked out now. Whoever asks holds a known answer against the
     * rules again.
     *
     * @param question a record that holds all that the answer depends on
     * @param kind what the answer is, a record of plain values, lists and other such records
     * @param answer works it out
     */
    <T extends Record> T recall(Record question, Class<T> kind, Supplier<T> answer);
}
