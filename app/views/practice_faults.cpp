// Faults: from what is seen or heard to causes, the likeliest first, each with why it stands there,
// what would decide it, and what mends it.
#include <algorithm>
#include <cmath>

#include "app/records/fault_book.h"
#include "app/text/difference_sentences.h"
#include "app/text/fault_sentences.h"
#include "app/text/sentences.h"
#include "app/views/chip_grid.h"
#include "app/views/day_view.h"
#include "app/views/measure_words.h"
#include "app/views/practice_view.h"

namespace carriageway {

namespace {

constexpr std::size_t open_at_first = 3; ///< causes that are shown whole

struct FaultView {
    const Model& model;
    const FaultLore& lore;
    const FaultState& state;
    HeadId head;                     ///< asked for; 0: any
    std::vector<TestAnswer> answers; ///< given of the job that is open
    Ranking ranking;
    Ranking ranked_by(std::span<const TestAnswer> given) const {
        return rank_causes(lore.book, *state.symptom, *model.job, *model.assessment, head, given);
    }
    Language language() const { return model.state->looks.language; }
    std::string text(const BookText& one) const { return text_of(language(), one); }
};

void said(const std::string& name, std::string_view words, TypeStyle style, Role role, float gap,
          Rows& rows) {
    const float top = rows.y;
    rows.text(words, style, role, gap);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - gap}, words, {});
}

void source_row(const std::string& name, std::size_t source, const FaultView& view, Rows& rows) {
    said(name, say(view.language(), Word::faults_who_says, {view.text(view.lore.sources[source])}),
         small_text, Role::soft_ink, 12.0f, rows);
}

void mind(const std::string& name, Caution caution, Rows& rows) {
    if (caution == Caution::none) return;
    const float top = rows.y;
    const std::string_view words = rows.canvas.word(caution_word(caution));
    caution_row(words, rows);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, words, {});
}

void symptom_rows(const FaultView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::faults_what), title_text, Role::ink, 4.0f);
    rows.text(canvas.word(Word::faults_hint), small_text, Role::soft_ink, 12.0f);
    const FaultBook& book = view.lore.book;
    for (std::size_t i = 0; i < book.symptoms.size(); ++i)
        wide_button("faults/symptom/" + book.symptoms[i].id, view.text(view.lore.symptoms[i]),
                    ButtonLook::plain, ChooseSymptom{i}, rows);
}

void head_choice(const FaultView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::faults_which_head), bold_text, Role::ink, 6.0f);
    std::vector<Chip> chips;
    chips.push_back({"faults/head/0", std::string(canvas.word(Word::faults_not_sure)), {},
                     view.head == 0, FindFaultAt{0}});
    for (const Head& head : view.model.job->heads)
        chips.push_back({"faults/head/" + std::to_string(head.station),
                         std::to_string(head.station), head.colour, view.head == head.id,
                         FindFaultAt{head.id}});
    chip_grid("faults/head", canvas.word(Word::faults_which_head), chips,
              chip_columns(chips, 5, rows.width, canvas), rows);
    rows.space(10.0f);
}

/// A test with its answers; the one that was given is chosen, and the same tap takes it back.
void test_rows(const FaultView& view, std::size_t test, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const FaultTest& asked = view.lore.book.tests[test];
    const TestTexts& texts = view.lore.tests[test];
    said("faults/test/" + asked.id, view.text(texts.question), body_text, Role::ink, 6.0f, rows);
    mind("faults/test/" + asked.id + "/caution", asked.caution, rows);
    std::vector<Chip> chips;
    for (std::size_t i = 0; i < asked.answers.size(); ++i) {
        const TestAnswer answer{test, i};
        const auto& given = view.answers;
        chips.push_back({"faults/test/" + asked.id + "/" + asked.answers[i].id,
                         view.text(texts.answers[i]), {},
                         std::find(given.begin(), given.end(), answer) != given.end(),
                         AnswerTest{answer}});
    }
    chip_grid("faults/test/" + asked.id + "/answers", view.text(texts.question), chips,
              chip_columns(chips, 2, rows.width, canvas), rows);
    rows.space(8.0f);
}

