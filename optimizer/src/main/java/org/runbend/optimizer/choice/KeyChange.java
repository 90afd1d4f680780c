package org.runbend.optimizer.choice;

/**
 * A key of the job file with another value than the job gives it. Whoever writes it into the job gets such a plan: as the lattice is
 * chosen anew then, seldom another one than the alternative, and as a rule a better one.
 *
 * @param key path of the key, such as layout.leftOutPrice
 * @param value as it would stand in the file
 */
public record KeyChange(String key, String value) {
    /** As a person reads it: key: value. */
    public String words() {
        return key + ": " + value;
    }
}
