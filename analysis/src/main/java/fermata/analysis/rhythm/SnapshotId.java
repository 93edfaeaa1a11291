package fermata.analysis.rhythm;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/** Names frozen parameters by their values. */
public final class SnapshotId {
    private SnapshotId() {}

    /** Of numbers by their bits: how a number is written differs between releases of Java. */
    public static String of(DoubleStream values) {
        return of(values.mapToObj(value -> Long.toHexString(Double.doubleToLongBits(value)))
                .collect(Collectors.joining(" ")));
    }

    /** Twelve hexadecimal digits of a SHA-256. */
    public static String of(String values) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(values.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 6);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must have SHA-256", missing);
        }
    }
}