/// What the answer given last did to the order.
void changed_row(const FaultView& view, Rows& rows) {
    if (view.answers.empty() || view.ranking.causes.empty()) return;
    const Ranking was = view.ranked_by(std::span(view.answers).first(view.answers.size() - 1));
    const RankedCause& first = view.ranking.causes.front();
    std::size_t rank = 0;
    while (was.causes[rank].cause != first.cause) ++rank;
    const std::string name = view.text(view.lore.causes[first.cause].name);
    const std::string words =
        rank == 0 ? say(view.language(), Word::faults_still_first,
                        {name, cause_share_text(was.causes[0].share),
                         cause_share_text(first.share)})
                  : say(view.language(), Word::faults_now_first, {name, std::to_string(rank + 1)});
    Canvas& canvas = rows.canvas;
    constexpr float pad = 14.0f;
    const float inside = rows.width - 2.0f * pad;
    const float height = canvas.paragraph_height(inside, words, bold_text);
    const Box box = rows.next(height + 2.0f * pad, 14.0f);
    canvas.list().round(box, 12.0f, paint(Role::quiet));
    canvas.paragraph({box.x0 + pad, box.y0 + pad}, inside, words, bold_text, Role::ink,
                     Role::quiet);
    canvas.reading("faults/changed", box, words, {});
}

/// The test that tells most now, before all others.
void next_test(const FaultView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::vector<TestWorth> tests = best_tests(view.lore.book, view.ranking);
    if (tests.empty() && view.answers.empty()) return;
    changed_row(view, rows);
    if (tests.empty()) {
        said("faults/none", canvas.word(Word::faults_no_more_tests), title_text, Role::ink, 6.0f,
             rows);
    } else {
        rows.text(canvas.word(Word::faults_ask_next), title_text, Role::ink, 6.0f);
        test_rows(view, tests.front().test, rows);
    }
    if (view.answers.empty()) return;
    rows.text(canvas.word(Word::faults_answered), bold_text, Role::ink, 4.0f);
    for (const TestAnswer& answer : view.ranking.answers) test_rows(view, answer.test, rows);
    wide_button("faults/forget", canvas.word(Word::faults_forget), ButtonLook::bare,
                ForgetAnswers{}, rows);
}

std::string measure_name(const FaultView& view, const Measure& measure) {
    const auto named = [&](Word key) { return std::string(word(view.language(), key)); };
    switch (measure.kind) {
    case Measure::Kind::marks: return named(Word::faults_measure_marks);
    case Measure::Kind::platen_marks: return named(Word::faults_measure_platens);
    case Measure::Kind::heights: return named(Word::faults_measure_heights);
    default: return capitalised(named(field_word(measure.field)));
    }
}

/// Why a cause stands where it does: one line a factor.
void why_rows(const FaultView& view, const RankedCause& ranked, const std::string& name,
              Rows& rows) {
    const Language language = view.language();
    const LengthUnit units = view.model.state->looks.units;
    for (std::size_t i = 0; i < ranked.contributions.size(); ++i) {
        const Contribution& one = ranked.contributions[i];
        if (one.kind != Contribution::Kind::weight && one.factor == 1.0) continue;
        std::string words = factor_text(language, one);
        if (one.kind == Contribution::Kind::evidence) {
            words = evidence_text(language, units, *view.model.job, one, view.head == 0) + " " +
                    words;
        } else if (one.kind == Contribution::Kind::answer) {
            const TestTexts& texts = view.lore.tests[one.answer.test];
            words = view.text(texts.answers[one.answer.answer]) + ": " + words;
        }
        said(name + "/why/" + std::to_string(i), words, small_text, Role::soft_ink, 2.0f, rows);
    }
    rows.space(6.0f);
}

/// What an edit sets, number by number: "Head 6 · navy: squeegee pressure 450 kPa → 350 kPa".
std::string set_text(const FaultView& view, const Edit& edit) {
    const Language language = view.language();
    const Job& before = *view.model.job;
    Job after = before;
    if (!apply(after, edit)) return {};
    std::string text;
    CompareBy by;
    by.as_set = false;
    for (const JobDifference& one : job_changes(before, after, by)) {
        const SaidDifference said =
            difference_text(language, view.model.state->looks.units, before, after, one);
        text += text.empty() ? difference_owner(language, before, after, one) + ": " : "; ";
        text += said.what + " " + say(language, Word::detail_number, {said.a, said.b});
    }
    return text;
}

/// Sets what the program can set, and says before what that is.
void fix_button(const std::string& name, const Edit& edit, const FaultView& view, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const std::string_view words = canvas.word(Word::faults_fix);
    const std::string detail = set_text(view, edit);
    const float height = canvas.button_height(words, detail, rows.width, 60.0f);
    canvas.button(name, rows.next(height, 10.0f), words, ButtonLook::strong,
                  canvas.action(MendCause{edit}), detail);
}

