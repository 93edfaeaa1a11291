/**
 * Where single pieces go and how few turns bring some of them home: the tables that planners and options search with.
 *
 * <p>Main types: {@link fermata.decoder.search.FourPieces} (a depth for every place of four pieces), {@link
 * fermata.decoder.search.PieceTurns} (what a turn does to one piece), {@link fermata.decoder.search.Slot}. Takes
 * pieces of a cube whose cross is at D, gives numbers of face turns (HTM). Checked against the depth tables in
 * replay-fixtures.
 */
package fermata.decoder.search;
