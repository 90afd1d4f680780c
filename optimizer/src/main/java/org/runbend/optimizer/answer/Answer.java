package org.runbend.optimizer.answer;

import java.util.Objects;
import java.util.Optional;

/**
 * What a solver says to a problem. Whether something is the best there is, is said by its own bound.
 *
 * @param <T> what was looked for
 */
public sealed interface Answer<T> {
    /** Something was found. */
    static <T> Answer<T> found(T value) {
        return new Found<>(value);
    }

    /** It is proved that there is nothing; the reason is a sentence part for people. */
    static <T> Answer<T> none(String reason) {
        return new None<>(reason);
    }

    /** Nothing was found in the work allowed, and nothing is proved; the reason is a sentence part for people. */
    static <T> Answer<T> unknown(String reason) {
        return new Unknown<>(reason);
    }

    /** What was found, if anything was. */
    default Optional<T> value() {
        return this instanceof Found<T> found ? Optional.of(found.it()) : Optional.empty();
    }

    /** Why nothing was found; empty if something was. */
    default String reason() {
        return "";
    }

    /**
     * Something was found.
     *
     * @param it what was found
     */
    record Found<T>(T it) implements Answer<T> {
        /** Checks presence. */
        public Found {
            Objects.requireNonNull(it, "it");
        }
    }

    /**
     * There is nothing, proved.
     *
     * @param reason why, a sentence part for people
     */
    record None<T>(String reason) implements Answer<T> {
        /** Checks presence. */
        public None {
            Objects.requireNonNull(reason, "reason");
        }
    }

    /**
     * The work allowed ended before anything was found or proved.
     *
     * @param reason what was too much, a sentence part for people
     */
    record Unknown<T>(String reason) implements Answer<T> {
        /** Checks presence. */
        public Unknown {
            Objects.requireNonNull(reason, "reason");
        }
    }
}
