package fermata.daemon.store;

import java.util.Objects;

/**
 * A capture in the store.
 *
 * @param id its number in this store, from 1; solves are named after it
 * @param kind where its turns come from
 * @param start what was known when it began
 * @param profileJson the stream profile that its frames follow; empty for {@link CaptureKind#STREAM}
 * @param header the file's own first line for {@link CaptureKind#STREAM}; else empty
 * @param truth what is known to be true of it from elsewhere (a rehearsal's truth, a stated hold), as JSON; else empty
 */
public record CaptureRow(
        long id, CaptureKind kind, CaptureStart start, String profileJson, String header, String truth) {
    public CaptureRow {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(profileJson, "profileJson");
        Objects.requireNonNull(header, "header");
        Objects.requireNonNull(truth, "truth");
    }
}
