-- Times are nanoseconds since 1970-01-01T00:00:00Z, durations nanoseconds, filament micrometres.

CREATE TABLE hot_end (
  id      INTEGER PRIMARY KEY,
  printer TEXT    NOT NULL,
  number  INTEGER NOT NULL,
  UNIQUE (printer, number)
) STRICT;

-- The ledger's memory between two readings, as JSON.
CREATE TABLE account (
  hot_end INTEGER PRIMARY KEY REFERENCES hot_end (id),
  state   TEXT    NOT NULL
) STRICT;

-- What the jam watch remembers, as JSON; kept now and then.
CREATE TABLE watch (
  hot_end INTEGER PRIMARY KEY REFERENCES hot_end (id),
  state   TEXT    NOT NULL
) STRICT;

-- Facts of at most five minutes of one hot end.
CREATE TABLE bucket (
  hot_end               INTEGER NOT NULL REFERENCES hot_end (id),
  from_nanos            INTEGER NOT NULL,
  until_nanos           INTEGER NOT NULL,
  bridged_nanos         INTEGER NOT NULL,
  unobserved_nanos      INTEGER NOT NULL,
  idle_nanos            INTEGER NOT NULL,
  printing_nanos        INTEGER NOT NULL,
  commanded_micrometres INTEGER NOT NULL,
  measured_micrometres  INTEGER NOT NULL,
  PRIMARY KEY (hot_end, from_nanos),
  CHECK (from_nanos < until_nanos AND until_nanos - from_nanos <= 300000000000)
) STRICT, WITHOUT ROWID;

-- Hot time of a bucket by band (its lower edge in degrees Celsius).
CREATE TABLE heat (
  hot_end               INTEGER NOT NULL,
  from_nanos            INTEGER NOT NULL,
  band                  INTEGER NOT NULL,
  nanos                 INTEGER NOT NULL,
  micro_celsius_seconds INTEGER NOT NULL,
  PRIMARY KEY (hot_end, from_nanos, band),
  FOREIGN KEY (hot_end, from_nanos) REFERENCES bucket (hot_end, from_nanos)
) STRICT, WITHOUT ROWID;

-- Every change of parts, and when it was made known. Parts are never overwritten:
-- each change adds the part as it then stood, and the newest revision of a part holds.
CREATE TABLE revision (
  number         INTEGER PRIMARY KEY,
  recorded_nanos INTEGER NOT NULL
) STRICT;

CREATE TABLE part (
  id           TEXT    NOT NULL,
  revision     INTEGER NOT NULL REFERENCES revision (number),
  kind         TEXT    NOT NULL,
  variant      TEXT,
  added_nanos  INTEGER NOT NULL,
  paper_ending TEXT,
  PRIMARY KEY (id, revision)
) STRICT, WITHOUT ROWID;

-- Hours kept on paper, by band.
CREATE TABLE part_paper (
  part                  TEXT    NOT NULL,
  revision              INTEGER NOT NULL,
  band                  INTEGER NOT NULL,
  nanos                 INTEGER NOT NULL,
  micro_celsius_seconds INTEGER NOT NULL,
  PRIMARY KEY (part, revision, band),
  FOREIGN KEY (part, revision) REFERENCES part (id, revision)
) STRICT, WITHOUT ROWID;

CREATE TABLE part_event (
  part              TEXT    NOT NULL,
  revision          INTEGER NOT NULL,
  position          INTEGER NOT NULL,
  at_nanos          INTEGER NOT NULL,
  what              TEXT    NOT NULL CHECK (what IN ('fitted', 'removed', 'cleaned', 'retired')),
  hot_end           INTEGER REFERENCES hot_end (id),
  past_hours        REAL,
  past_spread_hours REAL,
  past_celsius      REAL,
  because           TEXT,
  excused           INTEGER,
  restores          REAL,
  PRIMARY KEY (part, revision, position),
  FOREIGN KEY (part, revision) REFERENCES part (id, revision),
  CHECK (what <> 'fitted' OR hot_end IS NOT NULL),
  CHECK (what <> 'removed' OR (because IS NOT NULL AND excused IS NOT NULL)),
  CHECK (what <> 'cleaned' OR restores IS NOT NULL)
) STRICT, WITHOUT ROWID;

CREATE VIEW current_part AS
SELECT * FROM part
WHERE revision = (SELECT max(other.revision) FROM part AS other WHERE other.id = part.id);

CREATE TABLE recording (
  digest   TEXT    PRIMARY KEY,
  name     TEXT    NOT NULL,
  at_nanos INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- Stretches of trouble, the alerts that tell of them, and how far each has come on its routes.
CREATE TABLE episode (
  id                 INTEGER PRIMARY KEY,
  topic              TEXT    NOT NULL,
  subject            TEXT    NOT NULL,
  began_nanos        INTEGER NOT NULL,
  is_over            INTEGER NOT NULL,
  is_settled         INTEGER NOT NULL DEFAULT 0,
  acknowledged_nanos INTEGER,
  acknowledged_by    TEXT,
  UNIQUE (topic, subject, began_nanos)
) STRICT;

CREATE INDEX open_episode ON episode (id) WHERE is_over = 0;

CREATE TABLE alert (
  position INTEGER PRIMARY KEY,
  id       TEXT    NOT NULL UNIQUE,
  episode  INTEGER NOT NULL REFERENCES episode (id),
  phase    TEXT    NOT NULL CHECK (phase IN ('began', 'reminder', 'all-clear')),
  number   INTEGER NOT NULL,
  at_nanos INTEGER NOT NULL,
  text     TEXT    NOT NULL
) STRICT;

CREATE INDEX alert_of_episode ON alert (episode);

CREATE TABLE delivery (
  alert      TEXT    NOT NULL REFERENCES alert (id),
  route      TEXT    NOT NULL,
  state      TEXT    NOT NULL CHECK (state IN ('waiting', 'delivered', 'cancelled', 'dead')),
  attempts   INTEGER NOT NULL,
  next_nanos INTEGER NOT NULL,
  detail     TEXT    NOT NULL,
  PRIMARY KEY (alert, route)
) STRICT, WITHOUT ROWID;

CREATE INDEX waiting_delivery ON delivery (route) WHERE state = 'waiting';
