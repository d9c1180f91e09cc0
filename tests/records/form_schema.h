// The form of a job file as JSON Schema (draft 2020-12), for comparing with the published one.
#pragma once

#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "app/records/form.h"

namespace carriageway {

/// Walks a form and notes which fields there are, which are required and which limits they have.
/// Objects, lists and choices only; no titles or descriptions.
class FormSchema : public Form {
  public:
    using Json = nlohmann::ordered_json;

    FormSchema();
    /// The schema of what was walked; the walk is over.
    Json finish();

    void object(const char* key, const std::function<void()>& members) override;
    void optional_object(const char* key, bool& there,
                         const std::function<void()>& members) override;
    void one_of(const std::vector<Way>& ways, std::size_t chosen) override;
    void number(const char* key, double& value, const NumberRange& range) override;
    void whole(const char* key, std::int64_t& value, const WholeRange& range) override;
    void truth(const char* key, bool& value) override;
    void text(const char* key, std::string& value, const TextSize& size) override;
    void colour(const char* key, std::uint32_t& value) override;
    void choice(const char* key, std::size_t& index, const Choices& choices) override;
    void optional_truth(const char* key, bool& value, bool usual) override;
    void optional_choice(const char* key, std::size_t& index, const Choices& choices,
                         std::size_t usual) override;
    void list(const char* key, std::size_t size, const ListSize& allowed,
              const std::function<void(std::size_t)>& resize,
              const std::function<void(std::size_t)>& item) override;

  private:
    /// An object that is open.
    struct Open {
        Json properties = Json::object();
        Json required = Json::array();
        Json choices = Json::array(); ///< one a one_of()
    };

    void add(const char* key, Json schema, bool optional = false);
    Json close();

    std::vector<Open> open_;
    std::vector<Json> items_; ///< schemas of items of the lists that are open
    bool required_ = true;
};

} // namespace carriageway
