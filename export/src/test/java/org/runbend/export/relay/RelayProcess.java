package org.runbend.export.relay;

import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.runbend.catalog.ledger.sql.PostgresStore;

/** A worker in a process of its own, that can be killed: it lays nothing, and answers after a while with its own name. */
final class RelayProcess {
    private RelayProcess() {}

    /** Address of the database, the worker's name, milliseconds for a floor. */
    public static void main(String[] args) throws InterruptedException {
        long millis = Long.parseLong(args[2]);
        Relay.Laying laying = floor -> {
            Thread.sleep(millis);
            return Map.of(floor.job(), args[1]);
        };
        RelayTest.relay(args[0], "test").work(2, args[1], laying, System.out::println);
        Thread.sleep(Duration.ofMinutes(5).toMillis()); // it is killed
    }

    static Map<String, String> login(String url, String password) {
        return PostgresStore.properties(url, Optional.of(password));
    }
}
