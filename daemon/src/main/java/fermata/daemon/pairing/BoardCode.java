package fermata.daemon.pairing;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Locale;
import java.util.Optional;

/**
 * The other way to pair: a code that the page shows is typed on the board. The process that serves the pages leaves the
 * code's hash in the home while it is shown; the command that has the same code leaves its approval there.
 *
 * <p>Whoever can write into the home owns the practice anyway. Safe for use by many threads.
 */
public final class BoardCode {
    /** Without letters and digits that look alike (after Crockford's Base32). */
    private static final String SIGNS = "23456789abcdefghjkmnpqrstvwxyz";

    private static final int LENGTH = 8;
    private static final String ASKED = "pairing-asked";
    private static final String APPROVED = "pairing-approved";
    private static final SecureRandom RANDOM = new SecureRandom();

    private final PairingFiles files;

    /** The code of a home. */
    public BoardCode(Path home) {
        this.files = new PairingFiles(home);
    }

    /** A code at random. */
    static String draw() {
        StringBuilder code = new StringBuilder();
        for (int sign = 0; sign < LENGTH; sign++) {
            code.append(SIGNS.charAt(RANDOM.nextInt(SIGNS.length())));
        }
        return code.toString();
    }

    /** A page shows this code now; older ones count no more. */
    void ask(String code) {
        withdraw();
        files.write(ASKED, Secrets.hash(code));
    }

    /** No code is shown any more. */
    void withdraw() {
        files.delete(ASKED);
        files.delete(APPROVED);
    }

    /** Whether this code was typed on the board. */
    boolean isApproved(String code) {
        Optional<String> approved = files.read(APPROVED);
        return approved.isPresent() && Secrets.same(approved.get(), Secrets.hash(code));
    }

    /** Typed on the board: true if a page shows this code now. */
    public boolean approve(String code) {
        String hash = Secrets.hash(code.strip().toLowerCase(Locale.ROOT));
        Optional<String> asked = files.read(ASKED);
        boolean right = asked.isPresent() && Secrets.same(asked.get(), hash);
        if (right) {
            files.write(APPROVED, hash);
        }
        return right;
    }
}
