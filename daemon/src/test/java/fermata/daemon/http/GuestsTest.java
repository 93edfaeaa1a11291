package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.http.Guests.Place;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class GuestsTest {
    private final Guests guests = new Guests(new Limits(3, 5), new Limits(2, 4));

    @Test
    void shouldGiveOneAddressNoMoreThanItsShare() throws Exception {
        assertThat(entered("192.0.2.7", 4)).isEqualTo(3);
        assertThat(entered("192.0.2.8", 1)).isEqualTo(1);
    }

    @Test
    void shouldGiveAllTogetherNoMoreThanThereIs() throws Exception {
        assertThat(entered("192.0.2.7", 3)).isEqualTo(3);
        assertThat(entered("192.0.2.8", 3)).isEqualTo(2);
        assertThat(entered("192.0.2.9", 1)).isZero();
    }

    @Test
    void shouldKeepPlacesForThisMachineWhateverTheNetworkTakes() throws Exception {
        assertThat(entered("192.0.2.7", 3) + entered("2001:db8::1", 3)).isEqualTo(5);
        assertThat(entered("127.0.0.1", 3)).isEqualTo(2);
        assertThat(entered("::1", 3)).isEqualTo(2);
        assertThat(entered("127.0.0.2", 1)).isZero();
    }

    @Test
    void shouldGiveAPlaceAnewOnceHoweverOftenItIsLeft() throws Exception {
        List<Place> places = IntStream.range(0, 3)
                .mapToObj(number -> enter("192.0.2.7"))
                .flatMap(Optional::stream)
                .toList();
        places.get(0).leave();
        places.get(0).leave();

        assertThat(entered("192.0.2.7", 2)).isEqualTo(1);
    }

    @Test
    void shouldRefuseLimitsThatLetNobodyIn() {
        assertThatThrownBy(() -> new Limits(0, 4)).hasMessageContaining("1 or more");
        assertThatThrownBy(() -> new Limits(5, 4)).hasMessageContaining("not 5 and 4");
    }

    private long entered(String address, int times) {
        return IntStream.range(0, times)
                .filter(number -> enter(address).isPresent())
                .count();
    }

    private Optional<Place> enter(String address) {
        try {
            // A literal: nothing is looked up.
            return guests.enter(InetAddress.getByName(address));
        } catch (UnknownHostException e) {
            throw new AssertionError(e);
        }
    }
}
