package fermata.daemon.demo;

import fermata.analysis.event.Event;
import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.practice.Practice;
import fermata.daemon.recording.Recording;
import fermata.daemon.recording.RecordingPlan;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.Store;
import fermata.daemon.store.ToldEvent;
import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.time.PacedClock;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import fermata.daemon.turnfile.TurnStream;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * Records an evening from the virtual cube: private bus, BlueZ interface, queue, writer, store, as with a real cube.
 * Takes as long as the evening divided by the speed.
 */
public final class Demo {
    /** When the evening is said to have begun, so that it lies in one practice day at whatever hour the demo is run. */
    private static final LocalTime EVENING = LocalTime.of(20, 10);

    private static final Duration LOOK_EVERY = Duration.ofMillis(50);
    private static final Duration LAST_FRAMES = Duration.ofSeconds(5);

    private final Store store;
    private final DemoPlan plan;
    private final DemoListener listener;

    /**
     * @param store a fresh home, open for writing
     * @param listener hears how far it is
     */
    public Demo(Store store, DemoPlan plan, DemoListener listener) {
        this.store = store;
        this.plan = plan;
        this.listener = listener;
    }

    /**
     * Runs it to the end, or until told to stop; what was recorded by then is kept and analysed.
     *
     * @param isStopped asked again and again
     */
    public DemoResult run(BooleanSupplier isStopped) {
        listener.rehearsing();
        TurnStream evening = RehearsalProcess.run(
                plan.solves(), plan.seed(), store.home().directory().resolve("rehearsal.jsonl"));
        List<ScriptedTurn> script = script(evening);
        long captureId;
        long frames;
        try (PacedClock clock = new PacedClock(plan.speed());
                VirtualCube cube = VirtualCube.start(
                        VirtualCube.Setup.playing(script),
                        clock,
                        new SplittableRandom(plan.seed()),
                        new BluezTemper());
                Recording recording = Recording.start(
                        store,
                        recordingPlan(cube, evening, script),
                        clock,
                        evening.header().truth(),
                        List.of())) {
            FramesInFlight inFlight = new FramesInFlight(cube, recording);
            clock.holdWhile(() -> cube.isBehind() || inFlight.any());
            awaitEnd(cube, recording, script.size(), isStopped);
            captureId = recording.captureId();
            frames = recording.finish().committed();
        }
        announce(evening, captureId);
        return result(captureId, frames);
    }

    private static List<ScriptedTurn> script(TurnStream evening) {
        List<ScriptedTurn> script = new ArrayList<>();
        for (Event event : evening.events()) {
            if (event instanceof Event.Turned turned) {
                script.add(new ScriptedTurn(turned.atMicros(), turned.turn()));
            }
        }
        return script;
    }

    private RecordingPlan recordingPlan(VirtualCube cube, TurnStream evening, List<ScriptedTurn> script) {
        return new RecordingPlan(
                cube.busAddress(),
                OpenLayout.profile(),
                OpenLayout.profileText(),
                evening.header().origin(),
                lastEvening(Duration.of(script.get(script.size() - 1).atMicros(), ChronoUnit.MICROS)),
                plan.clock().getZone(),
                BluetoothCapture.Settings.usual());
    }

    private Instant lastEvening(Duration length) {
        ZonedDateTime now = plan.clock().instant().atZone(plan.clock().getZone());
        ZonedDateTime begin = now.with(EVENING);
        while (begin.plus(length).isAfter(now)) {
            begin = begin.minusDays(1);
        }
        return begin.toInstant();
    }

    private void awaitEnd(VirtualCube cube, Recording recording, int turns, BooleanSupplier isStopped) {
        listener.recording(0, turns, 0);
        while (!isStopped.getAsBoolean() && !cube.finished().isDone() && !recording.isOver()) {
            pause();
            listener.recording(
                    cube.truth().turnsMade(), turns, recording.counts().committed());
        }
        CubeTruth truth = cube.truth();
        // The bus and the disk bring the last frames in their own time, whatever the demo's speed.
        Deadline deadline = Deadline.in(LAST_FRAMES, MonotonicClock.system());
        while (recording.counts().committed() < truth.notificationsSent()
                && !recording.isOver()
                && !deadline.hasPassed()) {
            pause();
        }
        listener.recording(truth.turnsMade(), turns, recording.counts().committed());
    }

    private static void pause() {
        try {
            TimeUnit.NANOSECONDS.sleep(LOOK_EVERY.toNanos());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while recording", e);
        }
    }

    /** Appends the scrambles that were announced, on the capture's clock, as whoever announced them would have. */
    private void announce(TurnStream evening, long captureId) {
        CaptureRow capture = store.captures().find(captureId).orElseThrow();
        long offset = firstTurnAt(new Practice(store).events(capture)) - firstTurnAt(evening.events());
        EventLines lines =
                new EventLines(Long.toString(captureId), capture.start().origin(), StreamClock.DEVICE);
        List<ToldEvent> told = new ArrayList<>();
        for (Event event : evening.events()) {
            if (event instanceof Event.Mark mark) {
                Event moved =
                        new Event.Mark(mark.kind(), mark.text(), mark.origin(), Math.max(0, mark.atMicros() + offset));
                told.add(new ToldEvent(EventLines.kind(moved), Event.VERSION, lines.write(moved)));
            }
        }
        store.captures().append(captureId, told);
    }

    private static long firstTurnAt(List<Event> events) {
        return events.stream()
                .filter(Event.Turned.class::isInstance)
                .mapToLong(Event::atMicros)
                .findFirst()
                .orElse(0);
    }

    private DemoResult result(long captureId, long frames) {
        Practice practice = new Practice(store);
        DerivationRow derivation = practice.derivations().stream()
                .filter(row -> row.captureId() == captureId)
                .findFirst()
                .orElseThrow();
        long solved = practice.solves().solves().stream()
                .filter(solve -> solve.solved())
                .count();
        return new DemoResult(
                store.home().directory().toString(),
                frames,
                new DemoResult.Turns(derivation.heard(), derivation.repaired(), derivation.lost()),
                derivation.attempts(),
                solved);
    }
}
