-- What the radio said and what files told: appended, never altered.

CREATE TABLE profile (
    id INTEGER PRIMARY KEY,
    hash TEXT NOT NULL UNIQUE,
    json TEXT NOT NULL
) STRICT;

CREATE TABLE capture (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uuid TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('radio', 'stream')),
    boot_id TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    started_mono_ns INTEGER NOT NULL,
    zone TEXT NOT NULL,
    cube TEXT NOT NULL,
    solver TEXT NOT NULL,
    hand TEXT NOT NULL CHECK (hand IN ('left', 'right', 'two', 'unknown')),
    profile_id INTEGER REFERENCES profile (id),
    origin TEXT NOT NULL,
    header TEXT NOT NULL,
    truth TEXT NOT NULL,
    CHECK ((kind = 'radio') = (profile_id IS NOT NULL))
) STRICT;

CREATE TABLE connection (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    number INTEGER NOT NULL,
    first_ns INTEGER NOT NULL,
    PRIMARY KEY (capture_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE characteristic (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE frame (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    arrival_ns INTEGER NOT NULL,
    characteristic_id INTEGER NOT NULL REFERENCES characteristic (id),
    bytes BLOB NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE link_event (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    kind TEXT NOT NULL,
    detail TEXT NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE dropped (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    frames INTEGER NOT NULL CHECK (frames > 0),
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;

-- Events that no frame told: a file's, or those a person appended (reference, mark, verdict).
CREATE TABLE event (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    ordinal INTEGER NOT NULL,
    version INTEGER NOT NULL,
    kind TEXT NOT NULL,
    line TEXT NOT NULL,
    PRIMARY KEY (capture_id, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER frame_is_append_only BEFORE UPDATE ON frame
BEGIN SELECT RAISE(ABORT, 'frames are appended, never altered'); END;
CREATE TRIGGER event_is_append_only BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are appended, never altered'); END;

-- What was derived: may be thrown away at any time and is derived again.

CREATE TABLE derivation (
    capture_id INTEGER PRIMARY KEY REFERENCES capture (id),
    code_version TEXT NOT NULL,
    extent TEXT NOT NULL,
    heard INTEGER NOT NULL,
    repaired INTEGER NOT NULL,
    lost INTEGER NOT NULL,
    attempts INTEGER NOT NULL
) STRICT;

-- The parameters that a night taught; a result that used them names them.
CREATE TABLE snapshot (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE night (
    day TEXT PRIMARY KEY,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE solve (
    id TEXT PRIMARY KEY,
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    day TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    first_turn INTEGER NOT NULL,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    summary TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX solve_by_day ON solve (day, started_wall_ms, capture_id, first_turn);
CREATE INDEX solve_by_capture ON solve (capture_id);
