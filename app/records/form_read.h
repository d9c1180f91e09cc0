// Reading along a form.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/records/form.h"
#include "app/records/json_text.h"

namespace carriageway {

/// Fills what is walked from a tree, and stops at the first fault: from then on nothing is filled
/// in any more. What is walked is one object, opened and closed by the reader itself.
class FormReader : public Form {
  public:
    /// The tree must outlive the reader.
    explicit FormReader(const JsonNode& root);

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

    /// Closes the object; Kind::none when all was right. The line is left out.
    ReadFault finish();
    /// Where the value at fault ends, in bytes of the text (JsonNode::end).
    std::size_t fault_end() const { return fault_end_; }

  private:
    /// An object that is open.
    struct Open {
        const JsonNode* node;
        std::string path;
        std::vector<std::string> known; ///< keys that were asked for
        ReadFault missing;              ///< the first that wasn't there; told when the object ends
    };

    bool stopped() const { return fault_.kind != ReadFault::Kind::none; }
    const JsonNode* look(const char* key) const;
    bool left_out(const char* key);
    const JsonNode* take(const char* key, JsonNode::Kind kind, Shape shape);
    std::string path_to(const char* key) const;
    void refuse(const char* key, const JsonNode& node, ReadFault::Kind kind, std::string expected);
    void miss(const char* key, std::string expected);
    void open(const JsonNode& node, std::string path);
    void close();

    std::vector<Open> open_;
    const JsonNode* item_ = nullptr; ///< of the list that is walked, for the key ""
    std::string item_path_;
    ReadFault fault_;
    std::size_t fault_end_ = 0;
};

} // namespace carriageway
