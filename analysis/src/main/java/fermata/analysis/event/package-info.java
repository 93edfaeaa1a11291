/**
 * The log that is only ever appended to: what was heard, what was lost, what the cube said, what people said.
 *
 * <p>Main types: {@link fermata.analysis.event.Event}, {@link fermata.analysis.event.CaptureLog}. Times are
 * microseconds since the capture began. Version 1, for ever: a kind of event may be added, none is altered. Nothing
 * here is inferred. Source: the data itself; see docs/formats.md.
 */
package fermata.analysis.event;
