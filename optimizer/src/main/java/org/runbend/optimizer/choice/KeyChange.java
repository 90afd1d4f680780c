package org.runbend.optimizer.choice;

/**
 * A key of the job file with another value than the job gives it. Whoever writes it into the job gets the same plan.
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
