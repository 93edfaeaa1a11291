/**
 * From what is stored to what is shown: captures are read into events, events analysed, and the results kept until
 * something new was heard or a newer version reads them otherwise.
 *
 * <p>{@link fermata.daemon.practice.Practice} is the main type: the commands and the pages ask it and nobody else. It
 * takes a {@link fermata.daemon.store.Store} and gives documents. Times are microseconds; a practice day ends at 04:00
 * local time ({@link fermata.daemon.reading.PracticeDay}).
 */
package fermata.daemon.practice;
