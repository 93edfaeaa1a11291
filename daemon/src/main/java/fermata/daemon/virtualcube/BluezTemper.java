package fermata.daemon.virtualcube;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Queue;

/**
 * How well the virtual BlueZ behaves. Out of the box it behaves; the misbehaviours are those that real installations
 * were seen to have, each for a given number of times. Safe for use by many threads.
 */
public final class BluezTemper {
    private final Queue<String> connectFailures = new ArrayDeque<>();
    private final Queue<String> readFailures = new ArrayDeque<>();
    private int pendingElsewhere;
    private int unresolved;
    private int withoutObjects;
    private int notifyingEarly;
    private int deafScans;
    private Duration adapterAfterName = Duration.ZERO;
    private Duration forgetAfterScan = Duration.ofSeconds(30);

    /**
     * The next {@code times} attempts show the link for a moment and then fail with this text ({@code le-
     * connection-...}).
     */
    public synchronized BluezTemper failConnects(int times, String text) {
        for (int i = 0; i < times; i++) {
            connectFailures.add(text);
        }
        return this;
    }

    /** The next {@code times} attempts are refused as in progress: a dead client's attempt hangs in the service. */
    public synchronized BluezTemper hangInProgress(int times) {
        pendingElsewhere = times;
        return this;
    }

    /** On the next {@code times} links the services are never resolved. */
    public synchronized BluezTemper neverResolve(int times) {
        unresolved = times;
        return this;
    }

    /** On the next {@code times} links the services are called resolved and their objects are absent. */
    public synchronized BluezTemper resolveWithoutObjects(int times) {
        withoutObjects = times;
        return this;
    }

    /** The next {@code times} subscriptions notify the present value before they are answered. */
    public synchronized BluezTemper notifyBeforeAnswer(int times) {
        notifyingEarly = times;
        return this;
    }

    /** The next {@code times} reads fail with this text, as when the peripheral is up and mute. */
    public synchronized BluezTemper failReads(int times, String text) {
        for (int i = 0; i < times; i++) {
            readFailures.add(text);
        }
        return this;
    }

    /**
     * How long a device that is not connected outlives the scan that found it; BlueZ's {@code TemporaryTimeout} is 30
     * s.
     */
    public synchronized BluezTemper forgetAfterScan(Duration after) {
        forgetAfterScan = after;
        return this;
    }

    /** From the next start of the service on, its adapter appears so long after its name. */
    public synchronized BluezTemper adapterLate(Duration after) {
        adapterAfterName = after;
        return this;
    }

    /** The next {@code times} scans run and hear nothing, as with a controller that hangs. */
    public synchronized BluezTemper hearNothing(int times) {
        deafScans = times;
        return this;
    }

    synchronized boolean takesDeafScan() {
        return deafScans > 0 && deafScans-- > 0;
    }

    synchronized Duration adapterAfterName() {
        return adapterAfterName;
    }

    synchronized String nextConnectFailure() {
        String text = connectFailures.poll();
        return text == null ? "" : text;
    }

    synchronized String nextReadFailure() {
        String text = readFailures.poll();
        return text == null ? "" : text;
    }

    synchronized boolean takesInProgress() {
        return pendingElsewhere > 0 && pendingElsewhere-- > 0;
    }

    synchronized boolean takesUnresolved() {
        return unresolved > 0 && unresolved-- > 0;
    }

    synchronized boolean takesWithoutObjects() {
        return withoutObjects > 0 && withoutObjects-- > 0;
    }

    synchronized boolean takesNotifyingEarly() {
        return notifyingEarly > 0 && notifyingEarly-- > 0;
    }

    synchronized Duration forgetsAfterScan() {
        return forgetAfterScan;
    }
}
