package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.LinkSession.Surroundings;
import fermata.daemon.bluetooth.LinkStatus.State;
import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.profile.StreamProfile.KeepAlive;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.freedesktop.dbus.types.Variant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The loop that finds the cube, listens to it, and begins again.
 *
 * <p>Assumptions: (1) one thread runs it; (2) nobody else of this process talks to the same device. Guarantees: (1) it
 * ends only by {@link #stop()} or by a fault of our own making ({@link LinkFault#BUG}); (2) every fault is classified,
 * counted and written to the journal; (3) scanning and connecting never overlap with another scan or attempt of ours;
 * (4) every handler of a connection is gone when the connection is over; (5) after a bus or service loss everything is
 * looked up anew.
 */
final class BluetoothCentral implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(BluetoothCentral.class);
    private static final Duration RESET_PAUSE = Duration.ofSeconds(1);
    private static final int SET_UPS_BEFORE_FORGETTING = 3;

    private final String busAddress;
    private final CaptureTarget target;
    private final CentralSettings settings;
    private final CaptureIntake intake;
    private final MonotonicClock clock;
    private final LinkWatch watch;
    private final DeviceFinder finder;
    private final RetryPolicy policy = new RetryPolicy();
    private final CompletableFuture<Void> ended = new CompletableFuture<>();

    private volatile LinkStatus status = new LinkStatus(State.WAITING_FOR_SERVICE, "");
    private int failedSetUps;
    private boolean servicePresent;
    private long reportedGeneration;

    BluetoothCentral(
            String busAddress,
            CaptureTarget target,
            CentralSettings settings,
            CaptureIntake intake,
            MonotonicClock clock) {
        this.busAddress = busAddress;
        this.target = target;
        this.settings = settings;
        this.intake = intake;
        this.clock = clock;
        this.watch = new LinkWatch(clock);
        this.finder = new DeviceFinder(target, settings, watch, clock, detail -> tell(State.SCANNING, detail));
    }

    LinkStatus status() {
        return status;
    }

    CompletableFuture<Void> ended() {
        return ended;
    }

    void stop() {
        watch.stop();
    }

    @Override
    public void run() {
        try {
            while (!watch.isStopped()) {
                try (BluezBus bus = BluezBus.open(busAddress, watch, settings.callLimit())) {
                    serve(bus);
                } catch (LinkException e) {
                    pauseAfter(e, Optional.empty());
                }
            }
            tell(State.STOPPED, "");
            ended.complete(null);
        } catch (RuntimeException | Error e) {
            tell(State.STOPPED, String.valueOf(e.getMessage()));
            ended.completeExceptionally(e);
        }
    }

    /** Works as long as the bus lives. */
    private void serve(BluezBus bus) {
        while (!watch.isStopped() && !watch.isBusLost()) {
            awaitService();
            Optional<String> owner = watch.owner();
            if (owner.isPresent()) {
                try {
                    serveOwner(bus, owner.get());
                } catch (LinkException e) {
                    pauseAfter(e, Optional.of(bus));
                }
            }
        }
    }

    private void awaitService() {
        if (watch.owner().isEmpty() || watch.generation() != reportedGeneration) {
            reportService(false);
        }
        if (watch.owner().isEmpty()) {
            tell(State.WAITING_FOR_SERVICE, "waiting for the Bluetooth service; is bluetoothd running?");
            watch.awaitEver(() -> watch.owner().isPresent() || watch.isOverForAll());
        }
        if (watch.owner().isPresent()) {
            reportService(true);
        }
    }

    /** Writes down that the service came or went, once each, also when it came back before anybody looked. */
    private void reportService(boolean present) {
        if (present != servicePresent) {
            servicePresent = present;
            reportedGeneration = present ? watch.generation() : reportedGeneration;
            intake.link(clock.nanos(), new LinkChange.Service(present, reportedGeneration));
        }
    }

    private void serveOwner(BluezBus bus, String owner) {
        Subscription tree = bus.followTree(owner);
        try {
            Optional<DeviceFinder.Found> found = finder.find(bus);
            if (found.isPresent()) {
                serveDevice(bus, owner, found.get());
            }
        } finally {
            tree.close();
        }
    }

    private void serveDevice(BluezBus bus, String owner, DeviceFinder.Found found) {
        tell(State.CONNECTING, found.device().name());
        intake.link(
                clock.nanos(),
                new LinkChange.Discovered(
                        found.device().address(), found.device().name()));
        Surroundings around = new Surroundings(watch, intake, clock);
        try (LinkSession session = new LinkSession(bus, owner, found.device(), target, settings, around)) {
            try {
                try {
                    session.connect();
                } finally {
                    found.scan().close();
                }
                session.setUp();
                failedSetUps = 0;
                policy.succeeded();
                tell(State.LISTENING, found.device().name());
                listen(session);
                LinkWatch.Loss loss = watch.loss().orElse(new LinkWatch.Loss(LossReason.STOPPED, ""));
                session.end(loss.reason(), loss.detail());
            } catch (LinkException e) {
                endBadly(session, found, e);
            }
        }
    }

    private void endBadly(LinkSession session, DeviceFinder.Found found, LinkException e) {
        Optional<LinkWatch.Loss> loss = lossBehind(session);
        if (loss.isPresent() && session.isDelivering()) {
            // The call failed because the link did; that is a loss, not a fault of its own.
            session.end(loss.get().reason(), loss.get().detail());
            return;
        }
        LossReason own = session.isDelivering() ? LossReason.SILENT : LossReason.SET_UP_FAILED;
        session.end(
                watch.isStopped()
                        ? LossReason.STOPPED
                        : loss.map(LinkWatch.Loss::reason).orElse(own),
                e.getMessage());
        if (!session.isDelivering() && ++failedSetUps % SET_UPS_BEFORE_FORGETTING == 0 && loss.isEmpty()) {
            session.forgetDevice(found.adapter().path());
        }
        throw e;
    }

    /** What was lost when a call failed, also when the signal that says so comes after the call's answer. */
    private Optional<LinkWatch.Loss> lossBehind(LinkSession session) {
        Optional<LinkWatch.Loss> known = watch.loss();
        if (known.isEmpty()) {
            session.hangUp();
        }
        // That the link and its objects go is our own doing once we hang up.
        return known.or(() -> watch.loss()
                .filter(each -> each.reason() == LossReason.SERVICE_GONE || each.reason() == LossReason.BUS_GONE));
    }

    /** Returns when the link is lost or the capture stopped; throws when the device no longer answers. */
    private void listen(LinkSession session) {
        List<Long> keepAliveDue = new ArrayList<>();
        target.keepAlive()
                .forEach(each -> keepAliveDue.add(
                        clock.nanos() + Duration.ofMillis(each.periodMillis()).toNanos()));
        long provedNanos = clock.nanos();
        while (!watch.isOver()) {
            long now = clock.nanos();
            for (int i = 0; i < keepAliveDue.size(); i++) {
                KeepAlive each = target.keepAlive().get(i);
                if (now - keepAliveDue.get(i) >= 0) {
                    session.write(each.write());
                    keepAliveDue.set(
                            i, now + Duration.ofMillis(each.periodMillis()).toNanos());
                }
            }
            provedNanos = Math.max(provedNanos, session.lastFrameNanos());
            if (now - provedNanos >= settings.silenceLimit().toNanos()) {
                session.provePresence();
                provedNanos = clock.nanos();
            }
            long next = provedNanos + settings.silenceLimit().toNanos();
            for (long due : keepAliveDue) {
                next = Math.min(next, due);
            }
            watch.pause(watch::isOver, Duration.ofNanos(Math.max(0, next - clock.nanos())));
        }
    }

    private void pauseAfter(LinkException e, Optional<BluezBus> bus) {
        if (watch.isStopped()) {
            return;
        }
        intake.link(clock.nanos(), new LinkChange.Refused(e.fault(), String.valueOf(e.getMessage())));
        if (e.fault() == LinkFault.BUG) {
            throw new IllegalStateException("Bluetooth capture made a wrong request and stops: " + e.getMessage(), e);
        }
        RetryPolicy.Step step = policy.after(e.fault());
        LOG.debug("{}; next try in {}", e.getMessage(), step.pause());
        tell(State.PAUSING, e.getMessage());
        if (step.fault() == LinkFault.RESET_ADAPTER && settings.mayResetAdapter()) {
            bus.ifPresent(this::resetAdapter);
        }
        long generation = watch.generation();
        watch.pause(() -> watch.isStopped() || watch.generation() != generation, step.pause());
    }

    private void resetAdapter(BluezBus bus) {
        try {
            Optional<ObjectSnapshot.Adapter> adapter = finder.adapter(bus.objects());
            if (adapter.isPresent()) {
                bus.setProperty(adapter.get().path(), BluezBus.ADAPTER, "Powered", new Variant<>(false));
                watch.pause(watch::isStopped, RESET_PAUSE);
                bus.setProperty(adapter.get().path(), BluezBus.ADAPTER, "Powered", new Variant<>(true));
            }
        } catch (LinkException e) {
            LOG.warn("the adapter could not be reset: {}", e.getMessage());
        }
    }

    private void tell(State state, String detail) {
        status = new LinkStatus(state, detail);
    }
}
