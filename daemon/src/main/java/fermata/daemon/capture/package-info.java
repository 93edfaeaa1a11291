/**
 * From the radio to the disk: what arrives is stamped, queued and committed before anything looks at it.
 *
 * <p>{@link fermata.daemon.capture.CapturePipeline} is the main type; {@link fermata.daemon.capture.FrameJournal} is
 * its durable end, which the store implements; frames come from a signal thread and link events from the central, and
 * reach it in order and in groups. Times are nanoseconds of the injected {@link fermata.daemon.time.MonotonicClock}.
 * Nothing here reads the bytes.
 */
package fermata.daemon.capture;
