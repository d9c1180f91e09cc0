// Which heads of two jobs belong together.
#include <algorithm>

#include "core/job_changes.h"

namespace carriageway {
namespace {

/// Whether two jobs come from one: by ids and colours' names.
bool are_copies(const Job& a, const Job& b) {
    const auto alike = std::count_if(a.heads.begin(), a.heads.end(), [&](const Head& head) {
        const Head* other = find_head(b, head.id);
        return other != nullptr && other->colour == head.colour;
    });
    const std::size_t fewer = std::min(a.heads.size(), b.heads.size());
    return 2 * static_cast<std::size_t>(alike) > fewer;
}

/// Gives heads of `a` that have no partner yet the first of `b` that has none either and passes.
struct Matcher {
    const Job& b;
    std::vector<HeadPair>& pairs; ///< one a head of `a`, in their order

    bool is_taken(HeadId id) const {
        return std::any_of(pairs.begin(), pairs.end(),
                           [&](const HeadPair& pair) { return pair.b == id; });
    }

    template <typename Passes>
    void match(const Job& a, MatchedBy by, Passes passes) const {
        for (std::size_t i = 0; i < pairs.size(); ++i) {
            if (pairs[i].b != 0) continue;
            for (const Head& other : b.heads) {
                if (is_taken(other.id) || !passes(a.heads[i], other)) continue;
                pairs[i].b = other.id;
                pairs[i].by = by;
                break;
            }
        }
    }
};

} // namespace

std::vector<HeadPair> match_heads(const Job& a, const Job& b) {
    std::vector<HeadPair> pairs;
    for (const Head& head : a.heads)
        pairs.push_back({head.id, 0, MatchedBy::nothing});
    const Matcher matcher{b, pairs};
    const bool copies = are_copies(a, b);
    if (copies) {
        matcher.match(a, MatchedBy::id,
                      [](const Head& one, const Head& other) { return one.id == other.id; });
    }
    matcher.match(a, MatchedBy::colour, [](const Head& one, const Head& other) {
        return !one.colour.empty() && one.colour == other.colour;
    });
    if (!copies) {
        matcher.match(a, MatchedBy::order, [](const Head&, const Head&) { return true; });
    }
    for (const Head& head : b.heads) {
        if (!matcher.is_taken(head.id)) pairs.push_back({0, head.id, MatchedBy::nothing});
    }
    return pairs;
}

} // namespace carriageway
