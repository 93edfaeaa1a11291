package fermata.daemon.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@Timeout(20)
class CapturePipelineTest {
    private static final Duration LIMIT = Duration.ofSeconds(10);
    private static final String UUID = "00002a19-0000-1000-8000-00805f9b34fb";
    private static final String TURNS = "b3cb4267-3d05-43d3-a261-fbfdfbcd347f";

    private final MonotonicClock clock = MonotonicClock.scaled(1000);
    private final MemoryJournal journal = new MemoryJournal();

    @Test
    void shouldCommitEverythingInOrderWhenClosed() {
        CapturePipeline pipeline = start(PipelineSettings.forBoard(), List.of());
        pipeline.intake().connected(5, new LinkChange.Connected("AA", false));
        for (int i = 0; i < 500; i++) {
            pipeline.intake().frame(UUID, 10 + i, new byte[] {(byte) i});
        }
        pipeline.intake().link(600, new LinkChange.Lost(LossReason.STOPPED, ""));

        pipeline.close();

        assertThat(pipeline.ended()).isCompleted();
        assertThat(journal.items()).hasSize(502);
        assertThat(journal.items()).extracting(CapturedItem::ordinal).containsExactlyElementsOf(upTo(502));
        assertThat(journal.items()).extracting(CapturedItem::connection).containsOnly(1L);
        assertThat(journal.frames()).extracting(HeardFrame::arrivalNanos).isSorted();
        assertThat(pipeline.counts().committed()).isEqualTo(500);
        assertThat(pipeline.counts().waiting()).isZero();
    }

    @Test
    void shouldCommitAtOnceAfterAPauseAndGatherWhatComesSoonAfter() throws InterruptedException {
        CapturePipeline pipeline = start(gathering(Duration.ofDays(1)), List.of());
        pipeline.intake().frame(UUID, 1, new byte[1]);
        journal.await(at -> at.frames().size() == 1, LIMIT);
        for (int i = 0; i < 20; i++) {
            pipeline.intake().frame(UUID, 2 + i, new byte[1]);
        }
        pipeline.close();

        assertThat(journal.frames()).hasSize(21);
        assertThat(journal.calls()).isEqualTo(2);
    }

    @Test
    void shouldCommitATurnSoonWhenSamplesCouldWait() throws InterruptedException {
        CapturePipeline pipeline =
                CapturePipeline.start(gathering(Duration.ofMillis(20)), clock, Set.of(UUID), journal, List.of());
        pipeline.intake().frame(UUID, 1, new byte[1]);
        journal.await(at -> at.frames().size() == 1, LIMIT);
        pipeline.intake().frame(TURNS, 2, new byte[1]);
        journal.await(at -> at.frames().size() == 2, LIMIT);
        pipeline.intake().frame(UUID, 3, new byte[1]);
        pipeline.intake().frame(TURNS, 4, new byte[1]);
        journal.await(at -> at.frames().size() == 4, LIMIT);
        pipeline.intake().frame(UUID, 5, new byte[1]);
        pipeline.intake().frame(UUID, 6, new byte[1]);
        pipeline.close();

        assertThat(journal.frames()).extracting(HeardFrame::arrivalNanos).containsExactly(1L, 2L, 3L, 4L, 5L, 6L);
        // The last two waited until the end.
        assertThat(journal.calls()).isEqualTo(4);
    }

    @Test
    void shouldStartOrdinalsAnewWhenAConnectionBegins() {
        CapturePipeline pipeline = start(PipelineSettings.forBoard(), List.of());
        pipeline.intake().link(1, new LinkChange.Discovered("AA", "x"));
        long first = pipeline.intake().connected(2, new LinkChange.Connected("AA", false));
        pipeline.intake().frame(UUID, 3, new byte[1]);
        long second = pipeline.intake().connected(4, new LinkChange.Connected("AA", false));
        pipeline.close();

        assertThat(List.of(first, second)).containsExactly(1L, 2L);
        assertThat(journal.items())
                .extracting(item -> item.connection() + "." + item.ordinal())
                .containsExactly("0.0", "1.0", "1.1", "2.0");
        assertThat(pipeline.counts().reconnects()).isEqualTo(1);
    }

    @Test
    void shouldTellListenersOnlyWhatIsCommitted() {
        List<Integer> committedWhenTold = new ArrayList<>();
        List<CapturedItem> told = new ArrayList<>();
        CapturePipeline pipeline = start(
                PipelineSettings.forBoard(),
                List.of(
                        items -> {
                            throw new IllegalStateException("a broken page");
                        },
                        items -> {
                            told.addAll(items);
                            assertThat(journal.items()).endsWith(items.toArray(CapturedItem[]::new));
                            committedWhenTold.add(journal.items().size() - told.size());
                        }));

        for (int i = 0; i < 50; i++) {
            pipeline.intake().frame(UUID, i, new byte[] {(byte) i});
        }
        pipeline.close();

        assertThat(told).isEqualTo(journal.items()).hasSize(50);
        assertThat(committedWhenTold).isNotEmpty().containsOnly(0);
    }

