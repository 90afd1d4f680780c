package org.runbend.optimizer.work;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Answers by their questions. Two threads that ask at the same time may both work it out, to the same end; what was kept first is
 * the answer of both.
 */
final class Known {
    private final Map<Record, Object> answers = new ConcurrentHashMap<>();

    <T> T once(Record question, Class<T> kind, Supplier<T> answer) {
        Object found = answers.get(question);
        if (found == null) {
            T made = answer.get();
            Object earlier = answers.putIfAbsent(question, made);
            found = earlier == null ? made : earlier;
        }
        return kind.cast(found);
    }
}
