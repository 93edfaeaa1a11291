package fermata.daemon.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** A SHA-256 (FIPS 180-4) of text in UTF-8, piece by piece. Not thread-safe. */
final class Sha256 {
    private final MessageDigest digest;

    Sha256() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    Sha256 add(String text) {
        digest.update(text.getBytes(StandardCharsets.UTF_8));
        return this;
    }

    /** The digest of all that was added; begins anew. */
    String hex() {
        return HexFormat.of().formatHex(digest.digest());
    }
}
