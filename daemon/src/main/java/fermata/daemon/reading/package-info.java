/**
 * From what is stored to what happened: captures, heard or told, read into events.
 *
 * <p>Main type: {@link fermata.daemon.reading.CaptureReader}. Takes a capture's rows, gives a {@link
 * fermata.daemon.reading.CaptureReading} of events at microseconds since the capture began; {@link
 * fermata.daemon.reading.PracticeDay} says on which day a moment falls.
 */
package fermata.daemon.reading;
