#include "app/records/fault_book.h"

#include <array>
#include <utility>

#include "app/records/embedded_demo.h"
#include "app/records/exchange.h"
#include "app/records/fault_book_reader.h"

namespace carriageway {
namespace {

using Kind = JsonNode::Kind;

// In the order of their enums.
constexpr std::array source_names{"published",       "published_conflicting", "from_memory",
                                  "common_practice", "ours",                  "user"};
constexpr std::array caution_names{"none",        "hands_in_carriage", "index_path",
                                   "isolated_and_bled", "lamps_alive", "hot_surface", "solvents"};
constexpr std::array measure_names{"none", "number", "procedure", "marks", "platen_marks",
                                   "heights"};

template <std::size_t Size>
std::optional<std::size_t> place_in(const std::array<const char*, Size>& names,
                                    std::string_view name) {
    for (std::size_t i = 0; i < Size; ++i)
        if (names[i] == name) return i;
    return std::nullopt;
}

std::optional<Field> field_named(std::string_view key) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i)
        if (info_of(static_cast<Field>(i)).key == key) return static_cast<Field>(i);
    return std::nullopt;
}

std::string short_quote(std::string_view text) { return in_quotes(shortened(text)); }

/// Reads one book: first all ids, so that entries may name one another in any order.
class BookReader {
  public:
    explicit BookReader(std::string_view text) : parts_(text) {}

    std::variant<FaultLore, FaultBookFault> read(const JsonNode& root) {
        const BookNode top{&root, {}};
        parts_.object(top, {"carriageway_faults", "note", "sources", "symptoms", "causes", "tests"});
        const BookNode version = parts_.member(top, "carriageway_faults", Kind::number);
        if (version.node->number != 1.0) parts_.refuse(version, "only version 1 can be read");
        if (parts_.has(top, "note")) parts_.text(top, "note");
        ids(top, "sources", lore_.book.sources);
        ids(top, "symptoms", lore_.book.symptoms);
        ids(top, "causes", lore_.book.causes);
        ids(top, "tests", lore_.book.tests);
        each(top, "sources", [this](const BookNode& at, std::size_t i) { source(at, i); });
        each(top, "symptoms", [this](const BookNode& at, std::size_t i) { symptom(at, i); });
        each(top, "causes", [this](const BookNode& at, std::size_t i) { cause(at, i); });
        each(top, "tests", [this](const BookNode& at, std::size_t i) { test(at, i); });
        if (parts_.failed()) return *parts_.fault();
        return std::move(lore_);
    }

  private:
    template <typename Entry>
    void ids(const BookNode& top, std::string_view key, std::vector<Entry>& entries) {
        const BookNode list = parts_.member(top, key, Kind::list);
        if (list.node->items.empty()) parts_.refuse(list, "this list is empty");
        for (std::size_t i = 0; i < list.node->items.size() && !parts_.failed(); ++i) {
            Entry entry;
            entry.id = parts_.id(BookParts::item(list, i));
            if (place_of(entries, entry.id))
                parts_.refuse(BookParts::item(list, i), short_quote(entry.id) + " is there twice");
            entries.push_back(std::move(entry));
        }
    }

    template <typename Read>
    void each(const BookNode& of, std::string_view key, const Read& read) {
        const BookNode list = parts_.member(of, key, Kind::list);
        for (std::size_t i = 0; i < list.node->items.size() && !parts_.failed(); ++i)
            read(BookParts::item(list, i), i);
    }

    template <typename Entry>
    static std::optional<std::size_t> place_of(const std::vector<Entry>& entries,
                                               std::string_view id) {
        for (std::size_t i = 0; i < entries.size(); ++i)
            if (entries[i].id == id) return i;
        return std::nullopt;
    }

    template <typename Entry>
    std::size_t reference(const BookNode& at, const std::vector<Entry>& entries,
                          std::string_view id, const char* what) {
        const auto place = place_of(entries, id);
        if (!place) parts_.refuse(at, "there is no " + std::string(what) + " " + short_quote(id));
        return place.value_or(0);
    }

