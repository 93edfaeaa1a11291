package fermata.daemon.bluetooth;

import fermata.daemon.capture.CaptureCounts;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.CubeTruth;
import fermata.daemon.virtualcube.VirtualCube;
import java.util.concurrent.TimeUnit;

/**
 * Not a test: prints, for each speed given, whether an evening came through D-Bus to a journal in memory without loss.
 */
final class CaptureSpeed {
    private CaptureSpeed() {}

    /** Arguments: turns, then speeds (times real time). */
    public static void main(String[] arguments) throws Exception {
        int turns = Integer.parseInt(arguments[0]);
        for (int i = 1; i < arguments.length; i++) {
            measure(turns, Double.parseDouble(arguments[i]));
        }
        System.exit(0);
    }

    private static void measure(int turns, double speed) throws Exception {
        VirtualCube.Setup setup = CaptureRig.playing(turns);
        double scriptSeconds = setup.script().get(turns - 1).atMicros() / 1e6;
        try (CaptureRig rig = new CaptureRig(setup, new BluezTemper(), speed)) {
            rig.await(journal -> !rig.turnFrames().isEmpty());
            long from = System.nanoTime();
            CubeTruth truth = rig.cube.finished().get(10, TimeUnit.MINUTES);
            rig.await(journal -> journal.frames().size() >= truth.notificationsSent());
            rig.await(journal -> rig.turnFrames().size() >= truth.notificationsSent());
            double seconds = (System.nanoTime() - from) / 1e9;
            CaptureCounts counts = rig.capture.counts();
            boolean complete = rig.sequences().equals(BluetoothCaptureTest.upFrom(1, turns));
            System.out.printf(
                    "speed %.0f: %d turns, %.0f notifications/s, %.0fx achieved, complete %b, dropped %d, links %d%n",
                    speed,
                    turns,
                    turns / seconds,
                    scriptSeconds / seconds,
                    complete,
                    counts.dropped(),
                    counts.connections());
        }
    }
}
