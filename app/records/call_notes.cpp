#include "app/records/call_notes.h"

#include "app/records/call_log.h"
#include "app/records/document.h"
#include "app/records/form_parts.h"

namespace carriageway {

namespace {

constexpr std::size_t longest_id = 60;
constexpr std::size_t most_of_a_kind = 200; ///< answers, tests, causes and numbers each

struct KeptAnswer {
    std::string test, answer;
};

/// A number by its head and its field's key.
struct KeptNumber {
    HeadId head = 0;
    std::string field;
};

/// Notes as text has them.
struct Kept {
    JobId job = 0;
    HeadId head = 0;
    std::vector<KeptAnswer> answers;
    std::vector<std::string> skipped, told;
    std::vector<KeptNumber> read;
    std::string text;
};

void describe_ids(Form& form, const char* key, std::vector<std::string>& ids) {
    describe_list(form, key, ids, {0, most_of_a_kind, true, true},
                  [&](std::string& id) { form.text("", id, {longest_id}); });
}

void describe_kept(Form& form, Kept& kept) {
    describe_whole(form, "job", kept.job, {0, std::int64_t{1} << job_id_bits});
    describe_whole(form, "head", kept.head, {0, most_head_id});
    describe_list(form, "answers", kept.answers, {0, most_of_a_kind, false, true},
                  [&](KeptAnswer& one) {
                      form.object("", [&] {
                          form.text("test", one.test, {longest_id});
                          form.text("answer", one.answer, {longest_id});
                      });
                  });
    describe_ids(form, "skipped", kept.skipped);
    describe_ids(form, "told", kept.told);
    describe_list(form, "read", kept.read, {0, most_of_a_kind, false, true}, [&](KeptNumber& one) {
        form.object("", [&] {
            describe_whole(form, "head", one.head, {0, most_head_id});
            form.text("field", one.field, {longest_id});
        });
    });
    form.text("text", kept.text, {longest_own_notes, true});
}

Kept kept_of(const FaultBook& book, const CallNotes& notes) {
    Kept kept{notes.job, notes.head, {}, {}, {}, {}, notes.text};
    for (const TestAnswer& given : notes.answers) {
        const FaultTest& test = book.tests[given.test];
        kept.answers.push_back({test.id, test.answers[given.answer].id});
    }
    for (const std::size_t test : notes.skipped) kept.skipped.push_back(book.tests[test].id);
    for (const std::size_t cause : notes.told) kept.told.push_back(book.causes[cause].id);
    for (const NumberRead& number : notes.read)
        kept.read.push_back({number.head, info_of(number.field).key});
    return kept;
}

Field field_of_key(const std::string& key) {
    for (int i = 0; i < static_cast<int>(Field::count); ++i)
        if (key == info_of(static_cast<Field>(i)).key) return static_cast<Field>(i);
    return Field::count;
}

std::optional<TestAnswer> answer_of(const FaultBook& book, const KeptAnswer& kept) {
    const std::optional<std::size_t> test = find_test(book, kept.test);
    if (!test) return std::nullopt;
    const std::vector<FaultAnswer>& answers = book.tests[*test].answers;
    for (std::size_t i = 0; i < answers.size(); ++i)
        if (answers[i].id == kept.answer) return TestAnswer{*test, i};
    return std::nullopt;
}

CallNotes notes_of(const FaultBook& book, const Kept& kept) {
    CallNotes notes;
    notes.job = kept.job;
    notes.head = kept.head;
    notes.text = kept.text;
    for (const KeptAnswer& one : kept.answers)
        if (const std::optional<TestAnswer> answer = answer_of(book, one))
            notes.answers.push_back(*answer);
    for (const std::string& id : kept.skipped)
        if (const std::optional<std::size_t> test = find_test(book, id))
            notes.skipped.push_back(*test);
    for (const std::string& id : kept.told)
        if (const std::optional<std::size_t> cause = find_cause(book, id))
            notes.told.push_back(*cause);
    for (const KeptNumber& one : kept.read)
        if (const Field field = field_of_key(one.field); field != Field::count)
            notes.read.push_back({one.head, field});
    return notes;
}

/// A text cut to so many bytes, between two characters of UTF-8.
std::string cut(std::string_view text, std::size_t most) {
    if (text.size() <= most) return std::string(text);
    while (most > 0 && (static_cast<unsigned char>(text[most]) & 0xC0u) == 0x80u) --most;
    return std::string(text.substr(0, most));
}

} // namespace

std::string write_call_notes(const FaultBook& book, const CallNotes& notes) {
    Kept kept = kept_of(book, notes);
    kept.text = cut(kept.text, longest_own_notes);
    const auto written = [&] {
        return write_document(call_key, call_format, kept, describe_kept, false);
    };
    std::string text = written();
    while (text.size() > longest_call_notes && !(kept.read.empty() && kept.answers.empty())) {
        if (!kept.read.empty()) kept.read.erase(kept.read.begin());
        else kept.answers.erase(kept.answers.begin());
        text = written();
    }
    return text;
}

CallNotes read_call_notes(const FaultBook& book, std::string_view text) {
    Kept kept;
    const ReadFault fault =
        read_document(text, call_key, call_format, kept, describe_kept,
                      [](const Kept&) { return std::optional<ReadFault>(); });
    if (fault.kind == ReadFault::Kind::none) return notes_of(book, kept);
    CallNotes notes;
    notes.text = cut(text, longest_own_notes);
    return notes;
}

} // namespace carriageway
