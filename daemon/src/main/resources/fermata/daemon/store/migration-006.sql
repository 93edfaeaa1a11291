-- Whether the beginning of a capture is a date that is known to be right. A board without a battery clock learns the date
-- while it listens: then the beginning is set right, and what the clocks said is kept beside it.
ALTER TABLE capture ADD COLUMN is_dated INTEGER NOT NULL DEFAULT 1 CHECK (is_dated IN (0, 1));

-- Before 2026 the program was not there; a clock of 32 bits that goes wrong says 2106. Files may tell of older practice.
UPDATE capture SET is_dated = 0 WHERE NOT started_wall_ms BETWEEN
    CASE kind WHEN 'radio' THEN 1767225600000 ELSE 126230400000 END AND 4102444799999;

-- What both clocks said while a capture ran: as it began, and whenever the date became known or was set.
CREATE TABLE civil_time (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    asleep_ns INTEGER NOT NULL,
    wall_ms INTEGER NOT NULL,
    proof TEXT NOT NULL CHECK (proof IN ('none', 'network', 'battery', 'person')),
    PRIMARY KEY (capture_id, ordinal)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER civil_time_is_append_only BEFORE UPDATE ON civil_time
BEGIN SELECT RAISE(ABORT, 'what clocks said is appended, never altered'); END;
