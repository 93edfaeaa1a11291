package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.time.CivilReading;
import fermata.daemon.time.ClockProof;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CivilTimesTest {
    /** The true date of monotonic zero, which no clock here knows before the network tells it. */
    private static final Instant TRUE_ZERO = Instant.parse("2026-10-24T18:00:00Z");

    @TempDir
    Path home;

    /** Clocks that run, are set at random in both directions and sleep; at last the network tells the date. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void shouldGiveEveryCaptureOfAStartItsTrueBeginningWhenTheDateBecomesKnown(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        try (Store store = StoreSamples.open(new Home(home))) {
            List<Long> captures = new ArrayList<>();
            List<Instant> truth = new ArrayList<>();
            long nanos = random.nextLong(1_000_000_000_000L);
            long asleep = 0;
            Instant wrong = Instant.ofEpochSecond(random.nextLong(-1_000, 4_300_000_000L));
            for (int i = 0; i < 4; i++) {
                captures.add(begin(store, "boot " + seed, nanos, wrong));
                truth.add(TRUE_ZERO.plusNanos(nanos + asleep));
                for (int look = 0; look < 3; look++) {
                    store.civilTimes().note(captures.get(i), new CivilReading(wrong, nanos, asleep, ClockProof.NONE));
                    long step = random.nextLong(7_200_000_000_000L);
                    nanos += step;
                    asleep += random.nextInt(4) == 0 ? random.nextLong(36_000_000_000_000L) : 0;
                    wrong = wrong.plusNanos(step).plusSeconds(random.nextLong(-100_000, 100_000));
                }
            }
            assertThat(store.captures().all()).noneMatch(row -> row.start().isDated());

            Instant now = TRUE_ZERO.plusNanos(nanos + asleep);
            store.civilTimes().note(captures.get(3), new CivilReading(now, nanos, asleep, ClockProof.BATTERY));

            for (int i = 0; i < captures.size(); i++) {
                CaptureStart start =
                        store.captures().find(captures.get(i)).orElseThrow().start();
                assertThat(start.isDated()).as("seed " + seed).isTrue();
                assertThat(Duration.between(start.startedWall(), truth.get(i)).abs())
                        .as("seed %d, capture %d", seed, i)
                        .isLessThan(Duration.ofMillis(2));
            }
        }
    }

    @Test
    void shouldLeaveCapturesOfOtherStartsOfTheMachineAlone() {
        try (Store store = StoreSamples.open(new Home(home))) {
            long before = begin(store, "boot 1", 5_000, Instant.EPOCH);
            store.civilTimes().note(before, new CivilReading(Instant.EPOCH, 5_000, 0, ClockProof.NONE));
            long after = begin(store, "boot 2", 9_000, Instant.EPOCH);
            store.civilTimes().note(after, new CivilReading(TRUE_ZERO, 10_000, 0, ClockProof.NETWORK));

            assertThat(store.captures().find(before).orElseThrow().start().isDated())
                    .isFalse();
            assertThat(store.captures().find(after).orElseThrow().start().isDated())
                    .isTrue();
        }
    }

    private static long begin(Store store, String boot, long nanos, Instant wrong) {
        CaptureStart start = new CaptureStart(
                UUID.randomUUID(),
                boot,
                wrong,
                false,
                nanos,
                ZoneId.of("Europe/Oslo"),
                new Origin("galley cube", "cook", Hand.LEFT),
                "radio");
        return store.captures().begin(start, "{}", "").captureId();
    }
}
