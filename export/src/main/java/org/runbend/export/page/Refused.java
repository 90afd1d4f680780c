package org.runbend.export.page;

/** What the server does not do, with the status of HTTP and one sentence for a person. */
final class Refused extends RuntimeException {
    private final int status;

    Refused(int status, String words) {
        super(words);
        this.status = status;
    }

    int status() {
        return status;
    }
}
