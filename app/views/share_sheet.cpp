// The share sheet: the job as a link, as a code to photograph and as a file.
#include "app/views/sheet.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

constexpr float padding = 20.0f;
constexpr float gap = 24.0f;         ///< between the columns
constexpr float least_module = 2.0f; ///< dp: below this a code is no longer sure to be read

/// Where the sheet's parts go in this window.
struct Plan {
    Box box;               ///< of the sheet
    bool full = false;     ///< it takes the whole window
    bool columns = false;  ///< the code beside the words, not between them
    float code_side = 0.0f; ///< dp; 0: no code
    bool measured = false;  ///< only heights are asked for
};

bool fits(const QrCode& code, float side) {
    return side >= least_module * static_cast<float>(code.side + 2 * quiet_modules);
}

Plan plan_of(const Model& model, const Canvas& canvas) {
    const Box window = model.window;
    const std::optional<QrCode>& code = model.state->share->code;
    Plan plan;
    plan.full = fills_window(window);
    const float margin = plan.full ? 0.0f : 24.0f;
    const float widest = window.width() - 2.0f * (margin + padding);
    if (code) {
        plan.columns = window.width() >= 640.0f;
        const float high = window.height() - 2.0f * margin - 72.0f;
        const float hint = canvas.type().height(small_text) * 1.06f + 16.0f;
        plan.code_side = plan.columns ? std::min({0.5f * widest, high - hint, 400.0f}) : std::min(widest, 420.0f);
        // A window with room to spare gives a long code what it needs.
        const float needed = least_module * static_cast<float>(code->side + 2 * quiet_modules);
        if (plan.columns) plan.code_side = std::max(plan.code_side, std::min({needed, 0.6f * widest, high}));
        plan.code_side = fits(*code, plan.code_side) ? qr_code_side(*code, plan.code_side, model.pixels_per_dp) : 0.0f;
        plan.columns = plan.columns && plan.code_side > 0.0f;
    }
    const float width = plan.full ? window.width()
                        : std::min(window.width() - 2.0f * margin,
                                   plan.columns ? plan.code_side + gap + 2.0f * padding + 360.0f : 480.0f);
    const float middle = window.centre().x;
    plan.box = {middle - 0.5f * width, window.y0 + margin, middle + 0.5f * width, window.y1 - margin};
    return plan;
}

/// The code on a white card, in both themes: cameras want dark on light.
void code_card(const Model& model, const Plan& plan, Rows& rows) {
    const float side = plan.code_side;
    Canvas& canvas = rows.canvas;
    DrawingList& list = canvas.list();
    const float left = rows.x + 0.5f * (rows.width - side);
    const Box card{left, rows.y, left + side, rows.y + side};
    rows.y += side + 8.0f;
    list.round(card, 14.0f, own_colour(0xFFFFFF));
    if (!plan.measured) draw_qr_code(*model.state->share->code, card, model.pixels_per_dp, list);
    list.ring(card, 14.0f, paint(Role::edge), 1.2f);
    Thing& thing = list.thing("share/code", ThingRole::image, card);
    thing.label.assign(canvas.word(Word::share_code));
    thing.hint.assign(canvas.word(Word::share_code_hint));
    const std::string_view hint = canvas.word(Word::share_code_hint);
    const float height = canvas.paragraph_height(rows.width, hint, small_text);
    canvas.centred_paragraph({rows.x + 0.5f * rows.width, rows.y + 0.5f * height}, rows.width, hint,
                             small_text, Role::soft_ink, rows.on);
    rows.y += height + 14.0f;
}

/// Whose link this is, and what a link is.
void words_of(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Share& share = *model.state->share;
    const std::string_view about =
        canvas.word(!share.link.empty() ? Word::share_explained
                    : share.too_large   ? Word::share_no_link
                                        : Word::share_file_explained);
    const float top = rows.y;
    rows.text(share.name, {TypeSize::body, true}, Role::ink, 4.0f);
    rows.text(about, body_text, Role::soft_ink, 14.0f);
    canvas.reading("share/about", {rows.x, top, rows.x + rows.width, rows.y - 14.0f}, share.name, about);
}

void code_missing(Rows& rows) {
    const float top = rows.y;
    const std::string_view words = rows.canvas.word(Word::share_no_code);
    rows.text(words, body_text, Role::ink, 14.0f);
    rows.canvas.reading("share/no-code", {rows.x, top, rows.x + rows.width, rows.y - 14.0f}, words, {});
}

