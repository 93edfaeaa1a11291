package fermata.daemon.bluetooth;

import java.time.Duration;
import java.util.Optional;

/**
 * The central's patience. All durations are on the injected clock.
 *
 * @param callLimit longest wait for the answer to one D-Bus call
 * @param connectLimit longest wait for a link
 * @param resolveLimit longest wait for the services of a link, and then for the wanted characteristics
 * @param silenceLimit after so long without a frame the device is asked whether it is there
 * @param adapterAddress which adapter to use; the first powered one when empty
 * @param mayResetAdapter whether to power-cycle an adapter that hangs; it takes every other device's link with it
 */
public record CentralSettings(
        Duration callLimit,
        Duration connectLimit,
        Duration resolveLimit,
        Duration silenceLimit,
        Optional<String> adapterAddress,
        boolean mayResetAdapter) {
    public CentralSettings {
        for (Duration limit : new Duration[] {callLimit, connectLimit, resolveLimit, silenceLimit}) {
            if (limit.isNegative() || limit.isZero()) {
                throw new IllegalArgumentException("a limit of " + limit + " is not above zero");
            }
        }
    }

    /**
     * 20 s for links and services: beyond that BlueZ itself has given up (its own limit is 25 s) or hangs. 10 s for
     * calls: a link over which no packet came for so long is given up by the kernel, at 0.42 s as a rule and at 10 s
     * where somebody has raised that. Two minutes of silence: longer than a solver's usual pause, so that a sleeping
     * solver costs a read every two minutes and no more; before that see {@link LinkVigil}.
     */
    public static CentralSettings usual() {
        Duration link = Duration.ofSeconds(20);
        return new CentralSettings(Duration.ofSeconds(10), link, link, Duration.ofMinutes(2), Optional.empty(), false);
    }

    /** The same with another limit of silence. */
    public CentralSettings withSilenceLimit(Duration newLimit) {
        return new CentralSettings(callLimit, connectLimit, resolveLimit, newLimit, adapterAddress, mayResetAdapter);
    }

    /** The same on one adapter, by its address; with several the first powered one may be the wrong one. */
    public CentralSettings onAdapter(String address) {
        return new CentralSettings(
                callLimit, connectLimit, resolveLimit, silenceLimit, Optional.of(address), mayResetAdapter);
    }

    /** The same, allowed to power-cycle the adapter: for a board whose adapter serves nothing else. */
    public CentralSettings owningAdapter() {
        return new CentralSettings(callLimit, connectLimit, resolveLimit, silenceLimit, adapterAddress, true);
    }
}
