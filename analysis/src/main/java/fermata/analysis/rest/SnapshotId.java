package fermata.analysis.rest;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Names frozen parameters by their values. */
final class SnapshotId {
    private SnapshotId() {}

    /** Twelve hexadecimal digits of a SHA-256. */
    static String of(String values) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(values.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 6);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must have SHA-256", missing);
        }
    }
}
