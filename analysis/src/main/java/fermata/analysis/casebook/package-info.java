/**
 * The cases that one solver met, over one or many nights: how long each takes and what it costs.
 *
 * <p>Main type: {@link fermata.analysis.casebook.CaseLedger}. Takes solves with their losses, gives a {@link
 * fermata.analysis.casebook.CaseRow} a case; microseconds a solve with 95 % intervals. Shrinkage: Efron, Morris 1975.
 */
package fermata.analysis.casebook;
