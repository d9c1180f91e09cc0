// The sheet to print: how its first page will look, on which paper, and the buttons that make it.
#include "app/drawing/paper_sheet.h"
#include "app/records/link_base.h"
#include "app/views/day_view.h"
#include "app/views/paper_preview.h"

namespace carriageway {

namespace {

/// A code as large as that of a usual job, of few modules: in small nobody reads more.
QrCode sketched_code() {
    constexpr int times = 5;
    const std::optional<QrCode> coarse = qr_code("https://example.org/#");
    QrCode code;
    if (!coarse) return code;
    code.side = times * coarse->side;
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x)
            code.dark.push_back(coarse->dark_at(x / times, y / times));
    return code;
}

const std::string& link_base_of(const Model& model) {
    return model.abilities->link_base.empty() ? model.state->habits.link_base
                                              : model.abilities->link_base;
}

PaperRequest request_of(const Model& model) {
    const Habits& habits = model.state->habits;
    PaperRequest request;
    request.job = model.job;
    request.assessment = model.assessment;
    request.language = model.state->looks.language;
    request.units = model.state->looks.units;
    if (habits.paper == PaperSize::letter) {
        request.width = 215.9;
        request.height = 279.4;
    }
    request.page_a_head = habits.layout == PaperLayout::overview_and_heads;
    request.date = "–";
    if (usable_link_base(link_base_of(model))) {
        request.link = link_base_of(model);
        request.code = sketched_code();
    }
    return request;
}

void preview(const Model& model, float widest, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const PaperRequest request = request_of(model);
    const JobSheet sheet = job_sheet_front(request);
    const float width = std::min(rows.width, widest);
    const float height = width * static_cast<float>(request.height / request.width);
    const float left = rows.x + 0.5f * (rows.width - width);
    const Box box{left, rows.y, left + width, rows.y + height};
    rows.y += height + 14.0f;
    draw_paper_preview(sheet.pages.front(), box, canvas.list());
    Thing& thing = canvas.list().thing("paper/preview", ThingRole::image, box);
    thing.label.assign(canvas.word(Word::paper_preview));
    thing.value = model.job->name;
}

void paper_choices(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Habits& habits = model.state->habits;
    const auto paper = [&](const char* name, Word key, PaperSize size) {
        return Choice{name, std::string(canvas.word(key)),
                      canvas.action(ChoosePaper{size, habits.layout}), habits.paper == size};
    };
    rows.text(canvas.word(Word::paper_size), small_text, Role::soft_ink, 4.0f);
    choices("paper/size", canvas.word(Word::paper_size),
            {paper("paper/a4", Word::paper_a4, PaperSize::a4),
             paper("paper/letter", Word::paper_letter, PaperSize::letter)},
            rows);
    const auto layout = [&](const char* name, Word key, PaperLayout value) {
        return Choice{name, std::string(canvas.word(key)),
                      canvas.action(ChoosePaper{habits.paper, value}), habits.layout == value};
    };
    rows.text(canvas.word(Word::paper_layout), small_text, Role::soft_ink, 4.0f);
    choices("paper/layout", canvas.word(Word::paper_layout),
            {layout("paper/heads", Word::paper_layout_heads, PaperLayout::overview_and_heads),
             layout("paper/tables", Word::paper_layout_table, PaperLayout::overview_and_table)},
            rows);
}

/// What a person has to know before, with the sign that asks for care.
void warning(const char* name, std::string_view words, Rows& rows) {
    const float top = rows.y;
    caution_row(words, rows);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - 10.0f}, words, {});
}

/// Where the window has no address of its own, a person may give one for the code.
void link_base_row(const Model& model, Rows& rows) {
    if (!model.abilities->link_base.empty()) return;
    Canvas& canvas = rows.canvas;
    const std::string& base = model.state->habits.link_base;
    text_row(model, "paper/link-base", canvas.word(Word::paper_link_base), base,
             canvas.word(Word::paper_link_base_hint), EditText{TextTarget::link_base}, rows);
    if (!base.empty() && !usable_link_base(base))
        warning("paper/link-base-refused", canvas.word(Word::paper_link_base_refused), rows);
}

void unprintable_row(const Model& model, Rows& rows) {
    std::string all;
    for (const std::string& letter : unprintable_letters(*model.job))
        all += (all.empty() ? "" : " ") + letter;
    if (all.empty()) return;
    warning("paper/unprintable", say(rows.canvas.language(), Word::paper_unprintable, {all}), rows);
}

void make_buttons(Rows& rows) {
    Canvas& canvas = rows.canvas;
    wide_button("paper/pdf", canvas.word(Word::paper_make_pdf), ButtonLook::strong,
                MakePaper{false}, rows, true);
    wide_button("paper/table", canvas.word(Word::paper_make_table), ButtonLook::plain,
                MakePaper{true}, rows);
    rows.text(canvas.word(Word::paper_table_hint), small_text, Role::soft_ink, 10.0f);
}

} // namespace

void paper_part(const Model& model, Rows& rows) {
    constexpr float wide = 520.0f, gap = 24.0f;
    Canvas& canvas = rows.canvas;
    rows.text(canvas.word(Word::paper_intro), body_text, Role::ink, 14.0f);
    const bool beside = rows.width >= wide && canvas.scale() <= 1.3f;
    if (!beside) {
        preview(model, 220.0f, rows);
        paper_choices(model, rows);
        link_base_row(model, rows);
        unprintable_row(model, rows);
        make_buttons(rows);
    } else {
        Rows left = rows, right = rows;
        left.width = 0.4f * (rows.width - gap);
        right.x = rows.x + left.width + gap;
        right.width = rows.width - left.width - gap;
        preview(model, left.width, left);
        paper_choices(model, right);
        link_base_row(model, right);
        unprintable_row(model, right);
        make_buttons(right);
        rows.y = std::max(left.y, right.y);
    }
    rows.text(canvas.word(Word::paper_decides), small_text, Role::soft_ink);
}

} // namespace carriageway
