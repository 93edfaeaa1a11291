package fermata.daemon.pairing;

import fermata.daemon.json.Json;
import fermata.daemon.store.StoreException;
import fermata.daemon.store.StoreFault;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tools.jackson.core.JacksonException;

/**
 * The browsers that may read this home's practice from other machines. Kept in {@value #FILE} of the home; what is
 * changed by another process counts from the next question on. Safe for use by many threads.
 */
public final class PairedBrowsers {
    static final String FILE = "paired.json";

    /** Old pairings make room: more than these nobody keeps apart. */
    static final int MOST = 32;

    private static final int LONGEST_NAME = 60;

    private final PairingFiles files;

    /**
     * A browser that was paired.
     *
     * @param id names it, to revoke it
     * @param name what it calls itself, as far as it says
     * @param pairedAt when, by civil time, {@code 2026-11-24T20:04:05Z}
     * @param hash of its token
     */
    public record Browser(String id, String name, String pairedAt, String hash) {
        public Browser {
            Objects.requireNonNull(id, "id");
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(pairedAt, "pairedAt");
            Objects.requireNonNull(hash, "hash");
        }
    }

    private record Document(int version, List<Browser> browsers) {
        Document {
            browsers = List.copyOf(browsers);
        }
    }

    /** Those of a home. */
    public PairedBrowsers(Path home) {
        this.files = new PairingFiles(home);
    }

    /**
     * All of them, oldest first.
     *
     * @throws StoreException if the file cannot be read or is damaged
     */
    public List<Browser> list() {
        Optional<String> text = files.read(FILE);
        if (text.isEmpty()) {
            return List.of();
        }
        try {
            // The word null is JSON too.
            return Optional.ofNullable(Json.read(text.get(), Document.class))
                    .map(Document::browsers)
                    .orElseThrow(() -> damaged(null));
        } catch (JacksonException e) {
            throw damaged(e);
        }
    }

    private StoreException damaged(Throwable cause) {
        return new StoreException(
                StoreFault.DAMAGED, files.path(FILE) + " is damaged; delete it, and pair the browsers again", cause);
    }

    /** Whether a browser with this token may read. */
    public boolean isPaired(String token) {
        String hash = Secrets.hash(token);
        return list().stream().anyMatch(browser -> Secrets.same(browser.hash(), hash));
    }

    /**
     * Pairs a browser.
     *
     * @param name what it calls itself
     * @return its token, which is kept nowhere else
     */
    public String pair(String name, Clock clock) {
        String token = Secrets.token();
        String hash = Secrets.hash(token);
        String at = clock.instant().truncatedTo(ChronoUnit.SECONDS).toString();
        files.alone(() -> {
            List<Browser> browsers = new ArrayList<>(list());
            browsers.add(new Browser(hash.substring(0, 8), shown(name), at, hash));
            keep(browsers.subList(Math.max(0, browsers.size() - MOST), browsers.size()));
            return true;
        });
        return token;
    }

    /** Takes the right to read from a browser again; false if there is none with this id. */
    public boolean revoke(String id) {
        return files.alone(() -> {
            List<Browser> browsers = new ArrayList<>(list());
            boolean found = browsers.removeIf(browser -> browser.id().equals(id));
            if (found) {
                keep(browsers);
            }
            return found;
        });
    }

    private void keep(List<Browser> browsers) {
        files.write(FILE, Json.write(new Document(1, browsers)));
    }

    /** What a stranger says of itself goes to a terminal: no control characters, and short. */
    private static String shown(String name) {
        String plain = name.replaceAll("[^\\x20-\\x7e]", "?");
        return plain.substring(0, Math.min(plain.length(), LONGEST_NAME));
    }
}
