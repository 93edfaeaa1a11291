package fermata.daemon.fakebluez;

import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CaptureTarget;
import fermata.daemon.bluetooth.CentralSettings;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** One evening of troubles, drawn by a seed, and what came of it. */
final class BluezScript {
    /**
     * Waits for another process are never shorter than 5 s of the machine's (see {@code LinkWatch}), so that at this
     * speed they last up to four times as long as on a board; at a higher one they would be all that is measured.
     */
    static final double FAST = 4;

    static final double AS_ON_A_BOARD = 1;

    /** A capture that is not back by then will not be. */
    private static final Duration GIVE_UP = Duration.ofSeconds(300);

    private static final long POLL_MILLIS = 5;

    /** What a capture may take that has just been started, whatever the trouble. */
    private static final Duration FROM_THE_START = Duration.ofSeconds(30);

    /**
     * How long it took until turning was heard again, on the capture's clock.
     *
     * @param fromStart whether the trouble was there before the capture was
     */
    record Comeback(Trouble trouble, boolean fromStart, Duration took) {
        boolean isLate() {
            boolean isShorter = trouble.backWithin().compareTo(FROM_THE_START) < 0;
            return took.compareTo(fromStart && isShorter ? FROM_THE_START : trouble.backWithin()) > 0;
        }

        @Override
        public String toString() {
            return trouble + (fromStart ? " from the start" : "") + " " + took.toMillis() + " ms";
        }
    }

    /**
     * What came of a script.
     *
     * @param told numbers of the turns that the fake notified on a living link
     * @param kept numbers in the frames that the journal holds
     * @param problems what must not be, in words; empty if all is well
     */
    record Outcome(long seed, List<Comeback> comebacks, List<Integer> told, List<Integer> kept, List<String> problems) {
        boolean isGood() {
            return problems.isEmpty() && told.equals(kept);
        }

        @Override
        public String toString() {
            return "seed " + seed + ": " + comebacks + (isGood() ? "" : ", problems " + problems + differences());
        }

        private String differences() {
            List<Integer> lost = new ArrayList<>(told);
            kept.forEach(lost::remove);
            List<Integer> extra = new ArrayList<>(kept);
            told.forEach(extra::remove);
            return ", of " + told.size() + " told lost " + lost + ", kept without being told or twice " + extra;
        }
    }

    private final long seed;
    private final SplittableRandom random;
    private final MonotonicClock clock;
    private final MemoryJournal journal = new MemoryJournal();
    private final List<Comeback> comebacks = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();

    private BluezScript(long seed, double speed) {
        this.seed = seed;
        this.clock = MonotonicClock.scaled(speed);
        this.random = new SplittableRandom(seed);
    }

    /** Plays the script of a seed, so many times as fast as the world. */
    static Outcome play(long seed, double speed) throws InterruptedException {
        return new BluezScript(seed, speed).play();
    }

    private Outcome play() throws InterruptedException {
        try (ScriptBus bus = ScriptBus.start();
                FakeBluez bluez = new FakeBluez(bus.address(), clock, new SplittableRandom(seed + 1))) {
            bluez.tree().paired = random.nextBoolean();
            Trouble first = draw();
            boolean early = random.nextBoolean();
            if (early) {
                first.strike(bluez, random);
            }
            BluetoothCapture capture = start(bus);
            try {
                trouble(bluez, capture, first, early);
                bluez.halt();
                awaitKept(bluez);
            } finally {
                capture.close();
            }
            if (capture.ended().isCompletedExceptionally()) {
                problems.add("the capture ended with an exception");
            }
            if (bluez.tree().paired && !bluez.removals().isEmpty()) {
                problems.add("a paired device was removed");
            }
            return new Outcome(seed, comebacks, bluez.told(), kept(), problems);
        }
    }

    private BluetoothCapture start(ScriptBus bus) {
        BluetoothCapture.Settings settings =
                new BluetoothCapture.Settings(CentralSettings.usual(), PipelineSettings.forBoard());
        return BluetoothCapture.start(
                bus.address(), CaptureTarget.of(OpenLayout.profile()), settings, clock, journal, List.of());
    }

    private void trouble(FakeBluez bluez, BluetoothCapture capture, Trouble first, boolean struckBefore)
            throws InterruptedException {
        if (!struckBefore) {
            awaitTurning(bluez, capture, first, true, Duration.ZERO);
            comebacks.clear();
        }
        awaitTurning(bluez, capture, first, struckBefore, struckBefore ? Duration.ZERO : first.strike(bluez, random));
        bluez.straighten();
        for (int more = random.nextInt(3); more > 0 && problems.isEmpty(); more--) {
            Trouble next = draw();
            awaitTurning(bluez, capture, next, false, next.strike(bluez, random));
            bluez.straighten();
        }
    }

    private Trouble draw() {
        Trouble[] all = Trouble.values();
        return all[random.nextInt(all.length)];
    }

    /** Waits until a turn made after the trouble's end is in the journal. */
    private void awaitTurning(
            FakeBluez bluez, BluetoothCapture capture, Trouble trouble, boolean fromStart, Duration lasts)
            throws InterruptedException {
        clock.sleep(lasts);
        long from = clock.nanos();
        int turned = bluez.turned();
        while (kept().stream().noneMatch(number -> number > turned)) {
            Duration took = Duration.ofNanos(clock.nanos() - from);
            if (capture.ended().isDone() || took.compareTo(GIVE_UP) > 0) {
                problems.add("not back after " + trouble + ": " + capture.status() + " " + journal.changes());
                return;
            }
            Thread.sleep(POLL_MILLIS);
        }
        comebacks.add(new Comeback(trouble, fromStart, Duration.ofNanos(clock.nanos() - from)));
    }

    /** Waits until the last that was told is kept, or for so long that it never will be. */
    private void awaitKept(FakeBluez bluez) throws InterruptedException {
        long until = clock.nanos() + Duration.ofSeconds(40).toNanos();
        while (!kept().equals(bluez.told()) && clock.nanos() < until) {
            Thread.sleep(POLL_MILLIS);
        }
    }

    private List<Integer> kept() {
        return journal.frames().stream()
                .filter(frame -> frame.characteristicUuid().equals(OpenLayout.TURNS.toString()))
                .map(BluezScript::number)
                .toList();
    }

    /** Bytes 1 and 2 of a turns frame, docs/stream-profile.md. */
    private static int number(HeardFrame frame) {
        byte[] bytes = frame.bytes();
        return bytes[1] & 0xFF | (bytes[2] & 0xFF) << 8;
    }
}
