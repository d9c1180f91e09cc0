// Why a question of placing (placement.h) has no placement: wishes that can't all be met, as few
// that giving up any one of them makes a placement possible; and what of the press would have to
// be otherwise for all wishes to be met.
//
// Wishes are left out in turn (placement_wishes.h has the order), many at a time and then fewer,
// and stay out when there is still no placement without them. What can't be left out is the
// conflict. It is one of perhaps several; a question can have two that share no wish, and then
// giving up one wish of this one leaves the other.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

#include "core/placement_search.h"
#include "core/placement_wishes.h"

namespace carriageway {

/// A fact of the press that alone, were it otherwise, would let all wishes be met.
struct PressNeed {
    PressFact fact = PressFact::stations;
    int needed = 0; ///< for stations: how many more at least; for flash_units: in all; otherwise 0
    bool operator==(const PressNeed&) const = default;
};

struct PlacementConflict {
    /// Empty for a question that has a placement, and for a press that can't place so many colours
    /// whatever is given up.
    std::vector<PlacementWish> wishes;
    std::vector<PressNeed> needs; ///< in the order of PressFact
    /// False: some search gave up as too large. The wishes do conflict, but fewer of them may; a
    /// need may be missing, or smaller.
    bool complete = true;
};

/// Dropping it cancels it.
class PlacementConflictSearch {
  public:
    explicit PlacementConflictSearch(const PlacementQuestion& question,
                                     PlacementSettings settings = {});

    /// Takes up at most `steps` beginnings of placements. found: the conflict is there; impossible:
    /// there is none, the question has a placement; too_large: not even that could be told.
    PlacementState run(long steps);

    PlacementState state() const { return state_; }
    double progress() const; ///< a guess that never goes back; 1 when it isn't running
    std::uint64_t nodes() const { return nodes_ + search_.nodes(); }
    const PlacementConflict& conflict() const { return conflict_; }

  private:
    enum class Stage { whole, wishes, facts };
    struct Range {
        std::size_t from = 0;
        std::size_t to = 0;
    };

    void judge(PlacementState outcome);
    void judge_range(bool possible);
    void judge_fact(bool possible);
    void next_range();
    void next_fact();
    void ask(const PlacementQuestion& question);

    PlacementQuestion question_;
    PlacementSettings settings_;
    PlacementSearch search_;
    PlacementState state_ = PlacementState::running;
    PlacementConflict conflict_;
    Stage stage_ = Stage::whole;
    std::vector<PlacementWish> wishes_;
    std::vector<bool> out_;     ///< of wishes_: left out
    std::vector<Range> ranges_; ///< still to be judged, the last one first
    int fact_ = 0;              ///< being judged
    int too_few_ = 0;           ///< more of it than this don't help
    int tried_ = 0;
    int enough_ = 0; ///< 0: not known to help
    std::uint64_t nodes_ = 0;
    double progress_ = 0.0;
};

/// All at once.
PlacementConflict placement_conflict(const PlacementQuestion& question,
                                     const PlacementSettings& settings = {});

} // namespace carriageway
