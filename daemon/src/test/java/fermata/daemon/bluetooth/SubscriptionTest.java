package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.concurrent.atomic.AtomicInteger;
import org.freedesktop.dbus.exceptions.DBusException;
import org.junit.jupiter.api.Test;

class SubscriptionTest {
    private final AtomicInteger asked = new AtomicInteger();

    @Test
    void shouldEndQuietlyWhenTheBusHasDroppedTheRuleItself() {
        // What dbus-daemon 1.14 answered after bluetoothd had been killed.
        Subscription closing = Subscription.of(
                () -> {
                    asked.incrementAndGet();
                    throw new DBusException("The given match rule wasn't found and can't be removed");
                },
                () -> false);

        assertThatCode(closing::close).doesNotThrowAnyException();
        assertThat(asked).hasValue(1);
    }

    @Test
    void shouldNotAskABusThatIsGone() {
        Subscription.of(asked::incrementAndGet, () -> true).close();

        assertThat(asked).hasValue(0);
    }
}
