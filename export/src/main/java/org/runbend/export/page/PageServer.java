package org.runbend.export.page;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.runbend.optimizer.job.read.LoopDrawings;

/**
 * Serves the page on 127.0.0.1. One thread answers one request; those that listen to events keep theirs. It ends by {@link
 * #close}, or when nobody has asked for anything for a while.
 */
public final class PageServer implements AutoCloseable {
    private static final int BACKLOG = 256;
    private static final long LOOK = 500;
    private static final int STACK = 512 * 1024;

    private final HttpServer server;
    private final ThreadPoolExecutor threads;
    private final Gate gate;
    private final Routes routes;
    private final PlanQueue queue;
    private final Optional<DayRuns> days;
    private final EventLog house = new EventLog();
    private final IdleClock idle = new IdleClock(System::nanoTime);
    private final Limits limits;
    private final List<Path> ways = new ArrayList<>();
    private boolean ended;

    /**
     * Begins to serve.
     *
     * @param folder the start folder
     * @param drafts where drafts lie
     * @param port 0 for a free one
     * @param child what a process of a plan is started with: class path, main class and its words
     * @param stock the ledger to work with, if there is one
     */
    public PageServer(
            Path folder,
            Path drafts,
            int port,
            Limits limits,
            LoopDrawings drawings,
            List<String> child,
            Optional<StockAccess> stock)
            throws IOException {
        this.limits = limits;
        StartFolder start = new StartFolder(folder);
        Path work = Files.createTempDirectory("runbend-page-");
        queue = new PlanQueue(
                limits,
                work.resolve("plans"),
                () -> PlanProcess.start(with(child, stock, start, work), start.path(), limits.heap()));
        days = stock.map(s -> new DayRuns(s, start, work, limits.heap()));
        settings();
        server = HttpServer.create(
                new InetSocketAddress(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port), BACKLOG);
        gate = new Gate(server.getAddress().getPort());
        Optional<StockRoutes> orders =
                stock.map(s -> new StockRoutes(new StockRoom(s, start), days.orElseThrow(), queue));
        routes = new Routes(
                gate, start, new Drafts(drafts, start.path()), new JobSheet(start, drawings), queue, house, orders);
        threads =
                new ThreadPoolExecutor(4, Limits.MOST_AT_ONCE, 20, TimeUnit.SECONDS, new SynchronousQueue<>(), task -> {
                    Thread thread = new Thread(null, task, "page", STACK);
                    thread.setDaemon(true);
                    return thread;
                });
        server.setExecutor(threads);
        server.createContext("/", this::serve);
        warmJob(work);
        server.start();
        Thread prepare = new Thread(queue::prepare, "prepare");
        prepare.setDaemon(true);
        prepare.start();
    }

    /** Limits of the JDK's server, which it reads once when it is first used. */
    private static void settings() {
        Map.of(
                        "sun.net.httpserver.maxReqTime", "" + Limits.SLOWEST_REQUEST,
                        "sun.net.httpserver.maxReqHeaders", "60",
                        "sun.net.httpserver.maxIdleConnections", "64",
                        "sun.net.httpserver.idleInterval", "60",
                        "sun.net.httpserver.nodelay", "true",
                        "jdk.httpserver.maxConnections", "" + (Limits.MOST_AT_ONCE + 400))
                .forEach((key, value) -> {
                    if (System.getProperty(key) == null) {
                        System.setProperty(key, value);
                    }
                });
    }

    private static List<String> with(List<String> child, Optional<StockAccess> stock, StartFolder start, Path work) {
        List<String> all = new ArrayList<>(child);
        stock.ifPresent(s -> all.addAll(s.place().words()));
        all.add(start.path().toString());
        all.add(work.resolve("warm.yaml").toString());
        return all;
    }

    /** A small job that each process of a plan makes first. */
    private static void warmJob(Path work) throws IOException {
        for (String name : List.of("warm.yaml", "workshop.yaml")) {
            Files.write(work.resolve(name), Assets.bytes(name));
        }
    }

    /** The address without the token. */
    public String address() {
        return gate.address();
    }

    /** The address that lets one browser in. */
    public String addressWithToken() {
        return gate.address() + "#token=" + gate.once();
    }

    /** A file of this user alone that lets one browser in. */
    public Path wayIn() throws IOException {
        Path way = WayIn.write(gate.address(), gate.once());
        synchronized (this) {
            ways.add(way);
        }
        return way;
    }

    /** Waits until the server has ended; true if it ended because nobody asked for anything. */
    public boolean await() throws InterruptedException {
        while (true) {
            synchronized (this) {
                if (ended) {
                    return false;
                }
                wait(LOOK);
            }
            if (queue.isBusy() || days.filter(DayRuns::isBusy).isPresent()) {
                idle.touch();
            }
            if (idle.isOver(limits.idle())) {
                house.add("ended", Map.of("words", "Nobody asked for anything for a while, so Runbend has ended."));
                house.close();
                close();
                return true;
            }
        }
    }

    private void serve(HttpExchange exchange) {
        Call call = new Call(exchange);
        try {
            gate.checkHost(call);
            if (!call.path().equals(Routes.HOUSE)) {
                idle.touch();
            }
            routes.answer(call);
        } catch (Refused refused) {
            refuse(call, refused);
        } catch (IOException e) {
            // the other side has gone
        } catch (RuntimeException | StackOverflowError e) {
            refuse(
                    call,
                    new Refused(500, "a fault of our own (" + e.getClass().getSimpleName() + "); nothing is lost"));
        } finally {
            call.close();
        }
    }

    private static void refuse(Call call, Refused refused) {
        try {
            call.refuse(refused);
        } catch (IOException e) {
            // the other side has gone
        }
    }

    @Override
    public void close() {
        synchronized (this) {
            if (ended) {
                return;
            }
            ended = true;
            notifyAll();
        }
        house.close();
        days.ifPresent(DayRuns::close);
        queue.close();
        server.stop(0);
        threads.shutdownNow();
        PlanQueue.remove(queue.folder().getParent());
        ways.forEach(PlanQueue::remove);
    }
}
