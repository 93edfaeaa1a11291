/**
 * What costs the most: expected time lost per solve by place, case, cause and hold, how sure that is, and how it
 * moves.
 *
 * <p>Main type: {@link fermata.analysis.hotspot.HotspotLedger}. Takes solves with their rest readings, night by night;
 * gives microseconds per solve with 95 % intervals. Bootstrap: Davison, Hinkley 1997, section 3.8.
 */
package fermata.analysis.hotspot;
