package fermata.daemon.listening;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.practice.RenewalListener;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(20)
class BackgroundRenewalTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

    private final StringWriter said = new StringWriter();
    private final List<LocalDate> derived = Collections.synchronizedList(new ArrayList<>());
    private final List<String> checked = Collections.synchronizedList(new ArrayList<>());
    private final BackgroundRenewal renewal =
            new BackgroundRenewal(RenewalListener.SILENT, new PrintWriter(said, true));

    @Test
    void shouldBeCompleteWhenNothingIsLeft() throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        renewal.start(
                () -> {
                    derive(3);
                    done.countDown();
                },
                () -> checked.add("all"));

        done.await();
        renewal.close();

        assertThat(renewal.isComplete()).isTrue();
        assertThat(derived).hasSize(3);
        assertThat(checked).containsExactly("all");
    }

    @Test
    void shouldFinishTheDayInWorkAndLeaveTheOthersWhenClosed() throws InterruptedException {
        CountDownLatch inWork = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        renewal.start(
                () -> {
                    renewal.begins(FIRST, 0, 364);
                    inWork.countDown();
                    awaitQuietly(goOn);
                    derived.add(FIRST);
                    derive(364);
                },
                () -> checked.add("all"));
        inWork.await();
        Thread closing = new Thread(renewal::close);
        closing.start();
        while (closing.getState() != Thread.State.WAITING) {
            Thread.onSpinWait();
        }
        goOn.countDown();
        closing.join();

        assertThat(derived).containsExactly(FIRST);
        assertThat(checked).isEmpty();
        assertThat(renewal.isComplete()).isFalse();
        assertThat(said.toString()).isEmpty();
        // Whoever else asks is not cut short.
        renewal.begins(FIRST, 0, 1);
    }

    @Test
    void shouldSayWhatWentWrongAndHarmNobodyElse() {
        renewal.start(
                () -> {
                    throw new IllegalStateException("capture 7 makes no sense");
                },
                () -> checked.add("all"));
        renewal.close();

        assertThat(renewal.isComplete()).isFalse();
        assertThat(said.toString()).contains("capture 7 makes no sense").contains("recording goes on");
    }

    private void derive(int days) {
        for (int day = 0; day < days; day++) {
            renewal.begins(FIRST.plusDays(day), day, days - day - 1);
            derived.add(FIRST.plusDays(day));
        }
    }

    private static void awaitQuietly(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
