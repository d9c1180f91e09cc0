// The chosen head from the side while its cycle is on the screen.
#include "app/drawing/side_layer.h"
#include "app/text/sentences.h"
#include "app/views/cycle_view.h"

namespace carriageway {

void cycle_side(const Model& model, const HeadAssessment& head, Rows& rows) {
    Canvas& canvas = rows.canvas;
    const CycleView cycle =
        cycle_view(*model.job, *model.assessment, head.head, model.state->cycle.time);
    if (cycle.heads.empty()) return;
    SideInput input;
    input.job = model.job;
    input.head = find_head(*model.job, head.head);
    input.assessed = &head;
    input.language = canvas.language();
    input.units = model.state->looks.units;
    input.running = &cycle.heads.front();
    input.box = rows.next(running_side_height(rows.width), 4.0f);
    Thing& thing = canvas.list().thing("cycle/side", ThingRole::image, input.box);
    thing.label.assign(canvas.word(Word::cycle_from_side));
    thing.value = cycle_words(canvas.language(), cycle, true);
    SideThings things;
    draw_side_view(input, canvas.list(), things);
    rows.text(say(canvas.language(), Word::side_exaggerated, {std::to_string(things.exaggeration)}),
              {TypeSize::small, false}, Role::soft_ink, 10.0f);
}

} // namespace carriageway
