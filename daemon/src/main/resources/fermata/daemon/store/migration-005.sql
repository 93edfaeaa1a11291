-- A stream that is brought in again is known by its lines. One row for each state that a capture was ever in: as it came
-- in, and after each thing that somebody said of it. Captures without a row are given one when the next file comes.
CREATE TABLE told_lines (
    sha256 TEXT NOT NULL,
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    PRIMARY KEY (sha256, capture_id)
) STRICT, WITHOUT ROWID;

CREATE INDEX told_lines_by_capture ON told_lines (capture_id);