    @Test
    void shouldLeaveOneCountedHoleWhenTheQueueOverflows() throws InterruptedException {
        CountDownLatch inJournal = new CountDownLatch(1);
        CountDownLatch release = new CountDownLatch(1);
        FrameJournal slow = items -> {
            inJournal.countDown();
            awaitQuietly(release);
            journal.append(items);
        };
        CapturePipeline pipeline =
                CapturePipeline.start(settings(4, Duration.ofSeconds(1)), clock, Set.of(), slow, List.of());
        pipeline.intake().frame(UUID, 0, new byte[1]);
        inJournal.await();

        for (int i = 1; i <= 10; i++) {
            pipeline.intake().frame(UUID, i, new byte[1]);
        }
        pipeline.intake().link(11, new LinkChange.Resolved(LinkChange.Resolved.UNKNOWN_MTU));
        release.countDown();
        pipeline.close();

        assertThat(journal.items().subList(5, 7))
                .containsExactly(
                        new DroppedFrames(0, 5, 5, 6),
                        new LinkEvent(0, 11, 11, new LinkChange.Resolved(LinkChange.Resolved.UNKNOWN_MTU)));
        CaptureCounts counts = pipeline.counts();
        assertThat(List.of(counts.received(), counts.committed(), counts.dropped()))
                .containsExactly(11L, 5L, 6L);
    }

    @ParameterizedTest
    @EnumSource(
            value = JournalException.Fault.class,
            names = {"DISK_FULL", "DISK_FAILING", "BUSY"})
    void shouldLoseNothingWhenAPassingFailureIsMended(JournalException.Fault fault) throws InterruptedException {
        // An hour is 3.6 s here, which a busy machine can lose; the patience is not what is tested.
        CapturePipeline pipeline = start(settings(100, Duration.ofDays(1)), List.of());
        pipeline.intake().frame(UUID, 0, new byte[] {0});
        journal.await(j -> j.frames().size() == 1, LIMIT);
        journal.failWith(fault);
        for (int i = 1; i < 20; i++) {
            pipeline.intake().frame(UUID, i, new byte[] {(byte) i});
        }
        int before = journal.calls();
        journal.await(j -> j.calls() >= before + 3, LIMIT);
        assertThat(pipeline.outage().map(JournalOutage::message)).contains("journal test.db: " + fault);

        journal.failWith(null);
        pipeline.close();

        assertThat(pipeline.outage()).isEmpty();

        assertThat(journal.frames()).extracting(HeardFrame::ordinal).containsExactlyElementsOf(upTo(20));
        assertThat(pipeline.counts().journalFailures()).isGreaterThanOrEqualTo(2);
        assertThat(pipeline.ended()).isCompleted();
    }

    @ParameterizedTest
    @EnumSource(JournalException.Fault.class)
    void shouldStopWithTheJournalsErrorWhenItStaysBroken(JournalException.Fault fault) throws InterruptedException {
        CapturePipeline pipeline = start(settings(100, Duration.ofSeconds(3)), List.of());
        pipeline.intake().frame(UUID, 0, new byte[1]);
        journal.await(j -> j.frames().size() == 1, LIMIT);
        journal.failWith(fault);

        pipeline.intake().frame(UUID, 1, new byte[1]);

        assertThatThrownBy(() -> pipeline.ended().join())
                .isInstanceOf(CompletionException.class)
                .hasRootCauseInstanceOf(JournalException.class)
                .hasMessageContaining("test.db: " + fault);
        pipeline.intake().frame(UUID, 2, new byte[1]);
        pipeline.close();
        CaptureCounts counts = pipeline.counts();
        assertThat(journal.frames()).hasSize(1);
        assertThat(List.of(counts.received(), counts.committed(), counts.dropped(), counts.waiting()))
                .containsExactly(3L, 1L, 1L, 1L);
    }

    @Test
    void shouldStopWithAClearErrorWhenTheJournalThrowsSomethingElse() {
        FrameJournal broken = items -> {
            throw new IllegalStateException("no such table: frame");
        };
        CapturePipeline pipeline =
                CapturePipeline.start(PipelineSettings.forBoard(), clock, Set.of(), broken, List.of());

        pipeline.intake().frame(UUID, 0, new byte[1]);

        assertThatThrownBy(() -> pipeline.ended().get(10, TimeUnit.SECONDS))
                .hasRootCauseMessage("no such table: frame")
                .hasMessageContaining("journal failed unexpectedly");
        pipeline.close();
    }

    @Test
    void shouldKeepItsOwnCopyOfTheBytes() {
        byte[] bytes = {1, 2, 3};
        HeardFrame frame = new HeardFrame(1, 0, UUID.toUpperCase(java.util.Locale.ROOT), 0, bytes);

        bytes[0] = 9;
        frame.bytes()[1] = 9;

        assertThat(frame.bytes()).containsExactly(1, 2, 3);
        assertThat(frame.characteristicUuid()).isEqualTo(UUID);
    }

    private CapturePipeline start(PipelineSettings settings, List<CaptureListener> listeners) {
        return CapturePipeline.start(settings, clock, Set.of(UUID), journal, listeners);
    }

    /** Samples wait for a day of this clock, which is 86 s of the test's: whoever waited for it would be late. */
    private static PipelineSettings gathering(Duration turns) {
        return new PipelineSettings(
                100,
                Duration.ofDays(1),
                turns,
                1000,
                Duration.ofMillis(500),
                Duration.ofSeconds(5),
                Duration.ofSeconds(3));
    }

    private static PipelineSettings settings(int queueFrames, Duration patience) {
        return new PipelineSettings(
                queueFrames,
                Duration.ofMillis(100),
                Duration.ofMillis(100),
                1000,
                Duration.ofMillis(500),
                Duration.ofSeconds(5),
                patience);
    }

    private static List<Long> upTo(int end) {
        return IntStream.range(0, end).mapToObj(Long::valueOf).toList();
    }

    private static void awaitQuietly(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
