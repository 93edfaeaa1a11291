package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.CapturePipeline;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.OpenLayout;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.Test;

/** Values in the order in which BlueZ 5.66 was seen to send them round a link that comes back. */
class FrameTapTest {
    private static final String DEVICE = "/org/bluez/hci0/dev_00_AA_01_01_00_01";
    private static final String TURNS = DEVICE + "/service0015/char0016";
    private static final String STATE = DEVICE + "/service0015/char0019";

    private final MonotonicClock clock = MonotonicClock.system();
    private final MemoryJournal journal = new MemoryJournal();

    private static Properties.PropertiesChanged value(String path, int first) throws DBusException {
        Map<String, Variant<?>> changed = Map.of("Value", new Variant<>(new byte[] {(byte) first}, "ay"));
        return new Properties.PropertiesChanged(path, BluezBus.CHARACTERISTIC, changed, List.of());
    }

    private List<HeardFrame> taken(TapScript script) throws DBusException {
        try (CapturePipeline pipeline =
                CapturePipeline.start(PipelineSettings.forBoard(), clock, Set.of(), journal, List.of())) {
            script.run(new FrameTap(DEVICE, Set.of(), clock, pipeline.intake(), new LinkWatch(clock)));
        }
        return journal.frames();
    }

    private interface TapScript {
        void run(FrameTap tap) throws DBusException;
    }

    @Test
    void shouldTakeWhatCameBeforeOpeningWithItsOwnStampAndInOrder() throws DBusException {
        long[] openedAt = new long[1];

        List<HeardFrame> frames = taken(tap -> {
            tap.handle(value(TURNS, 1));
            tap.handle(value(TURNS, 2));
            openedAt[0] = clock.nanos();
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.handle(value(TURNS, 3));
        });

        assertThat(frames).extracting(frame -> (int) frame.bytes()[0]).containsExactly(1, 2, 3);
        assertThat(frames).extracting(HeardFrame::characteristicUuid).containsOnly(OpenLayout.TURNS.toString());
        assertThat(frames.get(1).arrivalNanos()).isLessThanOrEqualTo(openedAt[0]);
        assertThat(frames.get(2).arrivalNanos()).isGreaterThanOrEqualTo(openedAt[0]);
    }

    @Test
    void shouldLeaveOutEarlyAndLateValuesOfCharacteristicsThatItWasNotOpenedWith() throws DBusException {
        List<HeardFrame> frames = taken(tap -> {
            tap.handle(value(STATE, 1));
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.handle(value(STATE, 2));
        });

        assertThat(frames).isEmpty();
    }

    @Test
    void shouldTakeNothingOnceClosed() throws DBusException {
        List<HeardFrame> frames = taken(tap -> {
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.close();
            tap.handle(value(TURNS, 1));
        });

        assertThat(frames).isEmpty();
    }

    /** A link falls and stands again within milliseconds, and the cube goes on notifying. */
    @Test
    void shouldKeepWhatComesBetweenTwoSessionsForTheNext() throws DBusException {
        List<HeardFrame> frames = taken(tap -> {
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.handle(value(TURNS, 1));
            tap.rest();
            tap.handle(value(TURNS, 2));
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.handle(value(TURNS, 3));
        });

        assertThat(frames).extracting(frame -> (int) frame.bytes()[0]).containsExactly(1, 2, 3);
    }

    @Test
    void shouldKeepWhatComesBetweenTwoSessionsWhenThereIsNoNext() throws DBusException {
        List<HeardFrame> frames = taken(tap -> {
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            tap.rest();
            tap.handle(value(TURNS, 1));
            tap.handle(value(STATE, 2));
            tap.close();
            tap.handle(value(TURNS, 3));
        });

        assertThat(frames).extracting(frame -> (int) frame.bytes()[0]).containsExactly(1);
    }

    @Test
    void shouldSayOnceThatAWantedCharacteristicNotifiesWhatIsNoValue() throws DBusException {
        List<HeardFrame> frames = taken(tap -> {
            tap.open(Map.of(TURNS, OpenLayout.TURNS), false);
            Map<String, Variant<?>> odd = Map.of("Value", new Variant<>("text"));
            tap.handle(new Properties.PropertiesChanged(TURNS, BluezBus.CHARACTERISTIC, odd, List.of()));
            tap.handle(new Properties.PropertiesChanged(STATE, BluezBus.CHARACTERISTIC, odd, List.of()));

            assertThat(tap.takeOdd()).contains(OpenLayout.TURNS + " notified String \"text\"");
            tap.handle(new Properties.PropertiesChanged(TURNS, BluezBus.CHARACTERISTIC, odd, List.of()));
            assertThat(tap.takeOdd()).isEmpty();
        });

        assertThat(frames).isEmpty();
    }
}
