package fermata.daemon.store;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.HeardFrame;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Captures and frames for the tests of the store. */
final class StoreSamples {
    static final String CHARACTERISTIC = "b3cb4267-3d05-43d3-a261-fbfdfbcd347f";
    static final LocalDateTime NOW = LocalDateTime.of(2026, 11, 24, 21, 4, 5);

    private StoreSamples() {}

    static CaptureStart start() {
        return new CaptureStart(
                UUID.randomUUID(),
                "boot-1",
                Instant.parse("2026-11-24T20:04:05Z"),
                1_000_000_000L,
                ZoneId.of("Europe/Oslo"),
                new Origin("galley cube", "deckhand", Hand.LEFT),
                "radio");
    }

    static HeardFrame frame(long connection, long ordinal) {
        byte[] bytes = new byte[20];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (connection * 31 + ordinal * 7 + i);
        }
        return new HeardFrame(connection, ordinal, CHARACTERISTIC, 1_000_000_000L + ordinal * 350_000_000L, bytes);
    }

    static List<CapturedItem> frames(long connection, long from, long to) {
        List<CapturedItem> items = new ArrayList<>();
        for (long ordinal = from; ordinal < to; ordinal++) {
            items.add(frame(connection, ordinal));
        }
        return items;
    }

    static Store open(Home home) {
        return Store.openForWriting(home, () -> NOW);
    }
}
