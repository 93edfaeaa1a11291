package fermata.decoder.madeup;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.List;

/**
 * What a device knows when it forms a frame.
 *
 * @param sequence number of the newest turn, not wrapped
 * @param micros device clock
 * @param fresh turns that no frame announced yet
 * @param recent turns, newest first, since the device started
 * @param state of the cube
 */
record DeviceMoment(long sequence, double micros, int fresh, List<Past> recent, CubeState state) {
    record Past(Turn turn, double micros) {}
}
