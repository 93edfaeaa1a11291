-- What solvers say their hands did teaches how their other solves are read, so it is asked for again and again.
CREATE INDEX event_hand ON event (capture_id, ordinal) WHERE kind = 'hand';
