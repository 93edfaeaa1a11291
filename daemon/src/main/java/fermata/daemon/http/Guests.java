package fermata.daemon.http;

import java.net.InetAddress;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Counts who is connected. This machine's own clients have places of their own, so that no one on the network can take
 * them. Thread-safe; the memory is that of the addresses that are connected now.
 */
final class Guests {
    private final House network;
    private final House here;

    Guests(Limits network, Limits here) {
        this.network = new House(network);
        this.here = new House(here);
    }

    /** A place that was taken; leaving it twice is leaving it once. */
    @FunctionalInterface
    interface Place {
        void leave();
    }

    /** A place for a client; none if its address or all together have theirs: then the caller hangs up. */
    Optional<Place> enter(InetAddress address) {
        House house = address.isLoopbackAddress() ? here : network;
        if (!house.take(address)) {
            return Optional.empty();
        }
        AtomicBoolean left = new AtomicBoolean();
        return Optional.of(() -> {
            if (left.compareAndSet(false, true)) {
                house.free(address);
            }
        });
    }

    private static final class House {
        private final Limits limits;
        private final Map<InetAddress, Integer> taken = new HashMap<>();
        private int all;

        House(Limits limits) {
            this.limits = limits;
        }

        synchronized boolean take(InetAddress address) {
            int before = taken.getOrDefault(address, 0);
            if (all >= limits.inAll() || before >= limits.fromOneAddress()) {
                return false;
            }
            taken.put(address, before + 1);
            all++;
            return true;
        }

        synchronized void free(InetAddress address) {
            taken.computeIfPresent(address, (same, count) -> count == 1 ? null : count - 1);
            all--;
        }
    }
}
