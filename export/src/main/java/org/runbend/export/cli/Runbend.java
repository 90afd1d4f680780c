package org.runbend.export.cli;

/** Entry point. */
public final class Runbend {
    private Runbend() {}

    /** Runs. */
    public static void main(String[] args) {
        System.exit(0);
    }
}