void buttons_of(const Model& model, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Share& share = *model.state->share;
    bool first = true;
    const auto button = [&](std::string_view name, Word key, Action action) {
        const std::string_view words = canvas.word(key);
        canvas.button(name, rows.next(canvas.button_height(words, {}, rows.width, 52.0f)), words,
                      first ? ButtonLook::strong : ButtonLook::plain, canvas.action(std::move(action)));
        first = false;
    };
    const bool link = !share.link.empty();
    if (link && model.abilities->share_text) button("share/link", Word::share_link, ShareLink{});
    if (link && model.abilities->copy_text) button("share/copy", Word::copy_link, CopyLink{});
    button("share/file", Word::save_as_file, ExportJob{share.job});
}

/// What scrolls, from `top` down; returns where it ends.
float contents(const Model& model, const Plan& plan, Canvas& canvas, float top) {
    const float inside = plan.box.width() - 2.0f * padding;
    Rows rows{canvas, plan.box.x0 + padding, inside, top, Role::panel};
    const Share& share = *model.state->share;
    if (plan.columns) {
        Rows left = rows;
        left.width = plan.code_side;
        code_card(model, plan, left);
        rows.x += plan.code_side + gap;
        rows.width -= plan.code_side + gap;
        words_of(model, rows);
        buttons_of(model, rows);
        return std::max(rows.y, left.y);
    }
    // On a large window read in one column, of a width that the eye takes in.
    if (rows.width > 480.0f) {
        rows.x += 0.5f * (rows.width - 480.0f);
        rows.width = 480.0f;
    }
    words_of(model, rows);
    if (plan.code_side > 0.0f) code_card(model, plan, rows);
    else if (!share.link.empty()) code_missing(rows);
    buttons_of(model, rows);
    return rows.y;
}

/// Height of what scrolls, found by laying it out where nobody sees it.
float contents_height(const Model& model, Plan plan, const Canvas& canvas) {
    plan.measured = true;
    thread_local Frame unseen; // kept for its broken lines
    unseen.begin(model.window, canvas.type());
    Canvas sketch(unseen, canvas.language());
    return contents(model, plan, sketch, 0.0f);
}

constexpr float close_side = 48.0f;

float title_width(const Plan& plan) { return plan.box.width() - padding - close_side - 16.0f; }

float title_height(const Plan& plan, const Canvas& canvas) {
    const float text =
        canvas.paragraph_height(title_width(plan), canvas.word(Word::share_title), title_text);
    return std::max(close_side, text) + 20.0f;
}

/// The title with the button that closes.
void title_row(const Plan& plan, Canvas& canvas) {
    const std::string_view title = canvas.word(Word::share_title);
    const float text = canvas.paragraph_height(title_width(plan), title, title_text);
    const float middle = plan.box.y0 + 0.5f * title_height(plan, canvas);
    canvas.paragraph({plan.box.x0 + padding, middle - 0.5f * text}, title_width(plan), title,
                     title_text, Role::ink, Role::panel);
    const Box close{plan.box.x1 - 8.0f - close_side, middle - 0.5f * close_side, plan.box.x1 - 8.0f,
                    middle + 0.5f * close_side};
    canvas.icon_button("share/close", close, Icon::close, canvas.word(Word::close), canvas.action(CloseShare{}),
                       true, ButtonLook::bare);
}

} // namespace

bool can_share(const Model& model) { return !model.abilities->link_base.empty() || model.abilities->give_file; }

void share_sheet(const Model& model, Canvas& canvas) {
    DrawingList& list = canvas.list();
    cover(canvas.frame());
    const int before = list.layer();
    list.set_layer(2);
    Plan plan = plan_of(model, canvas);
    const float content = contents_height(model, plan, canvas);
    if (!plan.full) {
        // As high as what is in it, in the middle of the window.
        const float height = std::min(plan.box.height(), title_height(plan, canvas) + content + padding - 8.0f);
        const float middle = model.window.centre().y;
        plan.box.y0 = middle - 0.5f * height;
        plan.box.y1 = middle + 0.5f * height;
    }
    sheet_ground(canvas, "share-sheet", canvas.word(Word::share_title), plan.box, plan.full);
    title_row(plan, canvas);
    const Box view{plan.box.x0, plan.box.y0 + title_height(plan, canvas), plan.box.x1, plan.box.y1 - 6.0f};
    list.push_clip(view);
    contents(model, plan, canvas, view.y0 - model.state->share_scroll);
    list.pop_clip();
    canvas.frame().scrolls.push_back({view, content + 6.0f, &ViewState::share_scroll});
    list.set_layer(before);
}

} // namespace carriageway
