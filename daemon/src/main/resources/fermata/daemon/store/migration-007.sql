-- What is acknowledged is counted: frames and events are numbered through the whole practice and carry a checksum, so that
-- what is missing or altered is known. Rows of older programs have neither and stay valid.

ALTER TABLE capture ADD COLUMN frames_before INTEGER;
ALTER TABLE capture ADD COLUMN sum INTEGER;
ALTER TABLE frame ADD COLUMN number INTEGER;
ALTER TABLE frame ADD COLUMN sum INTEGER;
ALTER TABLE event ADD COLUMN number INTEGER;
ALTER TABLE event ADD COLUMN sum INTEGER;
CREATE INDEX event_by_number ON event (number) WHERE number IS NOT NULL;

-- Ranges of numbers that were acknowledged and are not there: named until they are recovered or dismissed.
CREATE TABLE missing (
    kind TEXT NOT NULL CHECK (kind IN ('frame', 'event')),
    first INTEGER NOT NULL,
    last INTEGER NOT NULL CHECK (last >= first),
    is_dismissed INTEGER NOT NULL CHECK (is_dismissed IN (0, 1)),
    PRIMARY KEY (kind, first)
) STRICT, WITHOUT ROWID;

-- While the journal could not write: from when, how long, why, and how many frames found no room meanwhile.
CREATE TABLE outage (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    from_ns INTEGER NOT NULL,
    lasted_ns INTEGER NOT NULL CHECK (lasted_ns >= 0),
    fault TEXT NOT NULL,
    dropped INTEGER NOT NULL CHECK (dropped >= 0),
    PRIMARY KEY (capture_id, from_ns)
) STRICT, WITHOUT ROWID;

-- The schema's number once more, since one byte of the file's header holds the other.
CREATE TABLE schema_number (
    number INTEGER PRIMARY KEY
) STRICT;

-- What is derived carries a checksum too; what was derived without is derived again.
DROP TABLE derivation;
DROP TABLE snapshot;
DROP TABLE rhythm;
DROP TABLE night;
DROP TABLE solve;
DROP TABLE account;

CREATE TABLE derivation (
    capture_id INTEGER PRIMARY KEY,
    code_version TEXT NOT NULL,
    extent TEXT NOT NULL,
    heard INTEGER NOT NULL,
    repaired INTEGER NOT NULL,
    lost INTEGER NOT NULL,
    attempts INTEGER NOT NULL,
    sum INTEGER NOT NULL
) STRICT;

CREATE TABLE snapshot (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    json TEXT NOT NULL,
    sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE rhythm (
    day TEXT NOT NULL,
    solver TEXT NOT NULL,
    cube TEXT NOT NULL,
    hand TEXT NOT NULL,
    began_from TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    sequences_before TEXT NOT NULL,
    sequences_left TEXT NOT NULL,
    sum INTEGER NOT NULL,
    PRIMARY KEY (day, solver, cube, hand)
) STRICT, WITHOUT ROWID;

CREATE TABLE night (
    day TEXT PRIMARY KEY,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    json TEXT NOT NULL,
    sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE solve (
    id TEXT PRIMARY KEY,
    capture_id INTEGER NOT NULL,
    day TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    first_turn INTEGER NOT NULL,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    summary TEXT NOT NULL,
    sum INTEGER NOT NULL,
    json TEXT NOT NULL,
    json_sum INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX solve_by_day ON solve (day, started_wall_ms, capture_id, first_turn);
CREATE INDEX solve_by_capture ON solve (capture_id);

CREATE TABLE account (
    day TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    solve_id TEXT NOT NULL,
    solver TEXT NOT NULL,
    cube TEXT NOT NULL,
    hand TEXT NOT NULL,
    method TEXT NOT NULL,
    set_aside INTEGER NOT NULL,
    outcome TEXT NOT NULL,
    time_us INTEGER,
    json TEXT NOT NULL,
    sum INTEGER NOT NULL,
    PRIMARY KEY (day, started_wall_ms, solve_id)
) STRICT, WITHOUT ROWID;
