package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.stream.OpenLayout;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class CaptureTargetTest {
    private static final UUID SERVICE = UUID.fromString("11111111-2222-3333-4444-555555555555");
    private static final UUID TURNS = UUID.fromString("11111111-2222-3333-4444-666666666666");

    @Test
    void shouldAskForWhatTheOpenLayoutOffers() {
        CaptureTarget target = CaptureTarget.of(OpenLayout.profile());

        assertThat(target.service()).contains(OpenLayout.SERVICE);
        assertThat(target.subscribe()).contains(OpenLayout.TURNS);
        assertThat(target.read()).contains(OpenLayout.STATE);
        assertThat(target.required())
                .contains(OpenLayout.TURNS, OpenLayout.STATE)
                .doesNotContain(CaptureTarget.BATTERY_LEVEL, OpenLayout.ORIENTATION);
        assertThat(target.subscribe()).contains(OpenLayout.ORIENTATION);
    }

    @Test
    void shouldWantBothWhenServiceAndNameAreGiven() {
        CaptureTarget target = target(Optional.of(SERVICE), Optional.of(Pattern.compile("cube-\\d+")));

        assertThat(target.fits("cube-12", Set.of(SERVICE))).isTrue();
        assertThat(target.fits("cube-12", Set.of())).isFalse();
        assertThat(target.fits("my cube-12", Set.of(SERVICE))).isFalse();
        assertThat(target(Optional.empty(), Optional.of(Pattern.compile("x"))).fits("x", Set.of()))
                .isTrue();
    }

    @Test
    void shouldRefuseATargetThatFitsAnything() {
        assertThatThrownBy(() -> target(Optional.empty(), Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("neither service nor namePattern");
    }

    private static CaptureTarget target(Optional<UUID> service, Optional<Pattern> name) {
        return new CaptureTarget(service, name, List.of(TURNS), List.of(), List.of(), List.of(), Set.of());
    }
}
