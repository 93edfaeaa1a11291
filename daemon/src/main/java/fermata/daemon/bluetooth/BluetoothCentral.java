package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.LinkSession.Surroundings;
import fermata.daemon.bluetooth.LinkStatus.State;
import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.freedesktop.dbus.types.Variant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The loop that finds the cube, listens to it, and begins again.
 *
 * <p>Assumptions: (1) one thread runs it; (2) nobody else of this process talks to the same device. Guarantees: (1) it
 * ends only by {@link #stop()}, or when the virtual machine itself fails, and then says so; (2) every fault is
 * classified, counted and written to the journal; (3) scanning and connecting never overlap with another scan or
 * attempt of ours; (4) no value is taken for a device or a life of the service that it is not of; (5) after a bus or
 * service loss everything is looked up anew.
 */
final class BluetoothCentral implements Runnable {
    private static final Logger LOG = LoggerFactory.getLogger(BluetoothCentral.class);
    private static final Duration RESET_PAUSE = Duration.ofSeconds(1);
    private static final Duration FLAP_PAUSE = Duration.ofMillis(100);
    private static final Duration OWNER_CHECK = Duration.ofSeconds(3);
    private static final int SET_UPS_BEFORE_FORGETTING = 3;

    private final String busAddress;
    private final CaptureTarget target;
    private final CentralSettings settings;
    private final CaptureIntake intake;
    private final MonotonicClock clock;
    private final LinkWatch watch;
    private final DeviceFinder finder;
    private final KeptTap taps;
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
        this.taps = new KeptTap(target.spare(), clock, intake, watch);
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
                } catch (RuntimeException e) {
                    pauseAfter(asFault(e), Optional.empty());
                }
            }
            tell(State.STOPPED, "");
            ended.complete(null);
        } catch (RuntimeException | Error e) {
            tell(State.STOPPED, String.valueOf(e.getMessage()));
            ended.completeExceptionally(e);
        }
    }

    /** What nobody foresaw is a fault like others: a mistake of ours must not cost the evening. */
    private static LinkException asFault(RuntimeException e) {
        if (e instanceof LinkException fault) {
            return fault;
        }
        LOG.error("the capture made a mistake, and goes on", e);
        return FaultTable.unforeseen(e);
    }

    /** Works as long as the bus lives. */
    private void serve(BluezBus bus) {
        try {
            serveWhileItLives(bus);
        } finally {
            taps.close();
        }
    }

    private void serveWhileItLives(BluezBus bus) {
        while (!watch.isStopped() && !watch.isBusLost()) {
            awaitService(bus);
            Optional<String> owner = watch.owner();
            if (owner.isPresent()) {
                try {
                    serveOwner(bus, owner.get());
                } catch (RuntimeException e) {
                    pauseAfter(asFault(e), Optional.of(bus));
                }
            }
        }
    }

    private void awaitService(BluezBus bus) {
        if (watch.owner().isEmpty() || watch.generation() != reportedGeneration) {
            reportService(false);
        }
        if (watch.owner().isEmpty()) {
            tell(State.WAITING_FOR_SERVICE, "waiting for the Bluetooth service; is bluetoothd running?");
            while (watch.owner().isEmpty() && !watch.isOverForAll()) {
                watch.pause(() -> watch.owner().isPresent() || watch.isOverForAll(), OWNER_CHECK);
                // The word that it is there may have been lost, or the word that it went may not have been true.
                bus.verifyOwner();
            }
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
        Subscription tree = bus.followTree(owner, this::noteTree);
        try {
            Optional<DeviceFinder.Found> found = finder.find(bus);
            if (found.isPresent()) {
                serveDevice(bus, owner, found.get());
            }
        } finally {
            tree.close();
        }
    }

    /** Runs on the signal thread, for each object of each neighbour. */
    private void noteTree(BusSignal signal) {
        if (signal instanceof BusSignal.Removed removed) {
            watch.removed(removed.path(), removed.interfaces());
        } else if (signal instanceof BusSignal.Added added
                && (finder.concerns(added) || watch.isBelowDevice(added.path()))) {
            watch.treeChanged();
        }
    }

    private void serveDevice(BluezBus bus, String owner, DeviceFinder.Found found) {
        tell(State.CONNECTING, found.device().name());
        intake.link(
                clock.nanos(),
                new LinkChange.Discovered(
                        found.device().address(), found.device().name()));
        Surroundings around = new Surroundings(watch, intake, clock, taps);
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
                new LinkVigil(session, target, settings, watch, clock).keep();
                LinkWatch.Loss loss = watch.loss().orElse(new LinkWatch.Loss(LossReason.STOPPED, ""));
                session.end(loss.reason(), loss.detail());
            } catch (RuntimeException e) {
                endBadly(session, found, asFault(e));
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
        if (isFlap(found, loss)) {
            intake.link(clock.nanos(), new LinkChange.Refused(e.fault(), String.valueOf(e.getMessage())));
            watch.pause(watch::isOverForAll, FLAP_PAUSE);
            return;
        }
        if (!session.isDelivering() && ++failedSetUps % SET_UPS_BEFORE_FORGETTING == 0 && loss.isEmpty()) {
            session.forgetDevice(found.adapter().path());
        }
        throw e;
    }

    /** Whether the link fell during the set-up and stands again: no attempt failed, and none needs to wait. */
    private boolean isFlap(DeviceFinder.Found found, Optional<LinkWatch.Loss> loss) {
        return loss.filter(each -> each.reason() == LossReason.LINK_DOWN).isPresent()
                && watch.isLinked(found.device().path());
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

    private void pauseAfter(LinkException e, Optional<BluezBus> bus) {
        if (watch.isStopped()) {
            return;
        }
        intake.link(clock.nanos(), new LinkChange.Refused(e.fault(), String.valueOf(e.getMessage())));
        RetryPolicy.Step step = policy.after(e.fault());
        LOG.debug("{}; next try in {}", e.getMessage(), step.pause());
        tell(State.PAUSING, e.getMessage());
        if (step.fault() == LinkFault.RESET_ADAPTER && settings.mayResetAdapter()) {
            bus.ifPresent(this::resetAdapter);
        }
        long generation = watch.generation();
        long links = watch.linksSeen();
        // A link that comes up meanwhile, by whomever, is a better sign than any pause.
        watch.pause(
                () -> watch.isStopped() || watch.generation() != generation || watch.linksSeen() != links,
                step.pause());
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
