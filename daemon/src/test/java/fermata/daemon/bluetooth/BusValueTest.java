package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.capture.LinkFault;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt32;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a service, a neighbour or a cube may say in the place of what it should. */
class BusValueTest {
    private static final String ADAPTER = "/org/bluez/hci0";
    private static final String CUBE = ADAPTER + "/dev_02_00_00_00_00_0C";
    private static final UUID TURNS = UUID.fromString("b3cb4267-3d05-43d3-a261-fbfdfbcd347f");

    private static final List<Object> ODD = Collections.unmodifiableList(Arrays.asList(
            null,
            "",
            "text",
            7,
            new UInt32(4_000_000_000L),
            1.5,
            true,
            new DBusPath("/"),
            new byte[600],
            List.of(1, "two", List.of()),
            Arrays.asList(null, null),
            new Object[] {1, null},
            Map.of(1, 2),
            Collections.singletonMap("key", null),
            new Variant<>(new Variant<>("deep"), "v"),
            new Object()));

    @Test
    void shouldThrowForNothingThatTheBusCanSay() {
        for (Object odd : ODD) {
            BusValue.text(odd);
            BusValue.flag(odd);
            BusValue.number(odd);
            BusValue.uuid(odd);
            BusValue.uuids(odd);
            BusValue.texts(odd);
            BusValue.bytes(odd);
            BusValue.dictionary(odd);
            assertThat(BusValue.inWords(odd)).isNotEmpty();
            assertThat(ObjectSnapshot.interfaces(
                            Map.of(BluezBus.DEVICE, Map.of("UUIDs", List.of(String.valueOf(odd))))))
                    .containsKey(BluezBus.DEVICE);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "180f", "1-1-1-1-1", "zzcb4267-3d05-43d3-a261-fbfdfbcd347f", "b3cb4267-3d05"})
    void shouldLeaveOutAMalformedUuidAndKeepTheOthers(String malformed) {
        assertThat(BusValue.uuids(new Variant<>(List.of(malformed, TURNS.toString()), "as")))
                .containsExactly(TURNS);
    }

    @Test
    void shouldTakeBytesInBothFormsInWhichTheLibraryGivesThem() {
        assertThat(BusValue.bytes(new byte[] {1, -1}).orElseThrow()).containsExactly(1, -1);
        assertThat(BusValue.bytes(new Variant<>(List.of((byte) 1, (byte) -1), "ay"))
                        .orElseThrow())
                .containsExactly(1, -1);
        assertThat(BusValue.bytes(List.of(1, 2))).isEmpty();
        assertThat(BusValue.bytes(new byte[BusValue.LONGEST_VALUE + 1])).isEmpty();
    }

    @Test
    void shouldSeeTheCubeAmongNeighboursThatCannotBeRead() {
        ObjectSnapshot objects = ObjectSnapshot.of(Map.of(
                new DBusPath(ADAPTER), Map.of(BluezBus.ADAPTER, Map.of("Powered", new Variant<>(true))),
                new DBusPath(CUBE), Map.of(BluezBus.DEVICE, Map.of("Connected", true, "Address", "02:00")),
                new DBusPath(CUBE + "/service0001/char0001"), Map.of(BluezBus.CHARACTERISTIC, Map.of()),
                new DBusPath(CUBE + "/service0001/char0002"),
                        Map.of(BluezBus.CHARACTERISTIC, Map.of("UUID", TURNS.toString())),
                new DBusPath(ADAPTER + "/dev_1"), Map.of(BluezBus.DEVICE, Map.of("UUIDs", 7, "Name", true)),
                new DBusPath(ADAPTER + "/dev_2"), Map.of(BluezBus.DEVICE, "no dictionary"),
                new DBusPath(ADAPTER + "/dev_3"), List.of()));

        assertThat(objects.adapters()).containsExactly(new ObjectSnapshot.Adapter(ADAPTER, "", true));
        assertThat(objects.devices(ADAPTER))
                .extracting(ObjectSnapshot.Device::path)
                .contains(CUBE);
        assertThat(objects.characteristics(CUBE)).containsExactly(Map.entry(TURNS, CUBE + "/service0001/char0002"));
    }

    @Test
    void shouldCallAnAnswerThatIsNoTreeAtAllAFaultOfTheLink() {
        assertThatThrownBy(() -> ObjectSnapshot.of("what"))
                .isInstanceOfSatisfying(
                        LinkException.class, e -> assertThat(e.fault()).isEqualTo(LinkFault.RETRY_SLOW))
                .hasMessageContaining("GetManagedObjects answered String \"what\"");
    }

    @Test
    void shouldTakeADeviceForPairedUnlessTheServicePlainlySaysNo() {
        assertThat(device(Map.of("Paired", false, "Bonded", false)).bonded()).isFalse();
        assertThat(device(Map.of("Paired", false)).bonded()).isFalse();
        assertThat(device(Map.of("Paired", true)).bonded()).isTrue();
        assertThat(device(Map.of("Paired", "odd")).bonded()).isTrue();
    }

    private static ObjectSnapshot.Device device(Map<String, Object> properties) {
        return ObjectSnapshot.device(CUBE, properties);
    }
}
