#include "app/views/action.h"

namespace carriageway {

void Action::become(DoEdit edit) {
    if (DoEdit* same = std::any_cast<DoEdit>(&large_)) *same = std::move(edit);
    else large_ = std::move(edit);
    kind_ = ActionKinds::number<DoEdit>();
}

int ActionList::add(Action action) {
    if (count_ < all_.size()) all_[count_] = std::move(action);
    else all_.push_back(std::move(action));
    return static_cast<int>(count_++);
}

int ActionList::add(DoEdit edit) {
    if (count_ < all_.size()) all_[count_].become(std::move(edit));
    else all_.push_back(std::move(edit));
    return static_cast<int>(count_++);
}

} // namespace carriageway
