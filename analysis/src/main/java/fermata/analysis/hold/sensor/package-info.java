/**
 * What an orientation sensor says about holds.
 *
 * <p>Main type: {@link fermata.analysis.hold.sensor.SensedHold}. Takes quaternions with times in microseconds, gives
 * evidence for the lattice; a heading that drifts is walked along with ({@link fermata.analysis.hold.sensor.YawWalk}).
 */
package fermata.analysis.hold.sensor;
