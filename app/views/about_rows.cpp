// About the program: which it is, who decides, where its data are, what it is built on.
#include "app/views/about.h"

namespace carriageway {

namespace {

/// Words that assistive technology can read, too.
void said(std::string_view name, std::string_view words, TypeStyle style, Role role, Rows& rows) {
    constexpr float gap = 6.0f;
    const float top = rows.y;
    rows.text(words, style, role, gap);
    rows.canvas.reading(name, {rows.x, top, rows.x + rows.width, rows.y - gap}, words, {});
}

} // namespace

void about_rows(const Model& model, Rows& rows) {
    const Canvas& canvas = rows.canvas;
    if (!section_head(model, Section::about, "section/about", canvas.word(Word::about), rows)) return;
    const About& about = *model.about;
    constexpr TypeStyle body{TypeSize::body, false}, small{TypeSize::small, false};
    said("about/version", "Carriageway " + about.version, {TypeSize::body, true}, Role::ink, rows);
    said("about/decides", canvas.word(Word::paper_decides), body, Role::ink, rows);
    // A page has a folder, too, which nobody else can look into.
    if (model.abilities->give_file)
        said("about/folder", canvas.word(Word::about_browser), body, Role::ink, rows);
    else if (!about.folder.empty())
        said("about/folder", say(canvas.language(), Word::about_folder, {about.folder}), body,
             Role::ink, rows);
    said("about/built-on", canvas.word(Word::about_built_on), small, Role::soft_ink, rows);
    for (const BuiltOn& one : about.built_on)
        said("about/" + one.name, built_on_line(one), small, Role::soft_ink, rows);
    rows.space(8.0f);
}

} // namespace carriageway
