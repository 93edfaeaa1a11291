package fermata.daemon.store;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.salvage.SalvagedRow;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The few rows of a damaged database that its many are read by: captures, profiles, characteristics. Not thread-safe.
 */
final class SourceRows {
    private static final Pattern UUID_TEXT =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
    private static final String CAPTURE = "ntttiittttnttt";

    private final Map<Long, Found> captures = new TreeMap<>();
    private final Map<Long, String> profiles = new HashMap<>();
    private final Set<String> uuids = new LinkedHashSet<>();
    private final Map<Long, String> characteristics = new HashMap<>();
    private long lastFrame;

    /**
     * A capture.
     *
     * @param row as it was begun, without its profile
     * @param profileId its profile's number in the damaged database
     * @param isDated whether its date is known to be right, as a number
     * @param framesBefore so many frames of the practice were before it
     * @param isSummed whether its checksum is right; older programs left none
     */
    record Found(CaptureRow row, OptionalLong profileId, long isDated, OptionalLong framesBefore, boolean isSummed) {}

    /** Takes a row if it is one of these. */
    void take(SalvagedRow row) {
        if (row.hasKinds("nt") && UUID_TEXT.matcher(row.text(1)).matches()) {
            characteristics.put(row.rowId(), row.text(1));
            uuids.add(row.text(1));
        } else if (row.hasKinds("ntt") && new Sha256().add(row.text(2)).hex().equals(row.text(1))) {
            profiles.put(row.rowId(), row.text(2));
            Matcher matcher = UUID_TEXT.matcher(row.text(2).toLowerCase(Locale.ROOT));
            while (matcher.find()) {
                uuids.add(matcher.group());
            }
        } else if (row.values().size() >= CAPTURE.length()) {
            capture(row).ifPresent(found -> {
                if (found.isSummed() || !captures.containsKey(row.rowId())) {
                    captures.put(row.rowId(), found);
                }
            });
        } else if (row.hasKinds("iiiiibii")
                && row.number(6) > lastFrame
                && heardOn(row).isPresent()) {
            lastFrame = row.number(6);
        }
    }

    private static Optional<Found> capture(SalvagedRow row) {
        SalvagedRow begin =
                new SalvagedRow(row.rowId(), row.isListed(), row.values().subList(0, CAPTURE.length()));
        if (!begin.hasKinds(CAPTURE)) {
            return Optional.empty();
        }
        try {
            CaptureStart start = new CaptureStart(
                    UUID.fromString(row.text(1)),
                    row.text(3),
                    Instant.ofEpochMilli(row.number(4)),
                    row.number(5),
                    ZoneId.of(row.text(6)),
                    new Origin(row.text(7), row.text(8), Hand.of(row.text(9))),
                    row.text(11));
            CaptureRow capture =
                    new CaptureRow(row.rowId(), CaptureKind.of(row.text(2)), start, "", row.text(12), row.text(13));
            OptionalLong sum = number(row, 16);
            boolean isSummed = sum.isPresent() && sum.getAsLong() == StoredCapture.sum(capture);
            boolean isTaken = isSummed || sum.isEmpty() && row.isListed();
            return isTaken
                    ? Optional.of(
                            new Found(capture, number(row, 10), number(row, 14).orElse(1), number(row, 15), isSummed))
                    : Optional.empty();
        } catch (IllegalArgumentException | DateTimeException | NullPointerException altered) {
            return Optional.empty();
        }
    }

    private static OptionalLong number(SalvagedRow row, int index) {
        return index < row.values().size() && row.values().get(index) instanceof Long number
                ? OptionalLong.of(number)
                : OptionalLong.empty();
    }

    Map<Long, Found> captures() {
        return captures;
    }

    /** The text of a capture's profile; empty if it has none, or it cannot be read. */
    Optional<String> profile(Found capture) {
        return capture.profileId().isPresent()
                ? Optional.ofNullable(profiles.get(capture.profileId().getAsLong()))
                : Optional.empty();
    }

    /** The characteristic of a number, first, and all others that are known. */
    Set<String> characteristics(long id) {
        Set<String> candidates = new LinkedHashSet<>();
        Optional.ofNullable(characteristics.get(id)).ifPresent(candidates::add);
        candidates.addAll(uuids);
        return candidates;
    }

    /** The characteristic by which a frame's checksum is right, of those that are known so far. */
    Optional<String> heardOn(SalvagedRow frame) {
        return characteristics(frame.number(4)).stream()
                .filter(uuid -> FrameRows.sum(
                                frame.number(0),
                                frame.number(1),
                                frame.number(2),
                                frame.number(3),
                                uuid,
                                frame.bytes(5),
                                frame.number(6))
                        == frame.number(7))
                .findFirst();
    }

    /** The largest number that a frame has. */
    long lastFrame() {
        return lastFrame;
    }
}
