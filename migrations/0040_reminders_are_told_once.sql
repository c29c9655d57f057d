-- Why: a household is reminded at most once a day, and of nothing twice, also over a restart and with two windows open.
-- Existing rows: none; what was due before is told once. Not state: it is no part of a replay, as the seals given are not.
CREATE TABLE told_day (
  day TEXT PRIMARY KEY,
  at TEXT NOT NULL
) STRICT;

-- What was told, by the name of its occurrence: the next occurrence has another.
CREATE TABLE told (
  occurrence TEXT PRIMARY KEY,
  day TEXT NOT NULL REFERENCES told_day (day)
) STRICT, WITHOUT ROWID;
