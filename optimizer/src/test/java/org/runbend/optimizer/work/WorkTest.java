package org.runbend.optimizer.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class WorkTest {
    private static final List<Integer> MANY = IntStream.range(0, 500).boxed().toList();

    @Test
    void answersKeepTheOrderOfTheQuestions() {
        for (int threads : new int[] {1, 2, 7}) {
            assertEquals(
                    MANY.stream().map(i -> i * i).toList(), new Work(Progress.SILENT, threads).each(MANY, i -> i * i));
        }
    }

    private record Question(int number) {}

    @Test
    void anEqualQuestionIsAnsweredOnce() {
        Work work = new Work(Progress.SILENT, 1);
        AtomicInteger asked = new AtomicInteger();
        Supplier<Integer> answer = asked::incrementAndGet;
        assertEquals(1, work.once(new Question(7), Integer.class, answer));
        assertEquals(1, work.hushed().once(new Question(7), Integer.class, answer));
        assertEquals(2, work.once(new Question(8), Integer.class, answer));
        assertEquals(3, new Work(Progress.SILENT, 1).once(new Question(7), Integer.class, answer));
        assertThrows(
                IllegalStateException.class,
                () -> work.once(new Question(9), Integer.class, () -> {
                    throw new IllegalStateException("not to be had");
                }));
        assertEquals(4, work.once(new Question(9), Integer.class, answer), "what failed is asked again");
    }

    /** Work inside work runs where a thread is spare, else on the caller's own: no deadlock, never more than asked for. */
    @Test
    void workInsideWork() {
        Work work = new Work(Progress.SILENT, 3);
        Set<Thread> threads = ConcurrentHashMap.newKeySet();
        List<Integer> sums = work.each(MANY, i -> {
            threads.add(Thread.currentThread());
            List<Integer> parts = work.each(List.of(1, 2, 3), k -> i * k);
            return parts.get(0) + parts.get(1) + parts.get(2);
        });
        assertEquals(MANY.stream().map(i -> 6 * i).toList(), sums);
        assertFalse(threads.isEmpty());
    }

    @Test
    void firstFailureInOrderIsThrown() {
        Work work = new Work(Progress.SILENT, 4);
        for (int i = 0; i < 20; i++) {
            IllegalArgumentException e = assertThrows(
                    IllegalArgumentException.class,
                    () -> work.each(MANY, k -> {
                        if (k % 100 == 77) {
                            throw new IllegalArgumentException("at " + k);
                        }
                        return k;
                    }));
            assertEquals("at 77", e.getMessage());
        }
    }

    /** All threads of a work end when it is cancelled, and the caller's is no longer interrupted once it is out. */
    @Test
    void cancelEndsAll() throws InterruptedException {
        Work work = new Work(Progress.SILENT, 3);
        CountDownLatch begun = new CountDownLatch(1);
        Thread canceller = new Thread(() -> {
            try {
                begun.await();
                TimeUnit.MILLISECONDS.sleep(20);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            work.cancel();
        });
        canceller.start();
        assertThrows(
                CancellationException.class,
                () -> work.run(() -> work.each(MANY, i -> {
                    begun.countDown();
                    while (true) {
                        Work.check();
                    }
                })));
        canceller.join();
        assertFalse(Thread.currentThread().isInterrupted());
        assertThrows(CancellationException.class, () -> work.run(() -> 1));
    }

    /** A cancelled part ends the whole, and is heard of no more. */
    @Test
    void partsBelongToTheWhole() {
        StringBuilder heard = new StringBuilder();
        Work work = Work.told(step -> heard.append(step.what()));
        work.hushed().step("inside");
        work.step("out", 2, 3);
        assertEquals("out", heard.toString());
        work.hushed().cancel();
        assertThrows(CancellationException.class, () -> work.run(() -> 1));
        assertThrows(IllegalArgumentException.class, () -> work.step("", 4, 3));
        assertTrue(new Progress.Step("", 1, 1).isCounted());
    }
}
