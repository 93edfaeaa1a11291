package fermata.daemon.virtualcube;

import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.concurrent.CompletableFuture;
import java.util.random.RandomGenerator;

/**
 * The loop that turns the cube by the script and lets the radio carry what the firmware says.
 *
 * <p>Assumptions: (1) one thread runs it; (2) the script is sorted by time. Guarantees: (1) the script begins one
 * second after the first subscription, so that nothing is made before somebody listens; (2) every turn is made,
 * whether the link is up or not; (3) notifications leave in the order of their turns and never before their connection
 * event; (4) it ends when the last turn is announced, which after a cut means: when somebody has subscribed again.
 */
final class ScriptPlayer implements Runnable {
    private static final Duration LEAD = Duration.ofSeconds(1);

    private record Pending(long atNanos, byte[] frame) {}

    private final VirtualCube.Setup setup;
    private final MonotonicClock clock;
    private final RandomGenerator random;
    private final CubeFirmware firmware;
    private final CompletableFuture<CubeTruth> finished = new CompletableFuture<>();
    private final BitSet cutsBefore = new BitSet();
    private final ArrayDeque<Pending> pending = new ArrayDeque<>();

    private VirtualBluez bluez;
    private boolean subscribedOnce;
    private boolean resubscribed;
    private boolean closed;
    private long originNanos;
    private long lastDeliveryNanos;

    private long turnsMade;
    private long turnsAnnounced;
    private long sent;
    private long awaitedNanos;
    private long lost;
    private long doubled;
    private long died;
    private long cuts;

    ScriptPlayer(VirtualCube.Setup setup, MonotonicClock clock, RandomGenerator random) {
        this.setup = setup;
        this.clock = clock;
        this.random = random;
        // Drawn beforehand, so that the seed alone decides where, and not how fast somebody reconnects.
        for (int i = 0; i < setup.script().size(); i++) {
            cutsBefore.set(i, random.nextDouble() < setup.radio().disconnectShare());
        }
        this.firmware = new CubeFirmware(setup, this::deviceMillis, this::subscribed);
    }

    CubeFirmware firmware() {
        return firmware;
    }

    void playOn(VirtualBluez virtualBluez) {
        bluez = virtualBluez;
    }

    CompletableFuture<CubeTruth> finished() {
        return finished;
    }

    synchronized CubeTruth truth() {
        return new CubeTruth(turnsMade, turnsAnnounced, sent, lost, doubled, died, cuts);
    }

    private synchronized long deviceMillis() {
        return setup.clock().readingMillis(subscribedOnce ? clock.nanos() - originNanos : 0);
    }

    private synchronized void subscribed() {
        if (!subscribedOnce) {
            subscribedOnce = true;
            originNanos = clock.nanos() + LEAD.toNanos();
        }
        resubscribed = true;
        notifyAll();
    }

    synchronized void close() {
        closed = true;
        notifyAll();
    }

    @Override
    public void run() {
        try {
            awaitSubscriber();
            for (int i = 0; i < setup.script().size(); i++) {
                ScriptedTurn next = setup.script().get(i);
                long dueNanos = setup.clock().worldNanos(next.atMicros());
                deliverUntil(dueNanos);
                if (cutsBefore.get(i) && bluez.isConnected()) {
                    cut();
                }
                make(next, dueNanos);
            }
            while (!isClosed() && (!pending.isEmpty() || firmware.unannounced() > 0)) {
                deliverUntil(pending.isEmpty() ? elapsedNanos() + LEAD.toNanos() : lastDeliveryNanos);
            }
            finished.complete(truth());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            finished.cancel(false);
        } catch (RuntimeException | Error e) {
            finished.completeExceptionally(e);
        }
    }

    /** Whether something was due by the clock that has not been done yet. */
    synchronized boolean isBehind() {
        return subscribedOnce && !finished.isDone() && elapsedNanos() > awaitedNanos;
    }

    private synchronized boolean isClosed() {
        return closed;
    }

    private long elapsedNanos() {
        return clock.nanos() - originNanos;
    }

    private synchronized void awaitSubscriber() throws InterruptedException {
        while (!subscribedOnce && !closed) {
            wait();
        }
        resubscribed = false;
        checkOpen();
    }

    private void checkOpen() throws InterruptedException {
        if (closed) {
            throw new InterruptedException("the virtual cube was closed before its script ended");
        }
    }

    /** Delivers what falls due until {@code untilNanos} since the script began. */
    private void deliverUntil(long untilNanos) throws InterruptedException {
        while (true) {
            long next = pending.isEmpty()
                    ? untilNanos
                    : Math.min(untilNanos, pending.peekFirst().atNanos());
            if (waitUntil(next)) {
                announceLate();
            } else if (!pending.isEmpty() && pending.peekFirst().atNanos() <= next) {
                deliver(pending.removeFirst().frame());
            } else {
                return;
            }
        }
    }

    /** Waits; true when it was cut short by somebody who subscribed again. */
    private synchronized boolean waitUntil(long sinceOriginNanos) throws InterruptedException {
        awaitedNanos = sinceOriginNanos;
        while (true) {
            checkOpen();
            if (resubscribed) {
                resubscribed = false;
                return true;
            }
            long leftNanos = clock.machineNanos(Duration.ofNanos(sinceOriginNanos - elapsedNanos()));
            if (leftNanos <= 0) {
                return false;
            }
            wait(leftNanos / 1_000_000, (int) (leftNanos % 1_000_000));
        }
    }

    private void make(ScriptedTurn next, long dueNanos) {
        if (setup.radio().disconnectShare() > 0
                && random.nextDouble() < setup.radio().disconnectShare()) {
            cut();
        }
        firmware.make(next.turn(), setup.clock().readingAtMicros(next.atMicros()));
        synchronized (this) {
            turnsMade++;
        }
        if (bluez.isNotifying(OpenLayout.TURNS)) {
            announce(dueNanos);
        }
    }

    private void announceLate() {
        if (firmware.unannounced() > 0) {
            announce(elapsedNanos());
        }
    }

    private void announce(long atNanos) {
        // Asked outside the lock: the firmware asks this object for the time while it holds its own.
        int fresh = Math.min(firmware.unannounced(), OpenLayout.TURNS_A_FRAME);
        synchronized (this) {
            turnsAnnounced += fresh;
        }
        lastDeliveryNanos = Math.max(lastDeliveryNanos, setup.radio().deliveryNanos(atNanos, random));
        pending.addLast(new Pending(lastDeliveryNanos, firmware.announce()));
    }

    private void cut() {
        bluez.dropLink(setup.radio().outage());
        synchronized (this) {
            cuts++;
            died += pending.size();
        }
        pending.clear();
    }

    private void deliver(byte[] frame) {
        boolean swallow = random.nextDouble() < setup.radio().lossShare();
        boolean twice = random.nextDouble() < setup.radio().duplicateShare();
        boolean arrived = !swallow && bluez.send(OpenLayout.TURNS, frame);
        if (arrived && twice) {
            bluez.send(OpenLayout.TURNS, frame);
        }
        synchronized (this) {
            lost += swallow ? 1 : 0;
            died += !swallow && !arrived ? 1 : 0;
            sent += arrived ? 1 : 0;
            doubled += arrived && twice ? 1 : 0;
        }
    }
}
