CREATE TABLE fact (
  family TEXT NOT NULL,
  id TEXT NOT NULL,
  car TEXT,
  seq INTEGER NOT NULL REFERENCES journal (seq),
  first_seq INTEGER NOT NULL REFERENCES journal (seq),
  value TEXT NOT NULL,
  PRIMARY KEY (family, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE journal (
  seq INTEGER PRIMARY KEY,
  row TEXT NOT NULL,
  hash BLOB NOT NULL CHECK (length(hash) = 32),
  at TEXT NOT NULL,
  kind TEXT NOT NULL,
  version INTEGER NOT NULL,
  subject TEXT NOT NULL,
  -- The entry that withdrew this one; null while it stands.
  withdrawn_by INTEGER REFERENCES journal (seq)
) STRICT;

CREATE TABLE journal_value (
  seq INTEGER NOT NULL REFERENCES journal (seq),
  name TEXT NOT NULL,
  salt TEXT NOT NULL CHECK (length(salt) = 32),
  value TEXT NOT NULL,
  PRIMARY KEY (seq, name)
) STRICT, WITHOUT ROWID;

CREATE TABLE seal_given (
  tree_size INTEGER NOT NULL,
  root BLOB NOT NULL CHECK (length(root) = 32),
  at TEXT NOT NULL
) STRICT;

CREATE TABLE told (
  occurrence TEXT PRIMARY KEY,
  day TEXT NOT NULL REFERENCES told_day (day)
) STRICT, WITHOUT ROWID;

CREATE TABLE told_day (
  day TEXT PRIMARY KEY,
  at TEXT NOT NULL
) STRICT;

CREATE TABLE touch (
  family TEXT NOT NULL,
  id TEXT NOT NULL,
  seq INTEGER NOT NULL REFERENCES journal (seq),
  role TEXT NOT NULL CHECK (role IN ('puts', 'refers')),
  PRIMARY KEY (family, id, seq, role)
) STRICT, WITHOUT ROWID;

CREATE INDEX fact_by_car ON fact (family, car, id);

CREATE INDEX journal_by_subject ON journal (subject, seq);

CREATE INDEX touch_by_entry ON touch (seq);
