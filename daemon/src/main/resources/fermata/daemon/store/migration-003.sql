-- What was derived by the first version of rests is derived again, each day beginning from the rhythm of the day before.

DROP TABLE solve;
DROP TABLE night;
DROP TABLE snapshot;
DELETE FROM derivation;

CREATE TABLE snapshot (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- Which rhythm a practice day of a solver, cube and hand began from, and which it left.
CREATE TABLE rhythm (
    day TEXT NOT NULL,
    solver TEXT NOT NULL,
    cube TEXT NOT NULL,
    hand TEXT NOT NULL,
    began_from TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    PRIMARY KEY (day, solver, cube, hand)
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

-- What sums over nights need of a solve, apart from its document, so that a year is read in one go.
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
    PRIMARY KEY (day, started_wall_ms, solve_id)
) STRICT, WITHOUT ROWID;
