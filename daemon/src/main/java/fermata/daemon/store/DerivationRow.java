package fermata.daemon.store;

import java.util.Objects;

/**
 * What was derived from a capture, and from how much of it by which version.
 *
 * @param captureId the capture
 * @param codeVersion what derived it
 * @param extent how far it was read: see {@link Captures#extent}
 * @param heard turns heard
 * @param repaired turns read from a later frame's history
 * @param lost turns known to be lost
 * @param attempts attempts found, solved or not
 */
public record DerivationRow(
        long captureId, String codeVersion, String extent, long heard, long repaired, long lost, long attempts) {
    public DerivationRow {
        Objects.requireNonNull(codeVersion, "codeVersion");
        Objects.requireNonNull(extent, "extent");
    }
}
