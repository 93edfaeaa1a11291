package fermata.daemon.store;

import fermata.daemon.salvage.Salvage;
import fermata.daemon.salvage.SalvagedRow;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Brings rows of a damaged database into a practice. Captures keep their numbers where these are free, as their solves
 * are named after them; then frames and events keep theirs too. Rows that are there already are left as they are, so
 * that it may be done again. Holds the captures' own rows in memory, and some thousand others. Not thread-safe.
 */
final class Recovery {
    private static final int ROWS_AT_ONCE = 2_000;

    private final Home home;
    private final WriterThread writer;
    private final SourceRows source = new SourceRows();
    /** By their numbers in the damaged database. */
    private final Map<Long, RecoveredCapture> captures = new HashMap<>();

    private final List<SalvagedRow> waiting = new ArrayList<>();
    private long newCaptures;
    private long frames;
    private long events;
    private long alreadyThere;

    Recovery(Home home, WriterThread writer) {
        this.home = home;
        this.writer = writer;
    }

    Recovered of(Path database) {
        Path log = SetAside.log(database);
        if (!Files.isRegularFile(database) && !Files.isRegularFile(log)) {
            throw new StoreException(StoreFault.READ_ONLY, "cannot recover " + database + ": there is no such file");
        }
        if (database.toAbsolutePath().normalize().equals(home.database())) {
            throw new StoreException(
                    StoreFault.READ_ONLY, database + " is the practice itself; name another file, or none");
        }
        try (Salvage salvage = Salvage.open(database, log)) {
            salvage.rows(source::take);
            writer.write("recover captures", connection -> {
                putCaptures(connection);
                return null;
            });
            salvage.rows(this::take);
            flush();
            writer.write("recover what was numbered anew", connection -> {
                finish(connection);
                return null;
            });
            return new Recovered(database, newCaptures, frames, events, alreadyThere);
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY, "cannot recover " + database + ": " + FileFaults.reason(e), e);
        }
    }

    private void putCaptures(Connection connection) throws SQLException {
        RecoveredRows.stage(connection);
        // A practice that has counted less than this database does not know its numbers: some may be taken.
        boolean keepsNumbers = source.lastFrame() <= writer.numbering().count().frames();
        for (Map.Entry<Long, SourceRows.Found> each : source.captures().entrySet()) {
            SourceRows.Found found = each.getValue();
            Optional<String> profile = source.profile(found);
            if (found.row().kind() == CaptureKind.RADIO && profile.isEmpty()) {
                continue;
            }
            RecoveredCapture capture = RecoveredCapture.put(connection, found, profile, keepsNumbers);
            if (capture.isNew()) {
                newCaptures++;
                writer.numbering().tookCapture(capture.id());
            }
            captures.put(each.getKey(), capture);
        }
        // Those whose own row is lost here but was kept there.
        for (long id : Rows.all(connection, "SELECT id FROM capture", row -> row.getLong(1))) {
            captures.putIfAbsent(id, new RecoveredCapture(id, false, keepsNumbers));
        }
    }

    private void take(SalvagedRow row) {
        if (RecoveredRows.isWanted(row) && captures.containsKey(row.number(0))) {
            waiting.add(row);
            if (waiting.size() >= ROWS_AT_ONCE) {
                flush();
            }
        }
    }

    private void flush() {
        List<SalvagedRow> rows = List.copyOf(waiting);
        waiting.clear();
        RecoveredRows.Tally tally = writer.write("recover what was heard and told", connection -> {
            RecoveredRows put = new RecoveredRows(connection, source);
            for (SalvagedRow row : rows) {
                put.put(row, captures.get(row.number(0)));
            }
            return put.tally();
        });
        frames += tally.frames();
        events += tally.events();
        alreadyThere += tally.alreadyThere();
    }

    private void finish(Connection connection) throws SQLException {
        RecoveredRows.Tally numbered = RecoveredRows.number(connection, writer.numbering());
        frames += numbered.frames();
        events += numbered.events();
        alreadyThere += numbered.alreadyThere();
        for (RecoveredCapture capture : captures.values()) {
            Rows.run(connection, "DELETE FROM derivation WHERE capture_id = ?", capture.id());
        }
        MissingRows.recount(connection, writer.numbering().taken());
    }
}
