/**
 * Makes the documents that the command line prints with {@code --json} and the pages draw.
 *
 * <p>Main types: {@link fermata.daemon.document.SolveViews}, {@link fermata.daemon.document.NightViews}, {@link
 * fermata.daemon.document.CaseViews}. Take readings of the analysis, give the records of {@code daemon.json}; whole
 * microseconds. Stateless.
 */
package fermata.daemon.document;
