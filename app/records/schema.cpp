#include "app/records/schema.h"

namespace carriageway {

namespace {

// Texts of jobs lie in a table of their own: a search then reads rows of some hundred bytes
// instead of pages full of JSON.
constexpr const char* version_1 = R"sql(
CREATE TABLE presses (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    name     TEXT NOT NULL,
    stations INTEGER NOT NULL,
    updated  INTEGER NOT NULL,  -- ms since 1970-01-01 UTC, as all times
    profile  TEXT NOT NULL,     -- JSON
    checksum INTEGER NOT NULL   -- of profile
) STRICT;

CREATE TABLE jobs (
    id      INTEGER PRIMARY KEY, -- drawn at random, see job_id_bits
    name    TEXT NOT NULL,
    press   TEXT NOT NULL,      -- the name of its press
    colours TEXT NOT NULL,      -- names of its heads' colours
    heads   INTEGER NOT NULL,   -- how many
    created INTEGER NOT NULL,
    updated INTEGER NOT NULL,
    removed INTEGER             -- when it was taken out of the list
) STRICT;
CREATE INDEX jobs_by_time ON jobs (updated DESC, id DESC) WHERE removed IS NULL;
CREATE INDEX jobs_by_name ON jobs (name) WHERE removed IS NULL;
CREATE INDEX jobs_removed ON jobs (removed DESC, id DESC) WHERE removed IS NOT NULL;

CREATE TABLE snapshots (
    job      INTEGER PRIMARY KEY REFERENCES jobs (id) ON DELETE CASCADE,
    text     TEXT NOT NULL,     -- JSON of the job after its last edit
    checksum INTEGER NOT NULL   -- of text
) STRICT;

CREATE TABLE edits (
    job      INTEGER NOT NULL REFERENCES jobs (id) ON DELETE CASCADE,
    sequence INTEGER NOT NULL,  -- 1 for the first edit of a job
    time     INTEGER NOT NULL,
    edit     TEXT NOT NULL,     -- JSON
    inverse  TEXT NOT NULL,     -- JSON of what undoes it
    checksum INTEGER NOT NULL,  -- of edit followed by inverse
    PRIMARY KEY (job, sequence)
) STRICT, WITHOUT ROWID;

CREATE TABLE settings (
    key   TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;
)sql";

// Text is the last column: a list of runs then reads none of the pages that it goes on in.
constexpr const char* version_2 = R"sql(
CREATE TABLE runs (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    job      INTEGER NOT NULL REFERENCES jobs (id) ON DELETE CASCADE,
    began    INTEGER NOT NULL,  -- 0: not noted
    ended    INTEGER NOT NULL,
    press    TEXT NOT NULL,     -- the name of its press
    printed  INTEGER NOT NULL,  -- pieces
    spoiled  INTEGER NOT NULL,  -- of them
    approved TEXT NOT NULL,     -- who approved the first piece; empty: nobody
    checksum INTEGER NOT NULL,  -- of text followed by job and ended
    text     TEXT NOT NULL      -- JSON of the job as it was
) STRICT;
CREATE INDEX runs_by_job ON runs (job, ended DESC, id DESC);
)sql";

// Whoever erases a person erases one row, and the rest goes with it.
constexpr const char* version_3 = R"sql(
CREATE TABLE trainees (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    name    TEXT NOT NULL,
    created INTEGER NOT NULL
) STRICT;

CREATE TABLE attempts (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,
    trainee  INTEGER REFERENCES trainees (id) ON DELETE CASCADE, -- NULL: nobody chosen
    topic    TEXT NOT NULL,     -- a key, as find_fault
    level    INTEGER NOT NULL,
    seed     INTEGER NOT NULL,  -- its 64 bits, taken as signed
    score    REAL NOT NULL,     -- 0 to 1
    seconds  REAL NOT NULL,
    hints    INTEGER NOT NULL,
    time     INTEGER NOT NULL,
    counts   INTEGER NOT NULL,  -- 1: for the level
    mistakes TEXT NOT NULL      -- keys, one a line
) STRICT;
CREATE INDEX attempts_by_trainee ON attempts (trainee, topic, time, id);

CREATE TABLE sign_offs (
    trainee INTEGER NOT NULL REFERENCES trainees (id) ON DELETE CASCADE,
    topic   TEXT NOT NULL,
    state   TEXT NOT NULL,      -- shown, helped or alone
    by      TEXT NOT NULL,      -- initials; empty: not noted
    time    INTEGER NOT NULL,
    PRIMARY KEY (trainee, topic, state)
) STRICT, WITHOUT ROWID;

CREATE TABLE calls (
    id      INTEGER PRIMARY KEY AUTOINCREMENT,
    time    INTEGER NOT NULL,
    press   TEXT NOT NULL,
    symptom TEXT NOT NULL,      -- an id of the fault book; empty: none
    notes   TEXT NOT NULL,
    found   TEXT NOT NULL,
    outcome TEXT NOT NULL       -- open, solved, not_solved or passed_on
) STRICT;
CREATE INDEX calls_by_time ON calls (time DESC, id DESC);
)sql";

} // namespace

const std::vector<Migration>& migrations() {
    static const std::vector<Migration> steps = {{1, version_1}, {2, version_2}, {3, version_3}};
    return steps;
}

} // namespace carriageway
