package fermata.daemon.demo;

import fermata.daemon.recording.Recording;
import fermata.daemon.virtualcube.VirtualCube;

/**
 * Whether notifications are under way between the virtual cube and the capture.
 *
 * <p>The capture also receives what it reads by itself, so received minus sent grows with each read and falls only
 * while something is under way: then it is below the most it ever was. Used by one thread.
 */
final class FramesInFlight {
    private final VirtualCube cube;
    private final Recording recording;
    private long most = Long.MIN_VALUE;

    FramesInFlight(VirtualCube cube, Recording recording) {
        this.cube = cube;
        this.recording = recording;
    }

    boolean any() {
        // Read in this order the difference can come out too small, which costs a moment, but never too large.
        long received = recording.counts().received();
        long difference = received - cube.truth().notificationsSent();
        most = Math.max(most, difference);
        return difference < most;
    }
}
