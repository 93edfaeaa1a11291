/**
 * By which method a cube was solved, and where its stages end.
 *
 * <p>Main type: {@link fermata.analysis.method.MethodReader}. Takes a start state and core-frame turns, gives stages as
 * half-open spans of turns with their cases. A stage ends at the first turn after which it holds at every later
 * boundary. Source: the words as the trade uses them.
 */
package fermata.analysis.method;
