package fermata.daemon.virtualcube;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.util.ArrayDeque;
import java.util.List;
import java.util.UUID;
import java.util.function.LongSupplier;

/** What runs inside a cube that speaks the open layout. Guards itself. */
final class CubeFirmware implements Peripheral {
    private final String address;
    private final String name;
    private final LongSupplier nowMillis;
    private final Runnable onSubscribed;
    private final ArrayDeque<MadeTurn> recent = new ArrayDeque<>();
    private final int batteryPercent;
    private CubeState state;
    private long sequence;
    private int unannounced;

    /**
     * @param nowMillis the device's clock
     * @param onSubscribed called when somebody subscribes to the turns
     */
    CubeFirmware(VirtualCube.Setup setup, LongSupplier nowMillis, Runnable onSubscribed) {
        this.address = setup.address();
        this.name = setup.name();
        this.state = setup.start();
        this.batteryPercent = setup.batteryPercent();
        this.nowMillis = nowMillis;
        this.onSubscribed = onSubscribed;
    }

    @Override
    public String address() {
        return address;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public List<GattService> services() {
        return List.of(
                new GattService(
                        OpenLayout.SERVICE,
                        List.of(
                                new GattService.Characteristic(OpenLayout.TURNS, List.of("notify", "read")),
                                new GattService.Characteristic(OpenLayout.STATE, List.of("read")))),
                new GattService(
                        OpenLayout.BATTERY_SERVICE,
                        List.of(new GattService.Characteristic(OpenLayout.BATTERY_LEVEL, List.of("read", "notify")))));
    }

    @Override
    public synchronized byte[] read(UUID characteristic) {
        if (characteristic.equals(OpenLayout.STATE)) {
            return OpenLayout.encodeState(sequence, nowMillis.getAsLong(), state);
        }
        if (characteristic.equals(OpenLayout.BATTERY_LEVEL)) {
            return OpenLayout.encodeBattery(batteryPercent);
        }
        return recent.isEmpty() ? new byte[0] : OpenLayout.encodeTurns(sequence, 0, List.copyOf(recent));
    }

    @Override
    public void subscribed(UUID characteristic) {
        if (characteristic.equals(OpenLayout.TURNS)) {
            onSubscribed.run();
        }
    }

    /** The hand turns a face. */
    synchronized void make(Turn turn, long deviceMillis) {
        state = state.apply(turn);
        sequence++;
        unannounced++;
        recent.addLast(new MadeTurn(turn, deviceMillis));
        if (recent.size() > OpenLayout.TURNS_A_FRAME) {
            recent.removeFirst();
        }
    }

    /** How many turns no frame has announced. */
    synchronized int unannounced() {
        return unannounced;
    }

    /** The frame that announces what is unannounced, as far as it fits. */
    synchronized byte[] announce() {
        byte[] frame =
                OpenLayout.encodeTurns(sequence, Math.min(unannounced, OpenLayout.TURNS_A_FRAME), List.copyOf(recent));
        unannounced = 0;
        return frame;
    }
}
