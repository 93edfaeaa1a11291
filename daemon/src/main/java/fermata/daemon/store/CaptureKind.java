package fermata.daemon.store;

import java.util.Locale;

/** Where the turns of a capture come from. */
public enum CaptureKind {
    /** Frames that were heard over the air; turns are decoded from them. */
    RADIO,
    /** Events that a file told. */
    STREAM;

    /** The word in the database. */
    String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    static CaptureKind of(String written) {
        return valueOf(written.toUpperCase(Locale.ROOT));
    }
}