    std::size_t who_says(const BookNode& of) {
        const std::string id = parts_.text(of, "who_says");
        return reference(of, lore_.book.sources, id, "source");
    }

    template <std::size_t Size>
    std::size_t choice(const BookNode& of, std::string_view key,
                       const std::array<const char*, Size>& names) {
        const std::string name = parts_.text(of, key);
        const auto place = place_in(names, name);
        if (!place) parts_.refuse(of, short_quote(name) + " is no " + std::string(key));
        return place.value_or(0);
    }

    Caution caution(const BookNode& of) {
        if (!parts_.has(of, "caution")) return Caution::none;
        return static_cast<Caution>(choice(of, "caution", caution_names));
    }

    void source(const BookNode& at, std::size_t i) {
        parts_.object(at, {"id", "kind", "en", "es"});
        lore_.book.sources[i].kind = static_cast<SourceKind>(choice(at, "kind", source_names));
        lore_.sources.push_back(parts_.both(at));
    }

    void symptom(const BookNode& at, std::size_t i) {
        parts_.object(at, {"id", "en", "es", "causes", "who_says"});
        lore_.symptoms.push_back(parts_.both(at));
        const std::size_t source = who_says(at);
        const BookNode causes = parts_.member(at, "causes", Kind::object);
        if (causes.node->items.empty()) parts_.refuse(causes, "a symptom has at least one cause");
        for (std::size_t c = 0; c < causes.node->items.size(); ++c) {
            const BookNode weight = BookParts::item(causes, c);
            lore_.book.symptoms[i].causes.push_back(
                {reference(weight, lore_.book.causes, causes.node->keys[c], "cause"),
                 parts_.factor(weight), source});
        }
    }

    void evidence(const BookNode& at, FaultCause& cause) {
        const BookNode all = parts_.optional_member(at, "evidence", Kind::object);
        for (std::size_t e = 0; e < all.node->items.size(); ++e) {
            const BookNode speaks = BookParts::item(all, e);
            const auto named = evidence_named(all.node->keys[e]);
            if (!named) parts_.refuse(speaks, "there is no such evidence");
            parts_.object(speaks, {"seen", "not_seen"});
            cause.evidence.push_back({named.value_or(Evidence::count),
                                      parts_.optional_factor(speaks, "seen"),
                                      parts_.optional_factor(speaks, "not_seen")});
        }
    }

    void measure(const BookNode& at, Measure& measure) {
        if (!parts_.has(at, "measure")) return;
        const BookNode what = parts_.member(at, "measure", Kind::object);
        parts_.object(what, {"kind", "field"});
        measure.kind = static_cast<Measure::Kind>(choice(what, "kind", measure_names));
        const bool of_field =
            measure.kind == Measure::Kind::number || measure.kind == Measure::Kind::procedure;
        if (of_field != parts_.has(what, "field"))
            return parts_.refuse(what, "a field goes with a number or a procedure, and only there");
        if (!of_field) return;
        const std::string key = parts_.text(what, "field");
        const auto field = field_named(key);
        if (!field) return parts_.refuse(what, "there is no field " + short_quote(key));
        const bool of_press = info_of(*field).owner == FieldOwner::press;
        if (of_press != (measure.kind == Measure::Kind::procedure))
            parts_.refuse(what, "a procedure is of a press's field, a number of another");
        measure.field = *field;
    }

    void fix(const BookNode& at, FaultCause& cause) {
        const BookNode what = parts_.member(at, "fix", Kind::object);
        parts_.object(what, {"kind", "en", "es"});
        lore_.causes.back().fix = parts_.both(what);
        if (!parts_.has(what, "kind")) return;
        const std::string name = parts_.text(what, "kind");
        const auto named = fix_named(name);
        if (!named) parts_.refuse(what, "there is no fix " + short_quote(name));
        cause.fix = named.value_or(Fix::by_hand);
    }

