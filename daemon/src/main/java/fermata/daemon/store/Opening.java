package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A database opened to write, compared with what was acknowledged. In this order, so that a power cut at any step
 * leaves what the next opening needs: the log is copied, what is missing is noted, then counting goes on from there.
 *
 * @param connection the one that writes
 * @param numbering counts on
 * @param found what was not well
 */
record Opening(Connection connection, Numbering numbering, Opening.Found found) {
    /**
     * What was found.
     *
     * @param setAside where a damaged database was put
     * @param keptLog where a log was copied that ended too early
     */
    record Found(Optional<Path> setAside, Optional<Path> keptLog) {
        static final Found ALL_WELL = new Found(Optional.empty(), Optional.empty());
    }

    /**
     * Opens it.
     *
     * @param moment names what is set aside
     * @param setsAside whether a damaged database is set aside and another begun
     */
    static Opening of(Home home, String moment, boolean setsAside) {
        Optional<Path> setAside = Optional.empty();
        Connection connection;
        try {
            connection = Database.openForWriting(home);
        } catch (StoreException e) {
            if (e.fault() != StoreFault.DAMAGED || !setsAside) {
                throw e;
            }
            setAside = Optional.of(SetAside.move(home, moment));
            connection = Database.openForWriting(home);
        }
        boolean usable = false;
        try {
            Opening opening = compare(home, moment, connection, setAside);
            usable = true;
            return opening;
        } catch (SQLException e) {
            throw SqliteFaults.of("compare the practice with what was acknowledged", home.database(), e);
        } finally {
            if (!usable) {
                Database.close(connection);
            }
        }
    }

    private static Opening compare(Home home, String moment, Connection connection, Optional<Path> setAside)
            throws SQLException {
        Optional<Acknowledged> counted = CountFile.read(home.count()).count();
        Acknowledged count = counted.orElse(Acknowledged.NOTHING);
        boolean isShort =
                !beyond(connection, count).isEmpty() || Numbering.of(connection).captures() < count.captures();
        Optional<Path> keptLog = isShort && setAside.isEmpty() && hasBytes(home.log())
                ? Optional.of(SetAside.keepLog(home, moment))
                : Optional.empty();
        Acknowledged known = known(connection).orMore(count);
        Rows.run(connection, "BEGIN IMMEDIATE");
        try {
            MissingRows.recount(connection, known);
            leaveOut(connection, known.captures());
            Rows.run(connection, "COMMIT");
        } catch (SQLException e) {
            Rows.run(connection, "ROLLBACK");
            throw e;
        }
        Numbering numbering = Numbering.open(home.count(), counted, known);
        numbering.committed();
        return new Opening(connection, numbering, new Found(setAside, keptLog));
    }

    /** What was acknowledged beyond the last row and beyond what is noted to be missing. */
    static List<Missing> beyond(Connection connection, Acknowledged count) throws SQLException {
        Acknowledged known = known(connection);
        List<Missing> beyond = new ArrayList<>();
        if (known.frames() < count.frames()) {
            beyond.add(new Missing(Missing.Kind.FRAME, known.frames() + 1, count.frames()));
        }
        if (known.events() < count.events()) {
            beyond.add(new Missing(Missing.Kind.EVENT, known.events() + 1, count.events()));
        }
        return beyond;
    }

    /** How far the database knows itself to have been. */
    private static Acknowledged known(Connection connection) throws SQLException {
        Acknowledged known = Numbering.of(connection);
        for (Missing missing : MissingRows.noted(connection)) {
            known = known.orMore(
                    missing.kind() == Missing.Kind.FRAME
                            ? new Acknowledged(missing.last(), 0, 0)
                            : new Acknowledged(0, missing.last(), 0));
        }
        return known;
    }

    /** The numbers of captures that are missing are left to them: their solves are named after them. */
    private static void leaveOut(Connection connection, long captures) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO sqlite_sequence SELECT 'capture', 0 WHERE NOT EXISTS"
                        + " (SELECT 1 FROM sqlite_sequence WHERE name = 'capture')");
        Rows.run(connection, "UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = 'capture'", captures);
    }

    private static boolean hasBytes(Path log) {
        try {
            return Files.size(log) > 0;
        } catch (IOException notThere) {
            return false;
        }
    }
}
