package org.runbend.catalog.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;

/** Stands between a bench and its server and cuts the line where a change is made lasting. */
final class CommitCutter implements AutoCloseable {
    /** Where the line is cut. */
    enum Where {
        /** Nowhere. */
        NOWHERE,
        /** The server never hears of it. */
        BEFORE,
        /** The server does it and its answer is lost. */
        AFTER,
        /** The server does it; the line stays open and nothing comes back. */
        SILENT
    }

    private final ServerSocket door;
    private final int server;
    private final AtomicReference<Where> next = new AtomicReference<>(Where.NOWHERE);
    private final List<Socket> open = new CopyOnWriteArrayList<>();

    CommitCutter(String address) throws IOException {
        server = Integer.parseInt(address.replaceFirst(".*127[.]0[.]0[.]1:(\\d+)/.*", "$1"));
        door = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        start(this::serve);
    }

    /** The address that leads through here. */
    String through(String address) {
        return address.replaceFirst(":" + server + "/", ":" + door.getLocalPort() + "/");
    }

    /** The next commit is cut, once. */
    void cut(Where where) {
        next.set(where);
    }

    private static void start(Runnable work) {
        Thread thread = new Thread(work, "commit cutter");
        thread.setDaemon(true);
        thread.start();
    }

    private void serve() {
        try {
            while (true) {
                Socket client = door.accept();
                Socket to = new Socket(InetAddress.getLoopbackAddress(), server);
                open.add(client);
                open.add(to);
                AtomicBoolean mute = new AtomicBoolean();
                start(() -> pass(client, to, true, mute));
                start(() -> pass(to, client, false, mute));
            }
        } catch (IOException e) {
            // the door is closed
        }
    }

    private void pass(Socket from, Socket to, boolean watched, AtomicBoolean mute) {
        byte[] buffer = new byte[65_536];
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                boolean commits = watched && new String(buffer, 0, n, StandardCharsets.ISO_8859_1).contains("COMMIT");
                Where where = commits ? next.getAndSet(Where.NOWHERE) : Where.NOWHERE;
                if (where == Where.AFTER) {
                    from.close(); // before the server can answer
                }
                if (where == Where.SILENT) {
                    mute.set(true);
                }
                if (where != Where.BEFORE && (watched || !mute.get())) {
                    out.write(buffer, 0, n);
                    out.flush();
                }
                if (where == Where.BEFORE || where == Where.AFTER) {
                    return;
                }
            }
        } catch (IOException e) {
            // one end is gone, and so is the other
        }
    }

    @Override
    public void close() {
        try {
            door.close();
            for (Socket s : open) {
                s.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
