#include "app/records/exercise_file.h"

#include <algorithm>

#include "app/records/carried_text.h"
#include "app/records/finding_key.h"
#include "app/records/form_parts.h"
#include "app/records/reply_link.h"
#include "core/exercise_break.h"

namespace carriageway {

namespace {

using Kind = ReadFault::Kind;

constexpr std::string_view marker = "exercise=";

// ---- what documents hold, as text has it ----

struct Claim {
    HeadId head = 0;
    std::size_t fault = 0; ///< its place among finding_choices()
};

/// An exercise as it travels: one of two ways.
struct Parcel {
    bool broken = false;
    ExerciseKind kind = ExerciseKind::find_fault;
    std::string seed = "0";
    int level = lowest_level;
    Job job;
    std::vector<Claim> claims;
    std::vector<Edit> mends;
};

const Choices& kind_choices() {
    static const Choices choices = [] {
        Choices made;
        for (int i = 0; i < static_cast<int>(ExerciseKind::count); ++i)
            made.push_back(topic_key(static_cast<PracticeTopic>(i)));
        return made;
    }();
    return choices;
}

const Choices& finding_choices() {
    static const Choices choices = [] {
        Choices made;
        for (int i = 0; *finding_key(static_cast<FindingKind>(i)) != '\0'; ++i)
            made.push_back(finding_key(static_cast<FindingKind>(i)));
        return made;
    }();
    return choices;
}

void describe_made(Form& form, Parcel& carried) {
    form.object("made", [&] {
        describe_choice(form, "kind", carried.kind, kind_choices());
        form.text("seed", carried.seed, {longest_seed});
        describe_whole(form, "level", carried.level, {lowest_level, highest_level});
    });
}

void describe_broken(Form& form, Parcel& carried) {
    form.object("broken", [&] {
        form.object("job", [&] { describe_job(form, carried.job); });
        describe_list(form, "claims", carried.claims, {1, 1000}, [&](Claim& claim) {
            form.object("", [&] {
                describe_whole(form, "head", claim.head, {0, most_head_id});
                form.choice("fault", claim.fault, finding_choices());
            });
        });
        describe_list(form, "mends", carried.mends, {0, 100, false, true}, [&](Edit& edit) {
            form.object("", [&] { describe_edit(form, edit); });
        });
    });
}

void describe_parcel(Form& form, Parcel& carried) {
    const auto way = [&](bool broken, auto describe) {
        return [&form, &carried, broken, describe] {
            carried.broken = broken;
            describe(form, carried);
        };
    };
    form.one_of({{{"made"}, way(false, describe_made)}, {{"broken"}, way(true, describe_broken)}},
                carried.broken ? 1 : 0);
}

// ---- checks of what was read ----

bool is_claimed(const std::vector<Claim>& claims, const FaultClaim& fault) {
    return std::any_of(claims.begin(), claims.end(), [&](const Claim& claim) {
        return claim.head == fault.head && static_cast<FindingKind>(claim.fault) == fault.kind;
    });
}

/// The exercise of a broken job, with exactly what is claimed; nothing where that isn't so, or what
/// mends it doesn't.
std::optional<Exercise> exercise_as_claimed(const Parcel& carried) {
    std::optional<Exercise> exercise = exercise_of_broken(carried.job);
    if (!exercise || exercise->solution.faults.size() != carried.claims.size()) return std::nullopt;
    for (const FaultClaim& fault : exercise->solution.faults)
        if (!is_claimed(carried.claims, fault)) return std::nullopt;
    Job mended = carried.job;
    for (const Edit& edit : carried.mends)
        if (!apply(mended, edit)) return std::nullopt;
    if (!carried.mends.empty() && !faults_of(mended).empty()) return std::nullopt;
    exercise->solution.edits = carried.mends;
    return exercise;
}

/// Fills `exercise` from what was read, or says what is wrong with it.
std::optional<ReadFault> exercise_of(const Parcel& carried, std::optional<Exercise>& exercise) {
    if (!carried.broken) {
        const std::optional<std::uint64_t> seed = seed_of(carried.seed);
        if (!seed) return seed_fault("made.seed", carried.seed);
        exercise = make_exercise(carried.kind, *seed, carried.level);
        return std::nullopt;
    }
    if (std::optional<ReadFault> fault = fault_of_whole(carried.job)) {
        fault->path = "broken.job" + (fault->path.empty() ? "" : "." + fault->path);
        return fault;
    }
    exercise = exercise_as_claimed(carried);
    if (!exercise) return carried_fault(Kind::not_as_claimed, "broken.claims", {}, {});
    return std::nullopt;
}

// ---- the other way ----

Parcel parcel_of(const Exercise& exercise) {
    Parcel carried;
    carried.broken = exercise.from_job;
    carried.kind = exercise.kind;
    carried.seed = std::to_string(exercise.seed);
    carried.level = exercise.level;
    if (!carried.broken) return carried;
    carried.job = exercise.job;
    carried.job.walk.clear();
    carried.job.record = {};
    for (const FaultClaim& fault : exercise.solution.faults)
        carried.claims.push_back({fault.head, static_cast<std::size_t>(fault.kind)});
    carried.mends = exercise.solution.edits;
    return carried;
}

std::string exercise_text(const Exercise& exercise, bool pretty) {
    std::string text = write_document(exercise_key, exercise_format, parcel_of(exercise),
                                      describe_parcel, pretty);
    if (!pretty) text.pop_back(); // the line feed
    return text;
}

} // namespace

std::string write_exercise(const Exercise& exercise) { return exercise_text(exercise, true); }

ReadExercise read_exercise(std::string_view text) {
    Parcel carried;
    ReadExercise read;
    read.fault = read_document(text, exercise_key, exercise_format, carried, describe_parcel,
                               [&](const Parcel& all) { return exercise_of(all, read.exercise); });
    if (read.fault.kind != Kind::none) read.exercise.reset();
    return read;
}

std::string exercise_link_fragment(const Exercise& exercise) {
    return link_fragment(marker, exercise_text(exercise, false));
}

ReadExercise read_exercise_link(std::string_view text) {
    return read_from_link(text, marker, read_exercise);
}

LinkContent content_of_link(std::string_view link) {
    if (has_marker(link, marker)) return LinkContent::exercise;
    if (has_marker(link, result_marker)) return LinkContent::result;
    if (has_marker(link, reply_marker)) return LinkContent::reply;
    return LinkContent::job;
}

} // namespace carriageway
