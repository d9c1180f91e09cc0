#include "platform/web/mirror.h"

#include <algorithm>
#include <unordered_map>

#include "platform/web/json_out.h"

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
int parent_of(const std::vector<Thing>& things, std::size_t index) {
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

void add_text(std::string& out, const char* key, std::string_view value) {
    out += ",\"";
    out += key;
    out += "\":";
    add_json(out, value);
}

void add_number(std::string& out, const char* key, double value) {
    out += ",\"";
    out += key;
    out += "\":";
    add_json(out, value);
}

std::string json_of(const Thing& thing, const std::string& name, std::string_view parent, Box clip) {
    std::string out = "{\"name\":";
    add_json(out, std::string_view(name));
    add_text(out, "role", role_name(thing.role));
    add_text(out, "label", thing.label);
    if (!thing.value.empty()) add_text(out, "value", thing.value);
    if (!thing.hint.empty()) add_text(out, "hint", thing.hint);
    add_text(out, "parent", parent);
    out += ",\"box\":";
    add_json(out, thing.box);
    if (thing.clip != 0) {
        out += ",\"clip\":";
        add_json(out, clip);
    }
    out += thing.enabled ? ",\"enabled\":true" : ",\"enabled\":false";
    out += thing.chosen ? ",\"chosen\":true" : ",\"chosen\":false";
    out += thing.action >= 0 ? ",\"acts\":true" : ",\"acts\":false";
    if (thing.role == ThingRole::slider) {
        add_number(out, "now", thing.now);
        add_number(out, "least", thing.least);
        add_number(out, "most", thing.most);
    }
    return out + '}';
}

} // namespace

std::string Mirror::changes(const DrawingList& list) {
    const std::vector<Thing>& things = list.things();
    std::vector<Told> next;
    next.reserve(things.size());
    std::unordered_map<std::string, int> seen;
    std::string live;
    for (std::size_t i = 0; i < things.size(); ++i) {
        const Thing& thing = things[i];
        const int before = seen[thing.name]++;
        std::string name = before == 0 ? thing.name : thing.name + '\x1f' + std::to_string(before);
        const int parent = parent_of(things, i);
        std::string json = json_of(
            thing, name, parent < 0 ? std::string_view() : std::string_view(next[static_cast<std::size_t>(parent)].name),
            list.clip_box(thing.clip));
        if (thing.live) live += (live.empty() ? "" : " ") + thing.label + (thing.value.empty() ? "" : ": " + thing.value);
        next.push_back({std::move(name), std::move(json), thing.target});
    }
    bool same_order = next.size() == told_.size();
    for (std::size_t i = 0; same_order && i < next.size(); ++i) same_order = next[i].name == told_[i].name;
    std::unordered_map<std::string_view, const Told*> before;
    for (const Told& told : told_) before.emplace(told.name, &told);
    std::string changed;
    for (const Told& told : next) {
        const auto found = before.find(told.name);
        if (found != before.end() && found->second->json == told.json) continue;
        if (!changed.empty()) changed += ',';
        changed += told.json;
    }
    if (same_order && changed.empty() && live == live_) return {};
    std::string out = "{\"things\":[" + changed + ']';
    if (!same_order) {
        out += ",\"order\":[";
        for (std::size_t i = 0; i < next.size(); ++i) {
            if (i > 0) out += ',';
            add_json(out, std::string_view(next[i].name));
        }
        out += ']';
    }
    if (live != live_) {
        out += ",\"live\":";
        add_json(out, std::string_view(live));
    }
    told_ = std::move(next);
    live_ = std::move(live);
    return out + '}';
}

std::string Mirror::all() const {
    std::string out = "[";
    for (const Told& told : told_) {
        if (out.size() > 1) out += ',';
        out.append(told.json, 0, told.json.size() - 1);
        out += ",\"target\":";
        add_json(out, told.target);
        out += '}';
    }
    return out + ']';
}

} // namespace carriageway