    void cause(const BookNode& at, std::size_t i) {
        parts_.object(at, {"id", "en", "es", "evidence", "tests", "measure", "fix", "caution",
                           "who_says"});
        FaultCause& cause = lore_.book.causes[i];
        lore_.causes.push_back({parts_.both(at), {}});
        cause.source = who_says(at);
        cause.caution = caution(at);
        evidence(at, cause);
        const BookNode tests = parts_.member(at, "tests", Kind::list);
        if (tests.node->items.empty()) parts_.refuse(tests, "a cause has at least one test");
        for (std::size_t t = 0; t < tests.node->items.size(); ++t) {
            const BookNode named = BookParts::item(tests, t);
            if (named.node->kind != Kind::text)
                return parts_.refuse(named, "a text is wanted here");
            const std::size_t place =
                reference(named, lore_.book.tests, named.node->text, "test");
            for (const std::size_t before : cause.tests)
                if (before == place) parts_.refuse(named, "this test is named twice");
            cause.tests.push_back(place);
        }
        measure(at, cause.measure);
        fix(at, cause);
    }

    /// Yes and no need no texts of their own.
    BookText answer_text(const BookNode& at, std::string_view id) {
        const bool own = parts_.has(at, "en") || parts_.has(at, "es");
        if (own || (id != "yes" && id != "no")) return parts_.both(at);
        const Word said = id == "yes" ? Word::faults_yes : Word::faults_no;
        return {std::string(word(Language::english, said)),
                std::string(word(Language::spanish, said))};
    }

    void answer(const BookNode& at, FaultTest& test) {
        parts_.object(at, {"id", "en", "es", "for", "others"});
        FaultAnswer answer;
        answer.id = parts_.id(at);
        if (place_of(test.answers, answer.id))
            parts_.refuse(at, short_quote(answer.id) + " is there twice");
        lore_.tests.back().answers.push_back(answer_text(at, answer.id));
        answer.others = parts_.optional_factor(at, "others");
        const BookNode weights = parts_.member(at, "for", Kind::object);
        for (std::size_t w = 0; w < weights.node->items.size(); ++w) {
            const BookNode weight = BookParts::item(weights, w);
            answer.weights.push_back(
                {reference(weight, lore_.book.causes, weights.node->keys[w], "cause"),
                 parts_.factor(weight)});
        }
        test.answers.push_back(std::move(answer));
    }

    void test(const BookNode& at, std::size_t i) {
        parts_.object(at, {"id", "en", "es", "caution", "answers"});
        FaultTest& test = lore_.book.tests[i];
        lore_.tests.push_back({parts_.both(at), {}});
        test.caution = caution(at);
        each(at, "answers", [&](const BookNode& one, std::size_t) { answer(one, test); });
        if (test.answers.size() < 2) parts_.refuse(at, "a test has at least two answers");
    }

    BookParts parts_;
    FaultLore lore_;
};

} // namespace

std::variant<FaultLore, FaultBookFault> read_fault_book(std::string_view json) {
    JsonNode root;
    const ReadFault fault = parse_json(json, root);
    if (fault.kind != ReadFault::Kind::none)
        return FaultBookFault{fault_sentence(Language::english, fault), fault.line, fault.column};
    return BookReader(json).read(root);
}

const FaultLore& fault_lore() {
    static const FaultLore lore = [] {
        auto read = read_fault_book({reinterpret_cast<const char*>(embedded::fault_data),
                                     embedded::fault_data_size});
        auto* good = std::get_if<FaultLore>(&read);
        return good == nullptr ? FaultLore{} : std::move(*good);
    }();
    return lore;
}

std::string text_of(Language language, const BookText& text) {
    if (language == Language::spanish) return text.spanish;
    return language == Language::pseudo ? pseudo_text(text.english) : text.english;
}

} // namespace carriageway
