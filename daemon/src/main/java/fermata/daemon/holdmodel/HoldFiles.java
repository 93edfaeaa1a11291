package fermata.daemon.holdmodel;

import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.sequence.SequenceBook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The name of the learned model that comes along, and the sequences it was taught beforehand. Stateless. */
public final class HoldFiles {
    private static final String COMMON = "common-sequences.txt";

    private HoldFiles() {}

    /** Names the shipped model in what is derived by it: twelve digits of a SHA-256 over its text forms. Read once. */
    public static String modelId() {
        return Shipped.ID;
    }

    /** Last-layer sequences that many know. */
    public static SequenceBook commonSequences() {
        try (InputStream in = HoldFiles.class.getResourceAsStream(COMMON)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + COMMON);
            }
            return SequenceBook.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Twelve hexadecimal digits that name a text. */
    public static String id(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 6);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must have SHA-256", missing);
        }
    }

    private static final class Shipped {
        static final String ID = id(HoldModel.shippedText());
    }
}