void cause_rows(const FaultView& view, const RankedCause& ranked, const std::string& name,
                Rows& rows) {
    Canvas& canvas = rows.canvas;
    const FaultCause& cause = view.lore.book.causes[ranked.cause];
    why_rows(view, ranked, name, rows);
    said(name + "/mend", view.text(view.lore.causes[ranked.cause].fix), body_text, Role::ink, 8.0f,
         rows);
    mind(name + "/caution", cause.caution, rows);
    const std::optional<Edit> edit =
        fix_of(view.lore.book, ranked, *view.model.job, *view.model.assessment);
    if (edit) fix_button("faults/fix/" + cause.id, *edit, view, rows);
    if (cause.measure.kind != Measure::Kind::none)
        wide_button("faults/measure/" + cause.id,
                    say(canvas.language(), Word::faults_measure,
                        {measure_name(view, cause.measure)}),
                    ButtonLook::plain,
                    MeasureCause{cause.measure, view.head != 0 ? view.head : ranked.head},
                    rows);
    source_row(name + "/source", cause.source, view, rows);
}

/// One cause: its name, how likely beside the others, and, open, everything about it.
void cause_card(const FaultView& view, std::size_t rank, Rows& rows) {
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const RankedCause& ranked = view.ranking.causes[rank];
    const FaultCause& cause = view.lore.book.causes[ranked.cause];
    const auto holds = [&](const std::vector<std::size_t>& all) {
        return std::find(all.begin(), all.end(), ranked.cause) != all.end();
    };
    const bool open = rank < open_at_first ? !holds(view.state.closed) : holds(view.state.opened);
    const std::string words =
        std::to_string(rank + 1) + ". " + view.text(view.lore.causes[ranked.cause].name);
    const std::string share = cause_share_text(ranked.share);
    const float wide = canvas.type().width(bold_text, share), arrow = 26.0f, pad = 10.0f;
    const float inside = rows.width - 2.0f * pad - wide - arrow - 12.0f;
    const float text = canvas.paragraph_height(inside, words, bold_text);
    const Box box = rows.next(std::max(52.0f, text + 30.0f), 6.0f);
    list.round(box, 12.0f, paint(Role::quiet));
    canvas.paragraph({box.x0 + pad, box.y0 + 9.0f}, inside, words, bold_text, Role::ink,
                     Role::quiet);
    list.text({box.x1 - pad - arrow - wide, box.y0 + 9.0f}, share, bold_text, Role::ink,
              Role::quiet);
    canvas.icon(open ? Icon::up : Icon::down, {box.x1 - pad - 9.0f, box.y0 + 20.0f}, 18.0f,
                Role::soft_ink);
    const Box bar{box.x0 + pad, box.y1 - 12.0f, box.x1 - pad, box.y1 - 6.0f};
    list.round(bar, 3.0f, paint(Role::edge));
    const float length = static_cast<float>(ranked.share) * bar.width();
    list.round({bar.x0, bar.y0, bar.x0 + std::max(6.0f, length), bar.y1}, 3.0f, paint(Role::focus));
    const std::string name = "faults/cause/" + cause.id;
    Thing& thing = list.thing(name, ThingRole::button, box);
    thing.label = words;
    thing.value = share;
    thing.chosen = open;
    thing.action = canvas.action(OpenCause{ranked.cause, !open});
    if (!open) return;
    rows.x += pad; // what belongs to it stands below its name
    rows.width -= 2.0f * pad;
    cause_rows(view, ranked, name, rows);
    rows.x -= pad;
    rows.width += 2.0f * pad;
}

} // namespace

void find_fault_button(HeadId head, Rows& rows) {
    wide_button("press/find-fault", rows.canvas.word(Word::faults_find), ButtonLook::plain,
                FindFaultAt{head}, rows);
}

void faults_part(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const FaultState& state = model.state->practice.fault;
    const FaultLore& lore = fault_lore();
    FaultView view{model, lore, state, find_head(*model.job, state.head) ? state.head : 0, {}, {}};
    if (!state.symptom) return symptom_rows(view, rows);
    if (state.job == model.current) view.answers = state.answers;
    view.ranking = view.ranked_by(view.answers);
    said("faults/symptom", view.text(lore.symptoms[*state.symptom]), title_text, Role::ink, 4.0f,
         rows);
    source_row("faults/symptom/source", view.ranking.causes.front().source, view, rows);
    wide_button("faults/another", canvas.word(Word::faults_another), ButtonLook::quiet,
                ChooseSymptom{}, rows);
    rows.space(6.0f);
    head_choice(view, rows);
    next_test(view, rows);
    rows.space(8.0f);
    rows.text(canvas.word(Word::faults_causes), title_text, Role::ink, 4.0f);
    rows.text(canvas.word(Word::faults_judged), small_text, Role::soft_ink, 10.0f);
    if (model.can_undo)
        wide_button("faults/undo", canvas.word(Word::undo), ButtonLook::bare, Undo{}, rows);
    for (std::size_t rank = 0; rank < view.ranking.causes.size(); ++rank)
        cause_card(view, rank, rows);
    rows.space(4.0f);
    rows.text(canvas.word(Word::fault_order_judged), small_text, Role::soft_ink, 0.0f);
}

} // namespace carriageway
