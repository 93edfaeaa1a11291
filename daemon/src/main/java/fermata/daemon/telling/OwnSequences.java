package fermata.daemon.telling;

import fermata.analysis.event.Event;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.daemon.json.JsonLine;
import fermata.daemon.json.SequencesView;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Captures;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.Optional;

/**
 * The last-layer sequences of a solver: those that the solver typed, kept as an event, and the last layers of the
 * solves of which the solver said what the hand did. Not thread-safe.
 */
public final class OwnSequences {
    private final Captures captures;
    private final CorrectedSolves corrected;

    /** Over captures; keeping needs a store that may be written. */
    public OwnSequences(Captures captures) {
        this(captures, new CaptureReader(captures));
    }

    public OwnSequences(Captures captures, CaptureReader reader) {
        this.captures = captures;
        this.corrected = new CorrectedSolves(captures, reader);
    }

    /**
     * Keeps what a solver typed, instead of what was typed before.
     *
     * @return whether it could be kept: there must be a capture of that solver
     */
    public boolean keep(String solver, List<String> sequences) {
        Optional<CaptureRow> newest = captures.all().stream()
                .filter(row -> row.start().origin().solver().equals(solver))
                .reduce((earlier, later) -> later);
        newest.filter(row -> !typed(solver).equals(sequences))
                .ifPresent(row -> new Afterwards(captures)
                        .say(
                                row,
                                at -> new Event.SequencesStated(
                                        sequences, row.start().origin(), at)));
        return newest.isPresent();
    }

    /** What a solver typed, in the hand's notation. */
    public List<String> typed(String solver) {
        return newest(captures, solver)
                .map(stated -> {
                    CaptureRow row = captures.find(stated.captureId()).orElseThrow();
                    JsonLine line = JsonLine.parse("capture " + row.id(), 1, stated.line());
                    StreamClock clock = line.has("at") ? StreamClock.DEVICE : StreamClock.NONE;
                    EventLines lines =
                            new EventLines(Long.toString(row.id()), row.start().origin(), clock);
                    return ((Event.SequencesStated) lines.read(line)).sequences();
                })
                .orElse(List.of());
    }

    /** The line that holds for a solver. Cost: a look at all such lines, of which there are few. */
    public static Optional<Captures.Stated> newest(Captures captures, String solver) {
        return captures.sequences().stream()
                .filter(stated -> stated.solver().equals(solver))
                .reduce((earlier, later) -> later);
    }

    /** What is known of a solver, as it is listed, beside what the solver's solves repeat. */
    public SequencesView view(String solver, List<SequencesView.Repeated> repeated) {
        List<SequencesView.Learned> learned = corrected.of(solver).stream()
                .flatMap(one -> lastLayer(one)
                        .print()
                        .lines()
                        .map(words -> new SequencesView.Learned(one.solve().id(), words)))
                .toList();
        List<String> typed = typed(solver);
        return new SequencesView(
                solver,
                typed,
                learned,
                repeated.stream().filter(one -> !typed.contains(one.words())).toList());
    }

    /** What was typed as a book. */
    public SequenceBook typedBook(String solver) {
        return SequenceBook.parse(String.join("\n", typed(solver)));
    }

    /** All of it as a book to read solves by. */
    public SequenceBook book(String solver) {
        SequenceBook book = typedBook(solver);
        for (CorrectedSolves.Corrected one : corrected.of(solver)) {
            book = book.with(lastLayer(one));
        }
        return book;
    }

    private static SequenceBook lastLayer(CorrectedSolves.Corrected one) {
        return SequenceBook.ofLastLayer(
                one.solve().attempt().scramble().start(), HoldTrack.of(one.words(), Orientation.IDENTITY));
    }
}
