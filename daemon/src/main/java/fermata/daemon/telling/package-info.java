/**
 * What people tell the log and take from it: corrections, sequences, calibrations, files brought in and out.
 *
 * <p>Main types: {@link fermata.daemon.telling.Corrections}, {@link fermata.daemon.telling.OwnSequences}, {@link
 * fermata.daemon.telling.Calibrations}, {@link fermata.daemon.telling.Importer}, {@link
 * fermata.daemon.telling.Exporter}. Each appends events to a {@link fermata.daemon.store.Store} and alters none.
 */
package fermata.daemon.telling;
