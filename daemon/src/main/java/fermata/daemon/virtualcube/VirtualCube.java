package fermata.daemon.virtualcube;

import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.CubeState;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import java.util.random.RandomGenerator;

/**
 * A cube in reach of a virtual BlueZ on a private bus: everything a capture needs to run its real path without a radio.
 *
 * <p>Safe for use by many threads.
 */
public final class VirtualCube implements AutoCloseable {
    private final PrivateBus bus;
    private final VirtualBluez bluez;
    private final ScriptPlayer player;

    /**
     * What the cube is and does.
     *
     * @param name what it advertises
     * @param address {@code XX:XX:XX:XX:XX:XX}; the default is locally administered and belongs to nobody
     * @param start its state when the script begins
     * @param script its turns, by time
     * @param radio the link
     * @param clock its own clock
     * @param batteryPercent its charge, 0 to 100
     */
    public record Setup(
            String name,
            String address,
            CubeState start,
            List<ScriptedTurn> script,
            RadioModel radio,
            DeviceClock clock,
            int batteryPercent) {
        /** Refuses an address, charge or order of turns that cannot be. */
        public Setup {
            Objects.requireNonNull(start, "start");
            Objects.requireNonNull(radio, "radio");
            Objects.requireNonNull(clock, "clock");
            script = List.copyOf(script);
            if (!address.matches("[0-9A-F]{2}(:[0-9A-F]{2}){5}")) {
                throw new IllegalArgumentException("address \"" + address + "\" is not like 02:00:00:00:00:02");
            }
            if (batteryPercent < 0 || batteryPercent > 100) {
                throw new IllegalArgumentException("batteryPercent " + batteryPercent + " is not between 0 and 100");
            }
            for (int i = 1; i < script.size(); i++) {
                if (script.get(i).atMicros() < script.get(i - 1).atMicros()) {
                    throw new IllegalArgumentException("script turn " + i + " at "
                            + script.get(i).atMicros() + " us is earlier than the one before it");
                }
            }
        }

        /** A solved cube with a healthy link, a clock 12 ppm fast that was started an hour ago, and 87 % charge. */
        public static Setup playing(List<ScriptedTurn> script) {
            return new Setup(
                    "galley cube",
                    "02:00:00:00:00:02",
                    CubeState.SOLVED,
                    script,
                    RadioModel.healthy(),
                    new DeviceClock(3_600_000, 12),
                    87);
        }

        /** The same with another link. */
        public Setup over(RadioModel newRadio) {
            return new Setup(name, address, start, script, newRadio, clock, batteryPercent);
        }

        /** The same from another state. */
        public Setup from(CubeState newStart) {
            return new Setup(name, address, newStart, script, radio, clock, batteryPercent);
        }
    }

    private VirtualCube(Setup setup, MonotonicClock clock, RandomGenerator random, BluezTemper temper) {
        bus = PrivateBus.start();
        player = new ScriptPlayer(setup, clock, random);
        bluez = VirtualBluez.start(bus.address(), clock, player.firmware(), temper);
        player.playOn(bluez);
        Thread thread = new Thread(player, "virtual-cube");
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Starts the bus and puts the cube in reach; it begins its script one second after somebody subscribed to its
     * turns.
     *
     * @param clock what the script, the link and the service run by; share it with the capture
     * @param random decides delays, losses, doubles and cuts; not used by anybody else meanwhile
     * @param temper how the service misbehaves; {@code new BluezTemper()} does not
     */
    public static VirtualCube start(Setup setup, MonotonicClock clock, RandomGenerator random, BluezTemper temper) {
        return new VirtualCube(setup, clock, random, temper);
    }

    /** The bus to point a capture at. */
    public String busAddress() {
        return bus.address();
    }

    /** Ends the bus under everybody who is on it, as when the machine's bus daemon dies. */
    public void killBus() {
        bus.close();
    }

    /** Ends the bus and the service on it, and starts both again at the same address. */
    public void restartBus() {
        TreeOnBus gone;
        // Nothing is said while nobody is there to carry it.
        synchronized (bluez) {
            bus.restart();
            gone = bluez.die();
        }
        gone.close();
        bluez.comeUp();
    }

    /** The service, to make it misbehave. */
    public VirtualBluez bluez() {
        return bluez;
    }

    /**
     * Done with the final count when every turn was made and the last notification sent; cancelled when closed before.
     */
    public CompletableFuture<CubeTruth> finished() {
        return player.finished().copy();
    }

    /** Whether something of its script was due by the clock and is not done yet: this machine does not keep up. */
    public boolean isBehind() {
        return player.isBehind();
    }

    /** What it did so far. */
    public CubeTruth truth() {
        return player.truth();
    }

    @Override
    public void close() {
        player.close();
        bluez.close();
        bus.close();
    }
}
