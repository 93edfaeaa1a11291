package fermata.daemon.bluetooth;

import fermata.daemon.capture.LossReason;
import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * What the signals have said, as facts that the central's thread can wait for.
 *
 * <p>Assumptions: (1) signals of one bus are told in order by one thread; (2) one thread waits. Guarantees: (1) a fact
 * outlasts its signal, so nothing is missed by waiting late; (2) the first loss of a watched device sticks until the
 * next is watched; (3) what concerns another path changes no fact; (4) facts of an older
 * generation of the service are never taken for those of the present one, because a new generation is a loss of
 * whatever was watched; (5) what an older connection to the bus says late of its end or of the service changes nothing.
 */
final class LinkWatch {
    /** A lost device and the particulars. */
    record Loss(LossReason reason, String detail) {}

    /**
     * The least machine time that a wait for another process may be cut short at: that process does not run by our
     * clock, and a JVM that starts cold on a small board needs this long to answer at all.
     */
    private static final long LEAST_MACHINE_NANOS = TimeUnit.SECONDS.toNanos(5);

    private final MonotonicClock clock;

    private boolean stopped;
    private long busLife;
    private boolean busLost;
    private long generation;
    private long ownerChanges;
    private Optional<String> owner = Optional.empty();
    private long treeChanges;
    private String devicePath = "";
    private Set<String> characteristicPaths = Set.of();
    private long linksSeen;
    private final Set<String> linkedPaths = new HashSet<>();
    private boolean connected;
    private boolean resolved;
    private Optional<Loss> loss = Optional.empty();

    LinkWatch(MonotonicClock clock) {
        this.clock = clock;
    }

    /**
     * Waits until the condition holds; false when {@code limit} passed before. The condition is tested under this
     * object's lock.
     */
    synchronized boolean await(BooleanSupplier condition, Duration limit) {
        return await(condition, patience(limit));
    }

    /**
     * When a limit on another process's work has passed, on the machine's clock: not before the limit on our own, and
     * never so soon that a late machine is taken for a missing answer.
     */
    Deadline patience(Duration limit) {
        return inMachineNanos(Math.max(clock.machineNanos(limit), Math.min(limit.toNanos(), LEAST_MACHINE_NANOS)));
    }

    private static Deadline inMachineNanos(long nanos) {
        return Deadline.in(Duration.ofNanos(nanos), MonotonicClock.system());
    }

    /** Waits for the time itself to pass, cut short by the condition. */
    synchronized boolean pause(BooleanSupplier condition, Duration duration) {
        return await(condition, inMachineNanos(clock.machineNanos(duration)));
    }

    private boolean await(BooleanSupplier condition, Deadline machineDeadline) {
        while (!condition.getAsBoolean()) {
            long left = machineDeadline.leftNanos();
            if (left == 0) {
                return false;
            }
            try {
                wait(left / 1_000_000, (int) (left % 1_000_000));
            } catch (InterruptedException e) {
                stopped = true;
                Thread.currentThread().interrupt();
                return condition.getAsBoolean();
            }
        }
        return true;
    }

    synchronized void stop() {
        stopped = true;
        notifyAll();
    }

    synchronized boolean isStopped() {
        return stopped;
    }

    /**
     * A fresh bus connection: nothing is known yet.
     *
     * @return which life of the bus this is, for what its connection says later: its end is told twice, and the second
     *     time may come when the next connection is open already
     */
    synchronized long busOpened() {
        busLost = false;
        owner = Optional.empty();
        linkedPaths.clear();
        forgetDevice();
        return ++busLife;
    }

    synchronized void busLost(long life, String detail) {
        if (life == busLife) {
            busLost = true;
            lose(LossReason.BUS_GONE, detail);
        }
    }

    synchronized boolean isBusLost() {
        return busLost;
    }

    /** The service's name has this owner now, or none. */
    synchronized void ownerChanged(long life, Optional<String> newOwner) {
        if (life != busLife) {
            return;
        }
        ownerChanges++;
        if (newOwner.equals(owner)) {
            return;
        }
        if (owner.isPresent()) {
            lose(LossReason.SERVICE_GONE, "the Bluetooth service left the bus");
        }
        owner = newOwner;
        linkedPaths.clear();
        generation += newOwner.isPresent() ? 1 : 0;
        notifyAll();
    }

