-- What was told of drills and sequences is asked for at every look at what is stale, and was found by reading all events.
CREATE INDEX event_calibration ON event (capture_id, ordinal) WHERE kind = 'calibration';
CREATE INDEX event_sequences ON event (capture_id, ordinal) WHERE kind = 'sequences';
