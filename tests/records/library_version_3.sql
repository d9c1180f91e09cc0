-- A library as version 3 of its tables left it. Never changed: what was written so must go on being read.
BEGIN;
PRAGMA application_id = 1131891810;
PRAGMA user_version = 3;

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

CREATE VIRTUAL TABLE job_words USING fts5 (
    name, colours, press,
    content = 'jobs', content_rowid = 'id',
    tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3');
CREATE TRIGGER job_words_added AFTER INSERT ON jobs BEGIN INSERT INTO job_words (rowid, name, colours, press) VALUES (new.id, new.name, new.colours, new.press); END;
CREATE TRIGGER job_words_deleted AFTER DELETE ON jobs BEGIN INSERT INTO job_words (job_words, rowid, name, colours, press) VALUES ('delete', old.id, old.name, old.colours, old.press); END;
CREATE TRIGGER job_words_changed AFTER UPDATE OF name, colours, press ON jobs WHEN old.name <> new.name OR old.colours <> new.colours OR old.press <> new.press BEGIN INSERT INTO job_words (job_words, rowid, name, colours, press) VALUES ('delete', old.id, old.name, old.colours, old.press); INSERT INTO job_words (rowid, name, colours, press) VALUES (new.id, new.name, new.colours, new.press); END;

INSERT INTO jobs VALUES (4503599627370497, 'Kept since version 1', 'Demonstration press, ten stations', 'Sail yellow', 1, 1000, 1200, NULL);
INSERT INTO snapshots VALUES (4503599627370497, '{
  "carriageway_job": 1,
  "name": "Kept since version 1",
  "press": {
    "name": "Demonstration press, ten stations",
    "stations": 10,
    "turning": "clockwise",
    "arm_radius_mm": 1450,
    "ruler": {
      "zero_mm": -500,
      "counts": "toward_machine",
      "graduation_mm": 1,
      "inches": false
    },
    "sensors": {
      "operator_offset_mm": -30,
      "machine_offset_mm": 30,
      "bar_length_mm": 60,
      "reach_mm": 4,
      "hysteresis_mm": 2,
      "latency_s": 0.015,
      "separation_margin_mm": 5,
      "separation_measured": false,
      "measured_separation_mm": 70,
      "separation_spread": {
        "value_mm": 1,
        "measured": false
      }
    },
    "carriage": {
      "range_lo_mm": -380,
      "range_hi_mm": 380,
      "acceleration_mm_per_s2": 8000,
      "fastest_mm_per_s": 1200,
      "drop_time_s": 0.15,
      "drop_dwell_s": 0.2
    },
    "squeegee_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "flood_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "squeegee_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "flood_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "angles": {
      "least_deg": 5,
      "most_deg": 25,
      "wings_flat_deg": 25,
      "wing_length_mm": 30
    },
    "allowances": {
      "frame_clearance_mm": 50,
      "platen_inset_mm": 10,
      "least_bead_mm": 40,
      "stop_spread": {
        "value_mm": 1,
        "measured": false
      },
      "screen_spread": {
        "value_mm": 1,
        "measured": false
      },
      "image_spread": {
        "value_mm": 1,
        "measured": false
      },
      "overtravel_spread": {
        "value_mm": 2,
        "measured": false
      }
    },
    "adjusters": [
      {
        "name": "Left",
        "side": "left",
        "x_mm": -230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Right",
        "side": "right",
        "x_mm": 230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Across",
        "side": "across",
        "x_mm": 0,
        "y_mm": -370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": false
      }
    ]
  },
  "platen": {
    "width_mm": 406,
    "length_mm": 559,
    "offset_x_mm": 0,
    "offset_y_mm": 30
  },
  "wishes": {
    "run_past_mm": 25,
    "side_overlap_mm": 12
  },
  "stations": ["load", "open", "flash", "cool", "open", "open", "open", "open", "open", "unload"],
  "heads": [
    {
      "id": 2,
      "station": 5,
      "colour": "Sail yellow",
      "ink": "#E9B320",
      "screen": {
        "across_mm": 584,
        "along_mm": 787,
        "profile_width_mm": 38,
        "mesh_per_cm": 62,
        "thread_um": 64,
        "tension_along_n_per_cm": 25,
        "tension_across_n_per_cm": 25
      },
      "image": {
        "width_mm": 244,
        "length_mm": 298,
        "offset_x_mm": -6,
        "offset_y_mm": 24,
        "rotation_deg": 0
      },
      "squeegee": {
        "width_mm": 330,
        "angle_deg": 15,
        "gauge_marks": 1
      },
      "flood": {
        "width_mm": 356,
        "angle_deg": 15,
        "gauge_marks": 1,
        "winged": true
      },
      "print_stroke": "toward_operator",
      "print_speed_mm_per_s": 600,
      "flood_speed_mm_per_s": 700,
      "stops": {
        "operator_mm": -190.5,
        "machine_mm": 179
      }
    }
  ]
}
', 208994197717965863);

INSERT INTO edits VALUES (4503599627370497, 1, 1100, '{"carriageway_edit":1,"set_name":{"head":0,"name":"Kept since version 1"}}
', '{"carriageway_edit":1,"set_name":{"head":0,"name":"Before"}}
', -4973770063901023699);
INSERT INTO edits VALUES (4503599627370497, 2, 1200, '{"carriageway_edit":1,"set_stops":{"head":2,"operator_mm":-190.5,"machine_mm":179}}
', '{"carriageway_edit":1,"set_stops":{"head":2,"operator_mm":-185,"machine_mm":179}}
', 5710823242832327062);

INSERT INTO jobs VALUES (2251799813685249, 'Removed in version 1', 'Demonstration press, ten stations', 'Sail yellow', 1, 900, 900, 1300);
INSERT INTO snapshots VALUES (2251799813685249, '{
  "carriageway_job": 1,
  "name": "Removed in version 1",
  "press": {
    "name": "Demonstration press, ten stations",
    "stations": 10,
    "turning": "clockwise",
    "arm_radius_mm": 1450,
    "ruler": {
      "zero_mm": -500,
      "counts": "toward_machine",
      "graduation_mm": 1,
      "inches": false
    },
    "sensors": {
      "operator_offset_mm": -30,
      "machine_offset_mm": 30,
      "bar_length_mm": 60,
      "reach_mm": 4,
      "hysteresis_mm": 2,
      "latency_s": 0.015,
      "separation_margin_mm": 5,
      "separation_measured": false,
      "measured_separation_mm": 70,
      "separation_spread": {
        "value_mm": 1,
        "measured": false
      }
    },
    "carriage": {
      "range_lo_mm": -380,
      "range_hi_mm": 380,
      "acceleration_mm_per_s2": 8000,
      "fastest_mm_per_s": 1200,
      "drop_time_s": 0.15,
      "drop_dwell_s": 0.2
    },
    "squeegee_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "flood_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "squeegee_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "flood_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "angles": {
      "least_deg": 5,
      "most_deg": 25,
      "wings_flat_deg": 25,
      "wing_length_mm": 30
    },
    "allowances": {
      "frame_clearance_mm": 50,
      "platen_inset_mm": 10,
      "least_bead_mm": 40,
      "stop_spread": {
        "value_mm": 1,
        "measured": false
      },
      "screen_spread": {
        "value_mm": 1,
        "measured": false
      },
      "image_spread": {
        "value_mm": 1,
        "measured": false
      },
      "overtravel_spread": {
        "value_mm": 2,
        "measured": false
      }
    },
    "adjusters": [
      {
        "name": "Left",
        "side": "left",
        "x_mm": -230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Right",
        "side": "right",
        "x_mm": 230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Across",
        "side": "across",
        "x_mm": 0,
        "y_mm": -370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": false
      }
    ]
  },
  "platen": {
    "width_mm": 406,
    "length_mm": 559,
    "offset_x_mm": 0,
    "offset_y_mm": 30
  },
  "wishes": {
    "run_past_mm": 25,
    "side_overlap_mm": 12
  },
  "stations": ["load", "open", "flash", "cool", "open", "open", "open", "open", "open", "unload"],
  "heads": [
    {
      "id": 2,
      "station": 5,
      "colour": "Sail yellow",
      "ink": "#E9B320",
      "screen": {
        "across_mm": 584,
        "along_mm": 787,
        "profile_width_mm": 38,
        "mesh_per_cm": 62,
        "thread_um": 64,
        "tension_along_n_per_cm": 25,
        "tension_across_n_per_cm": 25
      },
      "image": {
        "width_mm": 244,
        "length_mm": 298,
        "offset_x_mm": -6,
        "offset_y_mm": 24,
        "rotation_deg": 0
      },
      "squeegee": {
        "width_mm": 330,
        "angle_deg": 15,
        "gauge_marks": 1
      },
      "flood": {
        "width_mm": 356,
        "angle_deg": 15,
        "gauge_marks": 1,
        "winged": true
      },
      "print_stroke": "toward_operator",
      "print_speed_mm_per_s": 600,
      "flood_speed_mm_per_s": 700,
      "stops": {
        "operator_mm": -185,
        "machine_mm": 179
      }
    }
  ]
}
', 4590691301487988651);

INSERT INTO presses VALUES (3, 'Demonstration press, ten stations', 10, 950, '{
  "carriageway_press": 1,
  "name": "Demonstration press, ten stations",
  "stations": 10,
  "turning": "clockwise",
  "arm_radius_mm": 1450,
  "ruler": {
    "zero_mm": -500,
    "counts": "toward_machine",
    "graduation_mm": 1,
    "inches": false
  },
  "sensors": {
    "operator_offset_mm": -30,
    "machine_offset_mm": 30,
    "bar_length_mm": 60,
    "reach_mm": 4,
    "hysteresis_mm": 2,
    "latency_s": 0.015,
    "separation_margin_mm": 5,
    "separation_measured": false,
    "measured_separation_mm": 70,
    "separation_spread": {
      "value_mm": 1,
      "measured": false
    }
  },
  "carriage": {
    "range_lo_mm": -380,
    "range_hi_mm": 380,
    "acceleration_mm_per_s2": 8000,
    "fastest_mm_per_s": 1200,
    "drop_time_s": 0.15,
    "drop_dwell_s": 0.2
  },
  "squeegee_holder": {
    "pivot_offset_mm": 15,
    "pivot_height_mm": 65,
    "half_depth_mm": 15
  },
  "flood_holder": {
    "pivot_offset_mm": 15,
    "pivot_height_mm": 65,
    "half_depth_mm": 15
  },
  "squeegee_gauge": {
    "mm_per_mark": 6,
    "lowest_marks": 0,
    "highest_marks": 2,
    "graduation_marks": 0.1
  },
  "flood_gauge": {
    "mm_per_mark": 6,
    "lowest_marks": 0,
    "highest_marks": 2,
    "graduation_marks": 0.1
  },
  "angles": {
    "least_deg": 5,
    "most_deg": 25,
    "wings_flat_deg": 25,
    "wing_length_mm": 30
  },
  "allowances": {
    "frame_clearance_mm": 50,
    "platen_inset_mm": 10,
    "least_bead_mm": 40,
    "stop_spread": {
      "value_mm": 1,
      "measured": false
    },
    "screen_spread": {
      "value_mm": 1,
      "measured": false
    },
    "image_spread": {
      "value_mm": 1,
      "measured": false
    },
    "overtravel_spread": {
      "value_mm": 2,
      "measured": false
    }
  },
  "adjusters": [
    {
      "name": "Left",
      "side": "left",
      "x_mm": -230,
      "y_mm": 370,
      "mm_per_turn": 1.25,
      "graduations": 12,
      "clockwise_positive": true
    },
    {
      "name": "Right",
      "side": "right",
      "x_mm": 230,
      "y_mm": 370,
      "mm_per_turn": 1.25,
      "graduations": 12,
      "clockwise_positive": true
    },
    {
      "name": "Across",
      "side": "across",
      "x_mm": 0,
      "y_mm": -370,
      "mm_per_turn": 1.25,
      "graduations": 12,
      "clockwise_positive": false
    }
  ]
}
', 8420524430556722614);
INSERT INTO settings VALUES ('theme', 'dark');
INSERT INTO settings VALUES ('last_job', '4503599627370497');
INSERT INTO runs VALUES (1, 4503599627370497, 4001, 9000, 'Demonstration press, ten stations', 101, 2, 'shift lead', -1295963212392651233, '{
  "carriageway_job": 1,
  "name": "Kept since version 1",
  "press": {
    "name": "Demonstration press, ten stations",
    "stations": 10,
    "turning": "clockwise",
    "arm_radius_mm": 1450,
    "ruler": {
      "zero_mm": -500,
      "counts": "toward_machine",
      "graduation_mm": 1,
      "inches": false
    },
    "sensors": {
      "operator_offset_mm": -30,
      "machine_offset_mm": 30,
      "bar_length_mm": 60,
      "reach_mm": 4,
      "hysteresis_mm": 2,
      "latency_s": 0.015,
      "separation_margin_mm": 5,
      "separation_measured": false,
      "measured_separation_mm": 70,
      "separation_spread": {
        "value_mm": 1,
        "measured": false
      }
    },
    "carriage": {
      "range_lo_mm": -380,
      "range_hi_mm": 380,
      "acceleration_mm_per_s2": 8000,
      "fastest_mm_per_s": 1200,
      "drop_time_s": 0.15,
      "drop_dwell_s": 0.2
    },
    "squeegee_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "flood_holder": {
      "pivot_offset_mm": 15,
      "pivot_height_mm": 65,
      "half_depth_mm": 15
    },
    "squeegee_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "flood_gauge": {
      "mm_per_mark": 6,
      "lowest_marks": 0,
      "highest_marks": 2,
      "graduation_marks": 0.1
    },
    "angles": {
      "least_deg": 5,
      "most_deg": 25,
      "wings_flat_deg": 25,
      "wing_length_mm": 30
    },
    "allowances": {
      "frame_clearance_mm": 50,
      "platen_inset_mm": 10,
      "least_bead_mm": 40,
      "stop_spread": {
        "value_mm": 1,
        "measured": false
      },
      "screen_spread": {
        "value_mm": 1,
        "measured": false
      },
      "image_spread": {
        "value_mm": 1,
        "measured": false
      },
      "overtravel_spread": {
        "value_mm": 2,
        "measured": false
      }
    },
    "adjusters": [
      {
        "name": "Left",
        "side": "left",
        "x_mm": -230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Right",
        "side": "right",
        "x_mm": 230,
        "y_mm": 370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": true
      },
      {
        "name": "Across",
        "side": "across",
        "x_mm": 0,
        "y_mm": -370,
        "mm_per_turn": 1.25,
        "graduations": 12,
        "clockwise_positive": false
      }
    ]
  },
  "platen": {
    "width_mm": 406,
    "length_mm": 559,
    "offset_x_mm": 0,
    "offset_y_mm": 30
  },
  "wishes": {
    "run_past_mm": 25,
    "side_overlap_mm": 12
  },
  "stations": ["load", "open", "flash", "cool", "open", "open", "open", "open", "open", "unload"],
  "heads": [
    {
      "id": 2,
      "station": 5,
      "colour": "Sail yellow",
      "ink": "#E9B320",
      "screen": {
        "across_mm": 584,
        "along_mm": 787,
        "profile_width_mm": 38,
        "mesh_per_cm": 62,
        "thread_um": 64,
        "tension_along_n_per_cm": 25,
        "tension_across_n_per_cm": 25
      },
      "image": {
        "width_mm": 244,
        "length_mm": 298,
        "offset_x_mm": -6,
        "offset_y_mm": 24,
        "rotation_deg": 0
      },
      "squeegee": {
        "width_mm": 330,
        "angle_deg": 15,
        "gauge_marks": 1
      },
      "flood": {
        "width_mm": 356,
        "angle_deg": 15,
        "gauge_marks": 1,
        "winged": true
      },
      "print_stroke": "toward_operator",
      "print_speed_mm_per_s": 600,
      "flood_speed_mm_per_s": 700,
      "stops": {
        "operator_mm": -190.5,
        "machine_mm": 179
      }
    }
  ],
  "walk": [
    {
      "head": 2,
      "field": "pressure.squeegee_kpa",
      "done": true,
      "real": {
        "value": 211
      },
      "time_ms": 5000,
      "initials": "AB"
    }
  ],
  "record": {
    "ticks": [
      {
        "item": 1,
        "time_ms": 4001,
        "initials": "AB"
      }
    ],
    "counts": [
      {
        "printed": 101,
        "spoiled": 2,
        "time_ms": 7000,
        "initials": "CD"
      }
    ],
    "stoppages": [
      {
        "minutes": 12.5,
        "reason": "ink",
        "note": "the white ran out",
        "time_ms": 6500,
        "initials": "CD"
      }
    ],
    "approval": {
      "by": "shift lead",
      "against": "the customer''s print",
      "time_ms": 5500
    },
    "notes": "run 1"
  }
}
');
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

INSERT INTO trainees VALUES (1, 'Erased before', 5);
DELETE FROM trainees;
INSERT INTO trainees VALUES (2, 'Robin', 5000);
INSERT INTO trainees VALUES (3, 'Álex', 5100);
INSERT INTO attempts VALUES (1, 2, 'find_fault', 3, -7046029254386353131, 0.75, 41.5, 1, 5200, 1, '');
INSERT INTO attempts VALUES (2, NULL, 'find_fault', 1, 0, 1.0, 12.0, 0, 5300, 0, '');
INSERT INTO sign_offs VALUES (2, 'find_fault', 'alone', 'kl', 5400);
INSERT INTO calls VALUES (1, 5500, 'Press two', 'clicks', 'clicks and stays', 'sensors', 'solved');
COMMIT;
