-- A practice day is read by the last-layer sequences that the days before it repeat, and leaves them to the days after it.
-- What was derived without them is derived again.

DROP TABLE rhythm;
DELETE FROM account;
DELETE FROM solve;
DELETE FROM night;
DELETE FROM snapshot;
DELETE FROM derivation;

-- Which rhythm a practice day of a solver, cube and hand began from, and which it left; the same of sequences.
CREATE TABLE rhythm (
    day TEXT NOT NULL,
    solver TEXT NOT NULL,
    cube TEXT NOT NULL,
    hand TEXT NOT NULL,
    began_from TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    sequences_before TEXT NOT NULL,
    sequences_left TEXT NOT NULL,
    PRIMARY KEY (day, solver, cube, hand)
) STRICT, WITHOUT ROWID;
