package org.runbend.export.stock;

import com.sun.jna.NativeLibrary;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicLong;
import org.runbend.export.cli.Runbend;

/** The command line in a process that is killed, by SIGKILL, at a moment of its own: the first word says it. */
final class KilledRun {
    private static final int SIGKILL = 9;

    private KilledRun() {}

    /**
     * Arguments: {@code STATEMENT:NANOS}, then the words of the command. It is killed so long after that statement of the ledger began,
     * from 1, or, with statement 0, so long after the command began; with 0 nanoseconds before the statement is sent.
     */
    public static void main(String[] args) throws SQLException {
        String[] moment = args[0].split(":", -1);
        long statement = Long.parseLong(moment[0]);
        long nanos = Long.parseLong(moment[1]);
        NativeLibrary.getInstance("c"); // loaded before it is needed
        AtomicLong seen = new AtomicLong();
        if (statement == 0) {
            killAfter(nanos);
        } else {
            CountingDriver.register(() -> {
                if (seen.incrementAndGet() == statement) {
                    killAfter(nanos);
                }
            });
        }
        Runbend.main(Arrays.copyOfRange(args, 1, args.length));
    }

    private static void killAfter(long nanos) {
        if (nanos == 0) {
            kill();
            return;
        }
        long begin = System.nanoTime();
        Thread killer = new Thread(() -> {
            while (System.nanoTime() - begin < nanos) {
                Thread.onSpinWait();
            }
            kill();
        });
        killer.setDaemon(true);
        killer.start();
    }

    private static void kill() {
        int self = (int) ProcessHandle.current().pid();
        NativeLibrary.getInstance("c").getFunction("kill").invokeInt(new Object[] {self, SIGKILL});
    }
}
