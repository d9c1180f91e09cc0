// What a person is used to, kept in the library's settings.
#include "app/session.h"

namespace carriageway {

namespace {

constexpr const char* letter = "letter";
constexpr const char* table = "table";
constexpr const char* seen = "seen";

} // namespace

void Session::read_habits() {
    const auto value = [&](const char* key) {
        LibraryResult<std::optional<std::string>> found = library_->setting(key);
        return found && *found ? **found : std::string();
    };
    habits_.initials = value(setting_key::initials);
    habits_.link_base = value(setting_key::link_base);
    habits_.first_steps = value(setting_key::first_steps) == seen;
    if (value(setting_key::paper) == letter) habits_.paper = PaperSize::letter;
    if (value(setting_key::paper_layout) == table)
        habits_.layout = PaperLayout::overview_and_table;
}

void Session::set_habits(const Habits& habits) {
    habits_ = habits;
    const auto put = [&](const char* key, const std::string& value) {
        if (const std::optional<LibraryFault> fault = library_->set_setting(key, value))
            note(*fault);
    };
    put(setting_key::initials, habits.initials);
    put(setting_key::link_base, habits.link_base);
    put(setting_key::paper, habits.paper == PaperSize::letter ? letter : "a4");
    put(setting_key::paper_layout,
        habits.layout == PaperLayout::overview_and_table ? table : "heads");
    if (habits.first_steps) put(setting_key::first_steps, seen);
    writer_->touch();
}

} // namespace carriageway
