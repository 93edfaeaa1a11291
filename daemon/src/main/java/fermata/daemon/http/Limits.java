package fermata.daemon.http;

/**
 * How many connections may be open at once.
 *
 * @param fromOneAddress from one address
 * @param inAll from all addresses together
 */
public record Limits(int fromOneAddress, int inAll) {
    public Limits {
        if (fromOneAddress < 1 || inAll < fromOneAddress) {
            throw new IllegalArgumentException(
                    "connections must be 1 or more from one address and no fewer in all, not " + fromOneAddress
                            + " and " + inAll);
        }
    }
}
