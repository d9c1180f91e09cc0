// One finding: mark, title, reason, and the button that fixes it.
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

Role role_of(Severity severity) {
    switch (severity) {
    case Severity::stop: return Role::stop;
    case Severity::mind: return Role::mind;
    case Severity::note: break;
    }
    return Role::soft_ink;
}

constexpr float card_padding = 14.0f;

} // namespace

void finding_card(const Model& model, const HeadAssessment& head, std::size_t index, bool named,
                  bool framed, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Finding& finding = head.findings[index];
    const Passing passing(finding_text(canvas.language(), model.state->looks.units, *model.job, head, finding));
    const FindingText& words = *passing;
    const Head& set = *find_head(*model.job, head.head);
    const Passing base(together({"finding/", std::to_string(set.station), "/", std::to_string(index)}));
    const Passing title(named ? together({*Passing(head_title(canvas.language(), set)), " · ", words.title})
                              : spare_text(words.title));
    const float pad = framed ? card_padding : 0.0f;
    const float width = rows.width - 2.0f * pad;
    const TypeStyle title_style{framed ? TypeSize::body : TypeSize::title, true};
    const TypeStyle why_style{framed ? TypeSize::small : TypeSize::body, false};
    const float mark = canvas.type().height(title_style) * 0.8f;
    const float title_height = canvas.paragraph_height(width - mark - 8.0f, title, title_style);
    const float why_height = canvas.paragraph_height(width, words.why, why_style);
    const std::optional<Edit> edit = remedy_edit(finding);
    const bool advice = !words.remedy.main.empty();
    const float button = edit ? canvas.button_height(words.remedy.main, words.remedy.detail, width, 60.0f)
                              : 0.0f;
    const float advice_height =
        advice && !edit ? canvas.paragraph_height(width, words.remedy.main, {TypeSize::body, true}) : 0.0f;
    float height = 2.0f * pad + title_height + 4.0f + why_height;
    if (edit) height += 8.0f + button;
    if (advice_height > 0.0f) height += 6.0f + advice_height;
    const Box box = rows.next(height, framed ? 10.0f : 12.0f);
    const Role role = role_of(finding.severity);
    const Role on = framed ? Role::card : rows.on;
    DrawingList& list = canvas.list();
    if (framed) {
        list.round(box, 12.0f, paint(Role::card));
        list.ring(box, 12.0f, paint(role), 1.5f);
    }
    Thing& reading = list.thing(base, named ? ThingRole::list_item : ThingRole::text, box);
    put(reading.label, together({words.severity, ": ", title}));
    reading.value = words.why;
    reading.live = !named && index == 0; // of the head being set
    if (named) reading.action = canvas.action(ChooseHead{head.head});
    float y = box.y0 + pad;
    draw_verdict(list, {box.x0 + pad + 0.55f * mark, y + 0.5f * canvas.type().height(title_style)}, mark,
                 role);
    y += canvas.paragraph({box.x0 + pad + mark + 8.0f, y}, width - mark - 8.0f, title, title_style, role,
                          on) + 4.0f;
    y += canvas.paragraph({box.x0 + pad, y}, width, words.why, why_style, Role::ink, on);
    if (edit) {
        y += 8.0f;
        canvas.button(*Passing(together({base, "/fix"})), {box.x0 + pad, y, box.x0 + pad + width, y + button},
                      words.remedy.main, ButtonLook::strong, canvas.action(DoEdit{*edit}),
                      words.remedy.detail);
    } else if (advice) {
        y += 6.0f;
        canvas.paragraph({box.x0 + pad, y}, width, words.remedy.main, {TypeSize::body, true}, Role::ink, on);
    }
}

} // namespace carriageway
