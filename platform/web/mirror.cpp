#include "platform/web/mirror.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>
#include <utility>

#include <nlohmann/json.hpp>

#include "platform/web/page_calls.h"

namespace carriageway {

namespace {

const char* role_name(ThingRole role) {
    switch (role) {
    case ThingRole::button: return "button";
    case ThingRole::slider: return "slider";
    case ThingRole::tab: return "tab";
    case ThingRole::list_item: return "list_item";
    case ThingRole::textbox: return "textbox";
    case ThingRole::text: return "text";
    case ThingRole::image: return "image";
    case ThingRole::region: break;
    }
    return "region";
}

/// The smallest region told before that holds the thing's middle; -1: none.
int parent_of(const std::span<const Thing> things, std::size_t index) {
    const Thing& thing = things[index];
    const Vec middle = thing.box.centre();
    int best = -1;
    float smallest = 0.0f;
    for (std::size_t i = 0; i < index; ++i) {
        const Thing& region = things[i];
        if (region.role != ThingRole::region || region.layer > thing.layer) continue;
        // What scrolls may lie outside its region for the moment; across, it never does.
        if (middle.x < region.box.x0 || middle.x > region.box.x1) continue;
        if (thing.clip == 0 && !region.box.contains(middle)) continue;
        if (thing.clip != 0 && region.layer != thing.layer) continue;
        const float area = region.box.width() * region.box.height();
        if (best >= 0 && area >= smallest) continue;
        best = static_cast<int>(i);
        smallest = area;
    }
    return best;
}

/// In CSS px, to a tenth: finer than a pixel, and short.
nlohmann::json json_of(Box box) {
    const auto tenth = [](float side) { return std::round(static_cast<double>(side) * 10.0) / 10.0; };
    return {tenth(box.x0), tenth(box.y0), tenth(box.x1), tenth(box.y1)};
}

nlohmann::json json_of(const Mirror::Told& thing) {
    nlohmann::json out{{"name", thing.name},       {"role", role_name(thing.role)}, {"label", thing.label},
                       {"parent", thing.parent},   {"box", json_of(thing.box)},     {"enabled", thing.enabled},
                       {"chosen", thing.chosen},   {"acts", thing.acts}};
    if (!thing.value.empty()) out["value"] = thing.value;
    if (!thing.hint.empty()) out["hint"] = thing.hint;
    if (!thing.clip.empty()) out["clip"] = json_of(thing.clip);
    if (thing.role == ThingRole::slider) {
        out["now"] = thing.now;
        out["least"] = thing.least;
        out["most"] = thing.most;
    }
    return out;
}

Mirror::Told told(const Thing& thing, std::string name, std::string parent, const DrawingList& list) {
    Mirror::Told out;
    out.name = std::move(name);
    out.label = thing.label;
    out.value = thing.value;
    out.hint = thing.hint;
    out.parent = std::move(parent);
    out.role = thing.role;
    out.box = thing.box;
    out.target = thing.target;
    if (thing.clip != 0) out.clip = list.clip_box(thing.clip);
    out.enabled = thing.enabled;
    out.chosen = thing.chosen;
    out.acts = thing.action >= 0;
    out.now = thing.now;
    out.least = thing.least;
    out.most = thing.most;
    return out;
}

} // namespace

std::string Mirror::changes(const DrawingList& list) {
    const std::span<const Thing> things = list.things();
    std::vector<Told> next;
    next.reserve(things.size());
    std::unordered_map<std::string_view, int> seen;
    std::string live;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const Thing& thing = things[i];
        const int before = seen[thing.name]++;
        const int parent = parent_of(things, i);
        next.push_back(told(thing, before == 0 ? thing.name : thing.name + '\x1f' + std::to_string(before),
                            parent < 0 ? std::string() : next[static_cast<std::size_t>(parent)].name, list));
        if (thing.live) live += (live.empty() ? "" : " ") + thing.label + (thing.value.empty() ? "" : ": " + thing.value);
    }
    const bool same_order = std::equal(next.begin(), next.end(), told_.begin(), told_.end(),
                                       [](const Told& a, const Told& b) { return a.name == b.name; });
    std::unordered_map<std::string_view, const Told*> before;
    for (const Told& each : told_) before.emplace(each.name, &each);
    nlohmann::json out{{"things", nlohmann::json::array()}};
    for (const Told& each : next) {
        const auto found = before.find(each.name);
        if (found == before.end() || !(*found->second == each)) out["things"].push_back(json_of(each));
    }
    if (same_order && out["things"].empty() && live == live_) return {};
    if (!same_order) {
        nlohmann::json& order = out["order"] = nlohmann::json::array();
        for (const Told& each : next) order.push_back(each.name);
    }
    if (live != live_) out["live"] = live;
    told_ = std::move(next);
    live_ = std::move(live);
    return page::text_of(out);
}

std::string Mirror::all() const {
    nlohmann::json out = nlohmann::json::array();
    for (const Told& each : told_) {
        out.push_back(json_of(each));
        out.back()["target"] = json_of(each.target);
    }
    return page::text_of(out);
}

} // namespace carriageway
