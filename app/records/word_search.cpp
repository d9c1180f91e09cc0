#include "app/records/word_search.h"

#include <algorithm>
#include <cstddef>
#include <iterator>

#include <sqlite3.h>

#include "app/records/sqlite_fault.h"

namespace carriageway {

namespace {

// Diacritics and case are folded by the tokenizer, in the query as in the jobs. Prefixes of up to
// eight characters have an index of their own: without it every word that begins so is put together
// first, however few jobs the other words of the query leave. Pieces of the index are put together as
// soon as there are two of a size: each has to be looked through for every word. An index that was
// made otherwise finds the same.
constexpr const char* make_index = R"sql(
DROP TABLE IF EXISTS job_words;
CREATE VIRTUAL TABLE job_words USING fts5 (
    name, colours, press,
    content = 'jobs', content_rowid = 'id',
    tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3 4 5 6 7 8');
INSERT INTO job_words (job_words, rank) VALUES ('automerge', 2);
INSERT INTO job_words (job_words) VALUES ('rebuild');
)sql";

// Each as SQLite keeps it in its schema, to the letter.
constexpr const char* triggers[] = {
    "CREATE TRIGGER job_words_added AFTER INSERT ON jobs BEGIN "
    "INSERT INTO job_words (rowid, name, colours, press) "
    "VALUES (new.id, new.name, new.colours, new.press); END",

    "CREATE TRIGGER job_words_deleted AFTER DELETE ON jobs BEGIN "
    "INSERT INTO job_words (job_words, rowid, name, colours, press) "
    "VALUES ('delete', old.id, old.name, old.colours, old.press); END",

    "CREATE TRIGGER job_words_changed AFTER UPDATE OF name, colours, press ON jobs "
    "WHEN old.name <> new.name OR old.colours <> new.colours OR old.press <> new.press BEGIN "
    "INSERT INTO job_words (job_words, rowid, name, colours, press) "
    "VALUES ('delete', old.id, old.name, old.colours, old.press); "
    "INSERT INTO job_words (rowid, name, colours, press) "
    "VALUES (new.id, new.name, new.colours, new.press); END"};

constexpr const char* drop_triggers = R"sql(
DROP TRIGGER IF EXISTS job_words_added;
DROP TRIGGER IF EXISTS job_words_deleted;
DROP TRIGGER IF EXISTS job_words_changed;
)sql";

bool has_fts5(SQLite::Database& database) {
    return database.execAndGet("SELECT sqlite_compileoption_used('ENABLE_FTS5')").getInt() > 0;
}

// Triggers that are there, ours or not, and whether they are exactly ours.
struct TriggersThere {
    int count = 0;
    bool ours = true;
};

TriggersThere triggers_there(SQLite::Database& database) {
    TriggersThere there;
    SQLite::Statement found(database, "SELECT sql FROM sqlite_schema WHERE type = 'trigger'");
    while (found.executeStep()) {
        const std::string sql = found.getColumn(0).getString();
        there.ours = there.ours && std::find(std::begin(triggers), std::end(triggers), sql) !=
                                       std::end(triggers);
        ++there.count;
    }
    there.ours = there.ours && there.count == 3;
    return there;
}

// While it lives, the schema itself may be written.
class OpenSchema {
  public:
    explicit OpenSchema(SQLite::Database& database) : database_(database) {
        sqlite3_db_config(database_.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
        database_.exec("PRAGMA writable_schema = ON");
    }
    ~OpenSchema() {
        database_.tryExec("PRAGMA writable_schema = RESET"); // which reads the schema again
        sqlite3_db_config(database_.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    }
    OpenSchema(const OpenSchema&) = delete;
    OpenSchema& operator=(const OpenSchema&) = delete;

  private:
    SQLite::Database& database_;
};

// Takes away an index that is too damaged for DROP TABLE, which would have to open it: once its
// entry is gone, what it kept is in ordinary tables.
void forget_index(SQLite::Database& database) {
    {
        const OpenSchema open(database);
        database.exec("DELETE FROM sqlite_schema WHERE name = 'job_words'");
    }
    for (const char* part : {"data", "idx", "docsize", "config"})
        database.exec(std::string("DROP TABLE IF EXISTS job_words_") + part);
}

// Takes the triggers away, and the index when it is `damaged`; makes both anew when `wanted`. All
// or nothing.
void make_word_index(SQLite::Database& database, bool wanted, bool damaged = false) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    database.exec(drop_triggers);
    if (damaged) forget_index(database);
    if (wanted) {
        database.exec(make_index);
        for (const char* trigger : triggers)
            database.exec(trigger);
    }
    transaction.commit();
}

bool is_space(char c) { return c == ' ' || (c >= '\t' && c <= '\r') || c == '\0'; }

// A letter or digit of ASCII, or part of any character beyond it.
bool is_word_byte(char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
           static_cast<unsigned char>(c) >= 0x80;
}

} // namespace

bool prepare_word_index(SQLite::Database& database, bool wanted) {
    const bool usable = wanted && has_fts5(database);
    const TriggersThere there = triggers_there(database);
    if (usable ? there.ours : there.count == 0) return usable;
    try {
        make_word_index(database, usable);
    } catch (const SQLite::Exception& failure) {
        if (!is_damaged_index(failure)) throw;
        remake_word_index(database);
    }
    return usable;
}

void remake_word_index(SQLite::Database& database) { make_word_index(database, true, true); }

bool has_word_index(SQLite::Database& database) {
    return has_fts5(database) && triggers_there(database).ours;
}

std::vector<std::string> search_words(const std::string& query) {
    std::vector<std::string> words;
    std::size_t at = 0;
    while (at < query.size() && words.size() < most_search_words) {
        const auto begin = std::find_if_not(query.begin() + static_cast<std::ptrdiff_t>(at),
                                            query.end(), is_space);
        const auto end = std::find_if(begin, query.end(), is_space);
        if (std::any_of(begin, end, is_word_byte)) {
            words.emplace_back(begin, end);
            std::string& last = words.back();
            if (last.size() > longest_search_word) last.resize(longest_search_word);
        }
        at = static_cast<std::size_t>(end - query.begin());
    }
    return words;
}

std::string index_expression(const std::vector<std::string>& words) {
    std::string expression;
    for (const std::string& word : words) {
        if (!expression.empty()) expression += ' ';
        expression += '"';
        for (char c : word) {
            if (c == '"') expression += '"';
            expression += c;
        }
        expression += "\"*";
    }
    return expression;
}

std::string like_pattern(const std::string& word) {
    std::string pattern = "%";
    for (char c : word) {
        if (c == '%' || c == '_' || c == '\\') pattern += '\\';
        pattern += c;
    }
    return pattern + '%';
}

} // namespace carriageway
