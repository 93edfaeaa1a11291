/**
 * What costs the most: expected time lost per solve by place, case, cause and hold, how sure that is, and how it moves.
 *
 * <p>Main types: {@link fermata.analysis.hotspot.HotspotLedger}, {@link fermata.analysis.hotspot.CaseLedger}, {@link
 * fermata.analysis.hotspot.Trend}. Take solves with their rest readings, night by night; give microseconds per solve
 * with 95 % intervals. Bootstrap: Davison, Hinkley 1997, section 3.8; trend: Sen 1968; shrinkage: Efron, Morris 1975.
 */
package fermata.analysis.hotspot;
