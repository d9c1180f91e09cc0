// How sure a head's setting is: the room left at each limit, and the chance that image is missed.
#include "app/text/sentences.h"
#include "app/views/views.h"

namespace carriageway {

namespace {

std::string limit_name(Language language, const Margin& margin) {
    const std::string limit(word(language, limit_word(margin.kind)));
    if (margin.kind == LimitKind::separation) return capitalised(limit);
    return capitalised(limit) + " · " + std::string(word(language, side_word(margin.end)));
}

} // namespace

void margins_panel(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const Language language = canvas.language();
    const LengthUnit units = model.state->looks.units;
    const TypeStyle small{TypeSize::small, false};
    rows.text(say(language, Word::chance_of_miss, {format_chance(language, head.chance_missed)}),
              {TypeSize::body, true});
    rows.text(canvas.word(Word::margins_hint), small, Role::soft_ink, 8.0f);
    for (const Margin& margin : head.margins) {
        const float top = rows.y;
        const std::string name = limit_name(language, margin);
        const std::string line =
            say(language, Word::margin_line,
                {format_length(margin.left, units), format_length(margin.worst, units),
                 format_length(margin.root_sum_square, units)});
        const Role role = margin.left < 0.0 ? Role::stop : margin.worst < 0.0 ? Role::mind : Role::ink;
        rows.text(name, small, Role::soft_ink, 0.0f);
        rows.text(line, {TypeSize::body, false}, role, 8.0f);
        canvas.reading("margin/" + std::to_string(&margin - head.margins.data()),
                       {rows.x, top, rows.x + rows.width, rows.y}, name, line);
    }
}

} // namespace carriageway
