#include "tests/records/form_schema.h"

#include <cmath>

#include "app/records/exchange.h"

namespace carriageway {
namespace {

using Json = FormSchema::Json;

Json limit_json(double limit, double factor) {
    const double number = limit_in_file(limit, factor);
    if (number == std::floor(number)) return static_cast<std::int64_t>(number);
    return number;
}

}  // namespace

FormSchema::FormSchema() {
    open_.emplace_back();
}

Json FormSchema::finish() {
    return close();
}

Json FormSchema::close() {
    Open object = std::move(open_.back());
    open_.pop_back();
    Json schema{{"type", "object"}};
    schema["properties"] = std::move(object.properties);
    if (!object.required.empty()) schema["required"] = std::move(object.required);
    schema["additionalProperties"] = false;
    if (!object.choices.empty()) schema["allOf"] = std::move(object.choices);
    return schema;
}

void FormSchema::add(const char* key, Json schema, bool optional) {
    if (key[0] == '\0') {
        items_.back() = std::move(schema);
        return;
    }
    open_.back().properties[key] = std::move(schema);
    if (required_ && !optional) open_.back().required.push_back(key);
}

void FormSchema::object(const char* key, const std::function<void()>& members) {
    const bool required_around = required_;
    required_ = true;
    open_.emplace_back();
    members();
    Json schema = close();
    required_ = required_around;
    add(key, std::move(schema));
}

void FormSchema::optional_object(const char* key, bool&, const std::function<void()>& members) {
    const bool required_around = required_;
    required_ = false;
    object(key, members);
    required_ = required_around;
}

// Fields of all ways are properties; a choice says which belong together.
void FormSchema::one_of(const std::vector<Way>& ways, std::size_t) {
    const bool required_around = required_;
    required_ = false;
    std::vector<std::vector<std::string>> keys_of_ways;
    for (const Way& way : ways) {
        const Json before = open_.back().properties;
        way.describe();
        auto& keys = keys_of_ways.emplace_back();
        for (const auto& [key, schema] : open_.back().properties.items()) {
            if (!before.contains(key)) keys.push_back(key);
        }
    }
    required_ = required_around;
    Json choice = Json::array();
    for (std::size_t i = 0; i < ways.size(); ++i) {
        Json way{{"required", ways[i].keys}};
        for (std::size_t other = 0; other < ways.size(); ++other) {
            if (other == i) continue;
            for (const std::string& key : keys_of_ways[other]) way["properties"][key] = false;
        }
        choice.push_back(std::move(way));
    }
    open_.back().choices.push_back(Json{{"oneOf", std::move(choice)}});
}

void FormSchema::number(const char* key, double&, const NumberRange& range) {
    Json schema{{"type", "number"}};
    schema[range.above_least ? "exclusiveMinimum" : "minimum"] =
        limit_json(range.least, range.factor);
    schema["maximum"] = limit_json(range.most, range.factor);
    add(key, std::move(schema), range.usual.has_value());
}

void FormSchema::whole(const char* key, std::int64_t&, const WholeRange& range) {
    add(key, Json{{"type", "integer"}, {"minimum", range.least}, {"maximum", range.most}},
        range.usual.has_value());
}

void FormSchema::truth(const char* key, bool&) {
    add(key, Json{{"type", "boolean"}});
}

// The reader counts bytes, a schema characters: of texts beyond ASCII it lets longer ones pass.
void FormSchema::text(const char* key, std::string&, const TextSize& size) {
    add(key, Json{{"type", "string"}, {"maxLength", size.most}}, size.optional);
}

void FormSchema::colour(const char* key, std::uint32_t&) {
    add(key, Json{{"type", "string"}, {"pattern", "^#[0-9A-Fa-f]{6}$"}});
}

void FormSchema::choice(const char* key, std::size_t&, const Choices& choices) {
    add(key, Json{{"enum", choices}});
}

void FormSchema::optional_truth(const char* key, bool&, bool) {
    add(key, Json{{"type", "boolean"}}, true);
}

void FormSchema::optional_choice(const char* key, std::size_t&, const Choices& choices,
                                 std::size_t) {
    add(key, Json{{"enum", choices}}, true);
}

void FormSchema::list(const char* key, std::size_t, const ListSize& allowed,
                      const std::function<void(std::size_t)>& resize,
                      const std::function<void(std::size_t)>& item) {
    const bool required_around = required_;
    required_ = true;
    items_.emplace_back();
    resize(1);
    item(0);
    Json schema{{"type", "array"}, {"items", std::move(items_.back())}};
    items_.pop_back();
    required_ = required_around;
    if (allowed.least > 0) schema["minItems"] = allowed.least;
    if (allowed.most < most_values) schema["maxItems"] = allowed.most;
    add(key, std::move(schema), allowed.optional);
}

}  // namespace carriageway
