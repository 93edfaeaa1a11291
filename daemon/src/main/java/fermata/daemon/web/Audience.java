package fermata.daemon.web;

import fermata.daemon.pairing.PairingDesk;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Who can reach the pages.
 *
 * @param pairing where browsers on other machines are paired; empty: this machine only
 * @param names the names other machines call this one by, lower case, without port
 */
public record Audience(Optional<PairingDesk> pairing, Set<String> names) {
    public Audience {
        Objects.requireNonNull(pairing, "pairing");
        names = Set.copyOf(names);
    }

    /** Only browsers on this machine. */
    public static Audience thisMachine() {
        return new Audience(Optional.empty(), Set.of());
    }

    /** Browsers on the same network too, once they were paired. */
    public static Audience network(PairingDesk pairing) {
        Set<String> names = new LinkedHashSet<>();
        try {
            String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
            names.add(name);
            // What multicast DNS calls a machine (RFC 6762).
            names.add(name.replaceAll("\\..*", "") + ".local");
        } catch (UnknownHostException nameless) {
            // Then it is called by its address.
            return new Audience(Optional.of(pairing), Set.of());
        }
        return new Audience(Optional.of(pairing), names);
    }
}
