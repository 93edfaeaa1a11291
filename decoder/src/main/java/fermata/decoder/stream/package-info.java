/**
 * From what the radio said to turns: frames are read by a profile, copies dropped, lost frames filled or counted, times
 * put on the board's clock.
 *
 * <p>Main type: {@link fermata.decoder.stream.StreamDecoder}. Takes {@link fermata.decoder.stream.RawFrame}s in the
 * order of their arrival, gives {@link fermata.decoder.stream.StreamEvent}s. Arrivals are nanoseconds of the board's
 * monotonic clock, everything given back is microseconds. Pure: the same frames give the same events, so that a later
 * version can start again from the frames that were kept. Turns are in the core frame.
 */
package fermata.decoder.stream;
