package fermata.daemon.capture;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/**
 * The only thing that the signal thread and the writer share: a queue bounded in frames.
 *
 * <p>Assumptions: (1) many producers, one consumer; (2) link events are few. Guarantees: (1) first in, first out; (2)
 * putting in and taking out wait for anything but the lock, which is never held over I/O; (3) a frame that finds no
 * room leaves a {@link DroppedFrames} in its place, and a run of them leaves one; (4) once shut, nothing enters.
 */
final class CaptureQueue {
    private final int capacityFrames;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition changed = lock.newCondition();
    private final ArrayDeque<CapturedItem> items = new ArrayDeque<>();
    private final Set<String> patient;
    private int frames;
    private int hurried;
    private boolean shut;

    /**
     * An empty queue.
     *
     * @param patient UUIDs of the characteristics whose frames tell no turn
     */
    CaptureQueue(int capacityFrames, Set<String> patient) {
        this.capacityFrames = capacityFrames;
        this.patient = Set.copyOf(patient);
    }

    /** Adds a frame; false when there is no room or the queue is shut. */
    boolean offer(HeardFrame frame) {
        lock.lock();
        try {
            if (shut) {
                return false;
            }
            if (frames >= capacityFrames) {
                addDrop(frame);
                return false;
            }
            frames++;
            hurried += isHurried(frame) ? 1 : 0;
            items.addLast(frame);
            changed.signalAll();
            return true;
        } finally {
            lock.unlock();
        }
    }

    /** Adds a link event, whether there is room or not. */
    void add(LinkEvent event) {
        lock.lock();
        try {
            if (!shut) {
                items.addLast(event);
                changed.signalAll();
            }
        } finally {
            lock.unlock();
        }
    }

    private void addDrop(HeardFrame frame) {
        if (items.peekLast() instanceof DroppedFrames run && run.connection() == frame.connection()) {
            items.removeLast();
            items.addLast(new DroppedFrames(run.connection(), run.ordinal(), run.atNanos(), run.frames() + 1));
        } else {
            items.addLast(new DroppedFrames(frame.connection(), frame.ordinal(), frame.arrivalNanos(), 1));
        }
    }

    /** Waits until something is there; false when nothing is there and the queue is shut. */
    boolean awaitSomething() throws InterruptedException {
        lock.lock();
        try {
            while (items.isEmpty() && !shut) {
                changed.await();
            }
            return !items.isEmpty();
        } finally {
            lock.unlock();
        }
    }

    /** Waits until something is there or the queue is shut; false when so many machine nanoseconds passed before. */
    boolean awaitSomething(long machineNanos) throws InterruptedException {
        long left = machineNanos;
        lock.lock();
        try {
            while (items.isEmpty() && !shut && left > 0) {
                left = changed.awaitNanos(left);
            }
            return !items.isEmpty() || shut;
        } finally {
            lock.unlock();
        }
    }

    /** Frames that wait. */
    int frames() {
        lock.lock();
        try {
            return frames;
        } finally {
            lock.unlock();
        }
    }

    /** Waits until the queue is shut, or for so many machine nanoseconds; true when it is shut. */
    boolean awaitShut(long machineNanos) throws InterruptedException {
        long left = machineNanos;
        lock.lock();
        try {
            while (!shut && left > 0) {
                left = changed.awaitNanos(left);
            }
            return shut;
        } finally {
            lock.unlock();
        }
    }

    private boolean isHurried(HeardFrame frame) {
        return !patient.contains(frame.characteristicUuid());
    }

    /**
     * Waits until the queue is shut or {@code machineNanos} have passed; {@code hurriedNanos} are enough while a frame
     * waits that may tell a turn.
     */
    void awaitRest(long machineNanos, long hurriedNanos) throws InterruptedException {
        lock.lock();
        try {
            long waited = 0;
            long left = hurried > 0 ? hurriedNanos : machineNanos;
            while (!shut && left > 0) {
                waited += left - changed.awaitNanos(left);
                left = (hurried > 0 ? hurriedNanos : machineNanos) - waited;
            }
        } finally {
            lock.unlock();
        }
    }

    /** Takes up to {@code most} items without waiting. */
    List<CapturedItem> take(int most) {
        lock.lock();
        try {
            List<CapturedItem> taken = new ArrayList<>(Math.min(most, items.size()));
            while (taken.size() < most && !items.isEmpty()) {
                CapturedItem item = items.removeFirst();
                if (item instanceof HeardFrame frame) {
                    frames--;
                    hurried -= isHurried(frame) ? 1 : 0;
                }
                taken.add(item);
            }
            return taken;
        } finally {
            lock.unlock();
        }
    }

    /** Lets nothing in any more; what is inside can still be taken. */
    void shut() {
        lock.lock();
        try {
            shut = true;
            changed.signalAll();
        } finally {
            lock.unlock();
        }
    }
}
