package fermata.decoder.stream;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.profile.StreamProfile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

/**
 * Our own open layout: its profile, its UUIDs, and the encoder that firmware would have. The layout is specified in
 * docs/stream-profile.md; the two must agree. Stateless and thread-safe.
 */
public final class OpenLayout {
    /** The service that is advertised. */
    public static final UUID SERVICE = UUID.fromString("9e4824b2-a5f5-4d89-9ca7-68bc6d634610");
    /** Notifies turns. */
    public static final UUID TURNS = UUID.fromString("b3cb4267-3d05-43d3-a261-fbfdfbcd347f");
    /** Notifies how the core lies; only where there is a motion sensor. */
    public static final UUID ORIENTATION = UUID.fromString("0f15a9f1-48bc-4c2d-9b66-f78863c0a1f1");
    /** Read: the whole cube. */
    public static final UUID STATE = UUID.fromString("acacdcfd-2a24-4e64-b0e7-16471a29d738");
    /** The standard Battery Service, Bluetooth Assigned Numbers 3.4. */
    public static final UUID BATTERY_SERVICE = UUID.fromString("0000180f-0000-1000-8000-00805f9b34fb");
    /** The standard Battery Level, Bluetooth Assigned Numbers 3.8. */
    public static final UUID BATTERY_LEVEL = UUID.fromString("00002a19-0000-1000-8000-00805f9b34fb");

    /** Bytes of a turns frame: what the default ATT MTU of 23 leaves for a notification. */
    public static final int TURNS_BYTES = 20;
    /** Bytes of a state value: within what the default ATT MTU of 23 leaves for one read. */
    public static final int STATE_BYTES = 21;
    /** Bytes of an orientation frame. */
    public static final int ORIENTATION_BYTES = 14;
    /** Turns one frame holds: the newest and five before it. */
    public static final int TURNS_A_FRAME = 6;
    /** A difference of so many milliseconds stands for that much or more. */
    public static final int SATURATED_MILLIS = 0x7FF;

    static final int TURNS_FORMAT = 0xD4;
    static final int STATE_FORMAT = 0xAE;
    static final int ORIENTATION_FORMAT = 0xC5;

    private static final int ONE = 1 << 14;

    private static final String RESOURCE = "open-layout.json";
    private static final StreamProfile PROFILE = load();

    private OpenLayout() {}

    /** A turn and the device's clock when it was made, in milliseconds since the device started; not wrapped. */
    public record MadeTurn(Turn turn, long deviceMillis) {
        public MadeTurn {
            Objects.requireNonNull(turn, "turn");
        }
    }

    /** The profile of the open layout. */
    public static StreamProfile profile() {
        return PROFILE;
    }

    /** The text of the open layout's profile file, to start another from. */
    public static String profileText() {
        try (InputStream in = OpenLayout.class.getResourceAsStream(RESOURCE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static StreamProfile load() {
        return StreamProfile.parse(profileText()).fold(profile -> profile, problems -> {
            throw new IllegalStateException("the built-in " + RESOURCE + " is broken: " + problems);
        });
    }

    /**
     * A frame that announces turns.
     *
     * @param sequence number of the newest turn; the first turn after the device started has 1; wraps at 65536
     * @param fresh how many turns, counted from the newest, no earlier frame announced; 0..6, at most the turns given
     * @param turns newest last, as many as known; those beyond the last six are left out
     */
    public static byte[] encodeTurns(long sequence, int fresh, List<MadeTurn> turns) {
        int sent = Math.min(turns.size(), TURNS_A_FRAME);
        if (sent == 0 || fresh < 0 || fresh > sent) {
            throw new IllegalArgumentException("fresh " + fresh + " of " + turns.size() + " turns is not in 0.." + sent
                    + ", or there is no turn at all");
        }
        MadeTurn newest = turns.get(turns.size() - 1);
        ByteBuffer frame = ByteBuffer.allocate(TURNS_BYTES).order(ByteOrder.LITTLE_ENDIAN);
        frame.put((byte) TURNS_FORMAT).putShort((short) sequence).putInt((int) newest.deviceMillis());
        frame.put((byte) (fresh | (sent - 1) << 4)).put((byte) newest.turn().index());
        for (int back = 1; back < sent; back++) {
            MadeTurn turn = turns.get(turns.size() - 1 - back);
            long difference = turns.get(turns.size() - back).deviceMillis() - turn.deviceMillis();
            if (difference < 0) {
                throw new IllegalArgumentException("turn " + turn + " is later than the one after it");
            }
            long stated = Math.min(difference, SATURATED_MILLIS);
            frame.putShort((short) (turn.turn().index() | stated << 5));
        }
        return sealed(frame.array());
    }

    /**
     * The state characteristic's value.
     *
     * @param sequence number of the last turn contained; 0 if none was made
     * @param deviceMillis device clock now
     */
    public static byte[] encodeState(long sequence, long deviceMillis, CubeState state) {
        long cornerPlaces = 0;
        long cornerTwists = 0;
        for (Corner place : Corner.values()) {
            cornerPlaces |= (long) state.cornerAt(place).ordinal() << 3 * place.ordinal();
            cornerTwists |= (long) state.twistAt(place) << 2 * place.ordinal();
        }
        long edgePlaces = 0;
        long edgeFlips = 0;
        for (Edge place : Edge.values()) {
            edgePlaces |= (long) state.edgeAt(place).ordinal() << 4 * place.ordinal();
            edgeFlips |= (long) state.flipAt(place) << place.ordinal();
        }
        ByteBuffer value = ByteBuffer.allocate(STATE_BYTES).order(ByteOrder.LITTLE_ENDIAN);
        value.put((byte) STATE_FORMAT).putShort((short) sequence).putInt((int) deviceMillis);
        putLow(value, cornerPlaces, 3);
        putLow(value, cornerTwists, 2);
        putLow(value, edgePlaces, 6);
        putLow(value, edgeFlips, 2);
        return sealed(value.array());
    }

    /**
     * A frame that tells how the core lies.
     *
     * @param deviceMillis device clock when the sample was taken
     * @param sensed takes the sensor's axes (x out of R, y out of B, z out of U) to the world's (z up)
     */
    public static byte[] encodeOrientation(long deviceMillis, Quaternion sensed) {
        ByteBuffer frame = ByteBuffer.allocate(ORIENTATION_BYTES).order(ByteOrder.LITTLE_ENDIAN);
        frame.put((byte) ORIENTATION_FORMAT).putInt((int) deviceMillis);
        for (double component : new double[] {sensed.w(), sensed.x(), sensed.y(), sensed.z()}) {
            frame.putShort((short) Math.round(component * ONE));
        }
        return sealed(frame.array());
    }

    /** The Battery Level's value. */
    public static byte[] encodeBattery(int percent) {
        if (percent < 0 || percent > 100) {
            throw new IllegalArgumentException("percent " + percent + " is not in 0..100");
        }
        return new byte[] {(byte) percent};
    }

    private static void putLow(ByteBuffer buffer, long value, int bytes) {
        for (int i = 0; i < bytes; i++) {
            buffer.put((byte) (value >> 8 * i));
        }
    }

    /** CRC-8, polynomial 0x07, register started at 0xFF: written out, so that firmware can be checked against it. */
    private static byte[] sealed(byte[] frame) {
        int register = 0xFF;
        for (int i = 0; i < frame.length - 1; i++) {
            register ^= frame[i] & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                register = (register & 0x80) != 0 ? (register << 1 ^ 0x07) & 0xFF : register << 1;
            }
        }
        frame[frame.length - 1] = (byte) register;
        return frame;
    }
}
