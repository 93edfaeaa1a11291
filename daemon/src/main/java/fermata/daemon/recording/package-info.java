/**
 * A capture from the radio into the store: what {@code listen} and the demo run.
 *
 * <p>{@link fermata.daemon.recording.Recording} is the main type. It takes a store, a
 * {@link fermata.daemon.recording.RecordingPlan} and a clock, begins a capture there and keeps every frame. Times are
 * nanoseconds of the monotonic clock; civil time is noted once, at the beginning.
 */
package fermata.daemon.recording;