    /** How often anybody said who owns the name; what was asked for before such a word is out of date after it. */
    synchronized long ownerChanges() {
        return ownerChanges;
    }

    synchronized Optional<String> owner() {
        return owner;
    }

    /** Counts the lives of the service that were seen. */
    synchronized long generation() {
        return generation;
    }

    /** Objects came or went that may be those that are waited for. */
    synchronized void treeChanged() {
        treeChanges++;
        notifyAll();
    }

    synchronized long treeChanges() {
        return treeChanges;
    }

    /**
     * From now on this device's signals count; its state is as read.
     *
     * @param ofOwner the life of the service that it was found in; if that is over already, the device is lost
     */
    synchronized void watch(String path, String ofOwner) {
        watchAnew(path);
        if (busLost) {
            lose(LossReason.BUS_GONE, "the bus went before the device was watched");
        } else if (!owner.equals(Optional.of(ofOwner))) {
            lose(LossReason.SERVICE_GONE, "the Bluetooth service left the bus before the device was watched");
        }
    }

    private void watchAnew(String path) {
        devicePath = path;
        characteristicPaths = Set.of();
        connected = false;
        resolved = false;
        loss = Optional.empty();
    }

    /** From now on the going of one of these objects is a loss too. */
    synchronized void watchCharacteristics(Set<String> paths) {
        characteristicPaths = Set.copyOf(paths);
    }

    synchronized void forgetDevice() {
        watchAnew("");
        notifyAll();
    }

    /** Whether a device's link stood when last was heard of it, watched or not. */
    synchronized boolean isLinked(String path) {
        return linkedPaths.contains(path);
    }

    /** Counts the links that were seen to come up. */
    synchronized long linksSeen() {
        return linksSeen;
    }

    synchronized void deviceConnected(String path, boolean nowConnected) {
        boolean news = nowConnected ? linkedPaths.add(path) : linkedPaths.remove(path);
        if (news) {
            linksSeen += nowConnected ? 1 : 0;
            treeChanged();
        }
        if (path.equals(devicePath)) {
            if (connected && !nowConnected) {
                lose(LossReason.LINK_DOWN, "");
            }
            connected = nowConnected;
            notifyAll();
        }
    }

    synchronized void deviceResolved(String path, boolean nowResolved) {
        if (path.equals(devicePath)) {
            resolved = nowResolved;
            notifyAll();
        }
    }

    /** An object lost interfaces; a loss when it is the watched device or one of its watched characteristics. */
    synchronized void removed(String path, List<String> interfaces) {
        boolean device = path.equals(devicePath) && interfaces.contains(BluezBus.DEVICE);
        boolean adapter = devicePath.startsWith(path + "/") && interfaces.contains(BluezBus.ADAPTER);
        boolean characteristic = characteristicPaths.contains(path) && interfaces.contains(BluezBus.CHARACTERISTIC);
        if (device || adapter) {
            linkedPaths.clear();
            lose(LossReason.OBJECT_REMOVED, device ? "the device is no longer known" : "the adapter went");
        } else if (characteristic) {
            lose(LossReason.OBJECT_REMOVED, "a characteristic went");
        }
        if (device || adapter || isBelowDevice(path)) {
            treeChanged();
        }
    }

    /** Whether an object belongs to the watched device. */
    synchronized boolean isBelowDevice(String path) {
        return !devicePath.isEmpty() && path.startsWith(devicePath + "/");
    }

    synchronized boolean isConnected() {
        return connected;
    }

    synchronized boolean isResolved() {
        return resolved;
    }

    synchronized Optional<Loss> loss() {
        return loss;
    }

    /** Whether there is any reason to stop waiting for whatever it is. */
    synchronized boolean isOverForAll() {
        return stopped || busLost;
    }

    /** Whether nobody is there any more to answer a call, or to want the answer. */
    synchronized boolean isServiceGone() {
        return stopped || busLost || owner.isEmpty();
    }

    /** Whether there is any reason to stop waiting for the device. */
    synchronized boolean isOver() {
        return stopped || busLost || loss.isPresent();
    }

    private void lose(LossReason reason, String detail) {
        if (loss.isEmpty()) {
            loss = Optional.of(new Loss(reason, detail));
        }
        notifyAll();
    }
}
