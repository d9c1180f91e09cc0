// The published schema says what the reader does: the same fields, limits and choices.
#include <fstream>

#include <catch2/catch_test_macros.hpp>

#include "app/records/exchange.h"
#include "app/records/job_form.h"
#include "tests/records/form_schema.h"

using namespace carriageway;
using Json = nlohmann::json; // keys in no particular order

namespace {

Json published() {
    std::ifstream file(CARRIAGEWAY_SOURCE_DIR "/assets/schemas/job.schema.json");
    return Json::parse(file);
}

/// Takes out what is there for people only, and sorts what has no order.
Json bare(Json schema, bool inside_properties = false) {
    if (schema.is_array()) {
        for (Json& item : schema) item = bare(item);
        return schema;
    }
    if (!schema.is_object()) return schema;
    if (!inside_properties)
        for (const char* key : {"description", "title", "$schema", "$id", "default", "examples"}) schema.erase(key);
    for (auto& [key, value] : schema.items()) {
        if (key == "required" && value.is_array() && !inside_properties) std::sort(value.begin(), value.end());
        else value = bare(value, key == "properties" && !inside_properties);
    }
    return schema;
}

Json of_the_reader() {
    FormSchema form;
    Job job;
    describe_job(form, job);
    Json schema = Json::parse(form.finish().dump());
    schema["properties"][job_key] = {{"type", "integer"}, {"minimum", 1}, {"maximum", job_format}};
    schema["required"].push_back(job_key);
    return bare(schema);
}

int count_of(const Json& schema, const std::string& key) {
    int count = 0;
    if (schema.is_structured())
        for (const auto& [name, value] : schema.items()) count += (name == key) + count_of(value, key);
    return count;
}

} // namespace

TEST_CASE("the published schema and the reader agree in every field, limit and choice") {
    const Json ours = of_the_reader(), theirs = bare(published());
    const Json difference = Json::diff(theirs, ours);
    INFO(difference.dump(1).substr(0, 3000));
    CHECK(difference.empty());
    CHECK(count_of(ours, "maximum") > 70);
}

TEST_CASE("every field of the published schema is described for people") {
    const Json schema = published();
    CHECK(count_of(schema, "description") > 80);
}
