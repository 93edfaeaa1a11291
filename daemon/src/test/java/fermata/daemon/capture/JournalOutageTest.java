package fermata.daemon.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyList;
import static org.mockito.Mockito.doNothing;
import static org.mockito.Mockito.doThrow;
import static org.mockito.Mockito.inOrder;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.timeout;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;

import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.mockito.ArgumentCaptor;
import org.mockito.InOrder;

/** A journal whose disk answers with errors for a while. Its clock runs a thousand times as fast. */
class JournalOutageTest {
    private static final String UUID = "b3cb4267-3d05-43d3-a261-fbfdfbcd347f";
    private static final int LIMIT_MILLIS = 20_000;

    private final MonotonicClock clock = MonotonicClock.scaled(1000);
    private final FrameJournal journal = mock(FrameJournal.class);

    /** Before, one error of the disk ended the recording at once. */
    @Test
    void shouldRideOutAFailingDiskAndNoteHowLongItLasted() throws Exception {
        JournalException failure = new JournalException(JournalException.Fault.DISK_FAILING, "EIO", null);
        doThrow(failure, failure, failure).doNothing().when(journal).append(anyList());
        try (CapturePipeline pipeline = start()) {
            pipeline.intake().frame(UUID, 1, new byte[] {1});

            ArgumentCaptor<JournalOutage> noted = ArgumentCaptor.forClass(JournalOutage.class);
            verify(journal, timeout(LIMIT_MILLIS)).mended(noted.capture());
            // Half a second, one and two were waited.
            assertThat(noted.getValue().lasted()).isGreaterThanOrEqualTo(Duration.ofMillis(3_500));
            assertThat(noted.getValue().fault()).isEqualTo(JournalException.Fault.DISK_FAILING);
            assertThat(noted.getValue().framesDropped()).isZero();
            assertThat(pipeline.lastOutage()).contains(noted.getValue());
            assertThat(pipeline.outage()).isEmpty();
        }
        verify(journal, times(4)).append(anyList());
    }

    @Test
    void shouldSayWhileItLastsThatNothingCanBeKept() throws Exception {
        doThrow(new JournalException(JournalException.Fault.DISK_FAILING, "EDQUOT", null))
                .when(journal)
                .append(anyList());
        CapturePipeline pipeline = start();
        pipeline.intake().frame(UUID, 1, new byte[] {1});
        verify(journal, timeout(LIMIT_MILLIS).atLeast(3)).append(anyList());

        assertThat(pipeline.outage())
                .hasValueSatisfying(now -> assertThat(now.message()).isEqualTo("EDQUOT"));
        pipeline.close();
        assertThat(pipeline.ended())
                .failsWithin(Duration.ofSeconds(20))
                .withThrowableThat()
                .withMessageContaining("given up, and 1 frames that waited are not kept");
        verify(journal, never()).mended(any());
    }

    @Test
    void shouldNoteAnOutageLaterWhenItCannotBeNotedAtOnce() throws Exception {
        JournalException failure = new JournalException(JournalException.Fault.DISK_FAILING, "fsync", null);
        doThrow(failure).doNothing().when(journal).append(anyList());
        doThrow(failure).doNothing().when(journal).mended(any());
        try (CapturePipeline pipeline = start()) {
            pipeline.intake().frame(UUID, 1, new byte[] {1});
            verify(journal, timeout(LIMIT_MILLIS)).mended(any());
            pipeline.intake().frame(UUID, 2, new byte[] {2});

            verify(journal, timeout(LIMIT_MILLIS).times(2)).mended(any());
        }
    }

    @Test
    void shouldPutTheJournalInOrderOnceEachTimeTheCubeRests() throws Exception {
        doNothing().when(journal).append(anyList());
        try (CapturePipeline pipeline = start()) {
            pipeline.intake().frame(UUID, 1, new byte[] {1});
            verify(journal, timeout(LIMIT_MILLIS)).append(anyList());
            InOrder order = inOrder(journal);
            verify(journal, timeout(LIMIT_MILLIS).atLeast(1)).rested();
            pipeline.intake().frame(UUID, 2, new byte[] {2});
            verify(journal, timeout(LIMIT_MILLIS).times(2)).append(anyList());
            verify(journal, timeout(LIMIT_MILLIS).atLeast(2)).rested();

            order.verify(journal).append(anyList());
            order.verify(journal, org.mockito.Mockito.atLeastOnce()).rested();
        }
    }

    private CapturePipeline start() {
        return CapturePipeline.start(PipelineSettings.forBoard(), clock, Set.of(), journal, List.of());
    }
}
