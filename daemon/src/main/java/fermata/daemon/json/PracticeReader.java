package fermata.daemon.json;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What the pages may know: the practice as the command line prints it with {@code --json}, whole documents, read-only.
 *
 * <p>Each answer is one JSON document in the shape that {@code docs/formats.md} gives, so that pages and command line
 * can never tell two stories. Times in it are microseconds.
 *
 * <p>Threads: called by as many threads at once as the page server has. An answer should take well under a second;
 * one that fails throws an unchecked exception whose message says what could not be read; the page shows it.
 */
public interface PracticeReader {
    /** The practice days, newest first: {@code {"nights":[{"day","solves",...}]}}; an empty list if there are none. */
    String nightsJson();

    /** As {@code night DAY --over OVER --json} prints it; empty if nothing was practised on that day. */
    Optional<String> nightJson(LocalDate day, Over over);

    /** As {@code cases --over OVER --json} prints it; a list without cases if there is no practice. */
    String casesJson(Over over);

    /** All solves as {@code solves --json} prints them. */
    String solvesJson();

    /** The solves of one practice day in the same shape, oldest first; an empty list if there are none. */
    String solvesJson(LocalDate day);

    /** One solve as {@code show ID --json} prints it; empty if there is no such solve. */
    Optional<String> solveJson(String id);
}
