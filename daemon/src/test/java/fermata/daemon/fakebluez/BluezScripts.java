package fermata.daemon.fakebluez;

import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.LongStream;

/** Plays many scripts side by side, since most of their time is waiting, and watches what they leave behind. */
final class BluezScripts {
    private static final Duration THREADS_END = Duration.ofSeconds(30);
    /** Held, because the logging system forgets the level of a logger that nobody holds. */
    private static final Logger LIBRARY = Logger.getLogger("org.freedesktop");

    private static final Logger OURS = Logger.getLogger("fermata");

    private final Handler handler = new EscapeHandler();
    private final ConcurrentLinkedQueue<String> escaped = new ConcurrentLinkedQueue<>();

    private BluezScripts() {}

    /**
     * What came of many scripts.
     *
     * @param escaped exceptions that nobody expected, in a thread or in the log
     * @param threadsLeft how many threads more there are than before
     */
    record Result(List<BluezScript.Outcome> outcomes, List<String> escaped, int threadsLeft) {
        Result {
            outcomes = List.copyOf(outcomes);
            escaped = List.copyOf(escaped);
        }

        List<BluezScript.Outcome> bad() {
            return outcomes.stream().filter(outcome -> !outcome.isGood()).toList();
        }

        /** Scripts in which some trouble cost more than its stated time. */
        List<BluezScript.Outcome> late() {
            return outcomes.stream()
                    .filter(outcome -> outcome.comebacks().stream().anyMatch(BluezScript.Comeback::isLate))
                    .toList();
        }

        /** For each trouble that a running capture met: how often, and the median and longest time to come back. */
        String table() {
            Map<Trouble, List<Long>> took = new EnumMap<>(Trouble.class);
            outcomes.stream()
                    .flatMap(outcome -> outcome.comebacks().stream())
                    .filter(each -> !each.fromStart())
                    .forEach(each -> took.computeIfAbsent(each.trouble(), trouble -> new ArrayList<>())
                            .add(each.took().toMillis()));
            StringBuilder table = new StringBuilder();
            took.forEach((trouble, millis) -> {
                List<Long> sorted = millis.stream().sorted().toList();
                table.append(String.format(
                        "| %s | %d | %.1f | %.1f | %d |%n",
                        trouble,
                        sorted.size(),
                        sorted.get(sorted.size() / 2) / 1000.0,
                        sorted.get(sorted.size() - 1) / 1000.0,
                        trouble.backWithin().toSeconds()));
            });
            return table.toString();
        }
    }

    /** Plays the scripts of {@code count} seeds from {@code first} on, {@code atOnce} side by side. */
    static Result play(long first, int count, int atOnce) throws InterruptedException, ExecutionException {
        return new BluezScripts().playAll(first, count, atOnce);
    }

    private Result playAll(long first, int count, int atOnce) throws InterruptedException, ExecutionException {
        LIBRARY.setLevel(Level.SEVERE);
        OURS.addHandler(handler);
        Thread.UncaughtExceptionHandler before = Thread.getDefaultUncaughtExceptionHandler();
        Thread.setDefaultUncaughtExceptionHandler((thread, e) -> escaped.add(thread.getName() + ": " + e));
        int threads = threads();
        ExecutorService players = Executors.newFixedThreadPool(atOnce);
        try {
            List<Future<BluezScript.Outcome>> playing = LongStream.range(first, first + count)
                    .mapToObj(seed -> players.submit(() -> BluezScript.play(seed, BluezScript.FAST)))
                    .toList();
            List<BluezScript.Outcome> outcomes = new ArrayList<>();
            for (Future<BluezScript.Outcome> each : playing) {
                outcomes.add(each.get());
            }
            players.shutdown();
            return new Result(outcomes, List.copyOf(escaped), threadsAbove(threads));
        } finally {
            players.shutdownNow();
            OURS.removeHandler(handler);
            Thread.setDefaultUncaughtExceptionHandler(before);
        }
    }

    /** The library ends its threads some time after a connection. */
    private static int threadsAbove(int before) throws InterruptedException {
        Deadline deadline = Deadline.in(THREADS_END, MonotonicClock.system());
        while (threads() > before && !deadline.hasPassed()) {
            Thread.sleep(50);
        }
        return Math.max(0, threads() - before);
    }

    /** Those that wait for the bus daemons to end are the machine's, and kept for the next one. */
    private static int threads() {
        return (int) Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> !thread.getName().equals("process reaper"))
                .count();
    }

    /** What the capture logs with an exception is one that it did not expect. */
    private final class EscapeHandler extends Handler {
        @Override
        public void publish(LogRecord logged) {
            if (logged.getThrown() != null) {
                escaped.add(logged.getMessage() + ": " + logged.getThrown());
            }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    }
}
