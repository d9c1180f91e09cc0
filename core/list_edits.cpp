#include "core/list_edits.h"

#include <algorithm>

#include "core/job_check.h"

namespace carriageway {
namespace {

using Items = std::vector<CheckItem>;

bool has_id(const Items& items, std::uint32_t id) {
    return std::any_of(items.begin(), items.end(),
                       [&](const CheckItem& item) { return item.id == id; });
}

bool has_step(const Items& items, CheckStep step) {
    return std::any_of(items.begin(), items.end(),
                       [&](const CheckItem& item) { return item.step == step; });
}

/// Whether an item may have this id: the usual steps' ids stay theirs, 0 is no id.
bool is_free(const Job& job, const Items& items, std::uint32_t id) {
    return id > usual_checks().size() && !has_id(items, id) && !tick_of(job.record, id);
}

/// FNV-1a of the list and the text, and from there the next id that is free.
std::uint32_t id_of_text(const Job& job, const Items& items, CheckList list,
                         const std::string& text) {
    std::uint32_t id = 2166136261u;
    const auto take = [&](unsigned char byte) { id = (id ^ byte) * 16777619u; };
    take(static_cast<unsigned char>(list));
    for (const char c : text) take(static_cast<unsigned char>(c));
    while (!is_free(job, items, id)) ++id;
    return id;
}

Edit with_items(const Job& job, Items items) {
    SetPress edit{job.press, {}};
    edit.press.checks = std::move(items);
    // Where nothing differs from the usual lists, the profile carries none of its own.
    if (edit.press.checks == usual_checks()) edit.press.checks.clear();
    return Edit{std::move(edit)};
}

bool is_list(CheckList list) {
    return list >= CheckList{} && static_cast<int>(list) < check_lists;
}

} // namespace

ListProgress list_progress(const Job& job, CheckList list) {
    ListProgress progress;
    for (const CheckItem& item : checks_of(job.press)) {
        if (item.list != list) continue;
        ++progress.steps;
        if (tick_of(job.record, item.id)) ++progress.ticked;
    }
    return progress;
}

ListProgress list_progress(const Job& job) {
    ListProgress all;
    for (int i = 0; i < check_lists; ++i) {
        const ListProgress one = list_progress(job, static_cast<CheckList>(i));
        all.ticked += one.ticked;
        all.steps += one.steps;
    }
    return all;
}

const CheckTick* tick_of(const RunRecord& record, std::uint32_t item) {
    const auto found = std::find_if(record.ticks.begin(), record.ticks.end(),
                                    [&](const CheckTick& tick) { return tick.item == item; });
    return found == record.ticks.end() ? nullptr : &*found;
}

Edit tick_step(const Job& job, std::uint32_t item, bool done, const Stamp& stamp) {
    RunRecord record = job.record;
    if (!done)
        std::erase_if(record.ticks, [&](const CheckTick& tick) { return tick.item == item; });
    else if (!tick_of(record, item) && has_id(checks_of(job.press), item))
        record.ticks.push_back({item, stamp});
    return Edit{SetRecord{std::move(record)}};
}

std::optional<Edit> add_step(const Job& job, CheckList list, const std::string& text) {
    Items items = checks_of(job.press);
    if (!is_list(list) || text.empty() || !is_name(text) || items.size() >= most_check_items)
        return std::nullopt;
    const std::uint32_t id = id_of_text(job, items, list, text);
    items.push_back({id, list, CheckStep::own, text, Caution::none});
    return with_items(job, std::move(items));
}

std::optional<Edit> remove_step(const Job& job, std::uint32_t item) {
    Items items = checks_of(job.press);
    if (items.size() < 2 || !has_id(items, item)) return std::nullopt;
    std::erase_if(items, [&](const CheckItem& one) { return one.id == item; });
    Edit without = with_items(job, std::move(items));
    if (!tick_of(job.record, item)) return without;
    return Edit{Together{{tick_step(job, item, false, {}), std::move(without)}}};
}

std::optional<Edit> bring_usual_steps_back(const Job& job) {
    Items items = checks_of(job.press);
    const std::size_t before = items.size();
    for (const CheckItem& usual : usual_checks()) {
        if (has_step(items, usual.step)) continue;
        CheckItem item = usual;
        if (has_id(items, item.id)) // an own step of a file from elsewhere has it
            item.id = id_of_text(job, items, item.list, std::to_string(item.id));
        // Before the first one that is worked after it; own steps stay behind those they follow.
        const auto place = std::find_if(items.begin(), items.end(), [&](const CheckItem& other) {
            return other.step > item.step && other.step < CheckStep::count;
        });
        items.insert(place, item);
    }
    if (items.size() == before || items.size() > most_check_items) return std::nullopt;
    return with_items(job, std::move(items));
}

} // namespace carriageway
