package org.runbend.export.page;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What happened, in order, for whoever listens from the beginning or from some event on. */
final class EventLog {
    /** A listener that is gone is noticed by the next sign of life. */
    private static final long SIGN_OF_LIFE = 10_000;

    private final List<String> events = new ArrayList<>();
    private boolean closed;

    void add(String kind, Map<String, Object> data) {
        add(kind, Json.write(data));
    }

    /** Adds an event whose data is JSON in one line. */
    synchronized void add(String kind, String data) {
        if (!closed) {
            events.add("id: " + events.size() + "\nevent: " + kind + "\ndata: " + data + "\n\n");
            notifyAll();
        }
    }

    /** Nothing more will happen. */
    synchronized void close() {
        closed = true;
        notifyAll();
    }

    synchronized boolean isClosed() {
        return closed;
    }

    /**
     * Writes events as they come until the last one.
     *
     * @param from number of the first event wanted
     */
    void follow(int from, OutputStream out) throws IOException {
        int at = Math.max(0, from);
        out.write("retry: 1000\n\n".getBytes(StandardCharsets.UTF_8));
        out.flush();
        while (true) {
            String text = next(at);
            if (text == null) {
                return;
            }
            at += text.startsWith(":") ? 0 : 1;
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.flush();
        }
    }

    @SuppressWarnings("WaitNotInLoop") // who waits looks again, and a wait that ends early is a sign of life too early
    private synchronized String next(int at) {
        if (at >= events.size() && !closed) {
            try {
                wait(SIGN_OF_LIFE);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return null;
            }
        }
        if (at < events.size()) {
            return events.get(at);
        }
        return closed ? null : ": here\n\n";
    }
}
