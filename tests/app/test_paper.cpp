// The sheet as pages: nothing cut off or laid over anything else, and everything on it.
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_string.hpp>

#include "app/text/list_sentences.h"
#include "tests/app/paper_texts.h"

using namespace carriageway;
using namespace carriageway::test;
using Catch::Matchers::ContainsSubstring;

namespace {

/// Boxes of texts that only touch: rounding of sums of line heights, dp.
constexpr float slack = 0.5f;

/// What is wrong with a page's texts: off it, cut off, or over one another.
std::vector<std::string> faults_of(const DrawingList& page) {
    std::vector<std::string> faults;
    const std::vector<PlacedText> texts = texts_of(page);
    const Box within = page.window().inset(50.0f); // 10 mm
    const auto inside = [](const Box& box, const Box& of) {
        return box.x0 >= of.x0 && box.y0 >= of.y0 && box.x1 <= of.x1 && box.y1 <= of.y1;
    };
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const Box& box = texts[i].box;
        if (!inside(box, within)) faults.push_back("off the page: " + texts[i].words);
        if (!inside(box.inset(slack), texts[i].clip))
            faults.push_back("cut off: " + texts[i].words);
        for (std::size_t j = i + 1; j < texts.size(); ++j)
            if (overlap(box.inset(slack), texts[j].box.inset(slack)))
                faults.push_back(texts[i].words + " over " + texts[j].words);
    }
    return faults;
}

} // namespace

TEST_CASE("What is wrong with a page is found", "[paper]") {
    const PaperType type;
    const auto faults = [&](Vec at, Box clip) {
        DrawingList page;
        page.begin({0.0f, 0.0f, 1050.0f, 1485.0f}, type);
        page.text({400.0f, 400.0f}, "first", {}, Role::ink, Role::paper);
        page.push_clip(clip);
        page.text(at, "second", {}, Role::ink, Role::paper);
        return faults_of(page);
    };
    const Box whole{0.0f, 0.0f, 1050.0f, 1485.0f};
    CHECK(faults({400.0f, 420.0f}, whole).empty());
    CHECK(faults({410.0f, 405.0f}, whole) == std::vector<std::string>{"first over second"});
    CHECK(faults({20.0f, 600.0f}, whole) == std::vector<std::string>{"off the page: second"});
    CHECK(faults({400.0f, 600.0f}, {0.0f, 0.0f, 420.0f, 1485.0f}) ==
          std::vector<std::string>{"cut off: second"});
}

TEST_CASE("Every text lies on its page and none over another, whatever the job", "[paper]") {
    for_every_kind([](SheetRequest request) {
        for (const auto& [name, job] : paper_jobs()) {
            for (const LengthUnit unit : {LengthUnit::mm, LengthUnit::inch}) {
                INFO(name << (unit == LengthUnit::mm ? ", mm" : ", in"));
                request.job = job;
                request.unit = unit;
                SheetInput input;
                prepare_sheet(request, input);
                const JobSheet sheet = job_sheet(input.paper);
                REQUIRE_FALSE(sheet.pages.empty());
                for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
                    INFO("page " << i + 1);
                    CHECK(faults_of(sheet.pages[i]).empty());
                }
            }
        }
    });
}

TEST_CASE("Every page says which job it is of, and which page of how many", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = many_heads(12);
        SheetInput input;
        prepare_sheet(request, input);
        const JobSheet sheet = job_sheet(input.paper);
        CHECK(sheet.pages.size() > (request.page_a_head ? 12u : 2u));
        for (std::size_t i = 0; i < sheet.pages.size(); ++i) {
            std::string texts;
            for (const PlacedText& text : texts_of(sheet.pages[i])) texts += text.words + "\n";
            CHECK_THAT(texts, ContainsSubstring(request.job.name));
            CHECK_THAT(texts, ContainsSubstring(std::to_string(i + 1) + " / " +
                                                std::to_string(sheet.pages.size())));
        }
    });
}

TEST_CASE("Long texts stand on the sheet whole", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = wordy_job();
        SheetInput input;
        prepare_sheet(request, input);
        const std::string all = all_texts(job_sheet(input.paper));
        CHECK(whole_in(all, request.job.name));
        CHECK(whole_in(all, request.job.press.name));
        CHECK(whole_in(all, request.job.garment.name));
        for (const Head& head : request.job.heads) {
            CHECK(whole_in(all, head.colour));
            if (!request.page_a_head) continue;
            CHECK(whole_in(all, head.notes.ink));
            CHECK(whole_in(all, head.notes.stencil));
        }
        for (const CheckItem& item : request.job.press.checks)
            if (item.list == CheckList::before_run)
                CHECK(whole_in(all, step_text(request.language, item)));
        for (const Word word : {Word::paper_decides, Word::caution_index_path,
                                Word::caution_isolated, Word::caution_hot, Word::caution_solvents})
            CHECK(in_order(all, std::string(carriageway::word(request.language, word))));
    });
}

TEST_CASE("Every number of every head stands on the sheet, and what was really set", "[paper]") {
    for_every_kind([](SheetRequest request) {
        request.job = walked_job();
        SheetInput input;
        prepare_sheet(request, input);
        const std::string all = all_texts(job_sheet(input.paper));
        const Job& job = request.job;
        for (const Head& head : job.heads) {
            for (const Field field : walk_fields(job, head.id)) {
                const std::string planned = paper_value(request.language, request.unit, job, field,
                                                        number_of(job, &head, field));
                INFO(planned);
                CHECK(in_order(all, planned));
            }
            CHECK(in_order(all, head.colour));
        }
        for (const WalkMark& mark : job.walk) {
            if (!mark.real) continue;
            const std::string real = paper_number(request.unit, job, mark.field, *mark.real);
            INFO(real);
            CHECK(in_order(all, real));
        }
        CHECK_THAT(all, ContainsSubstring("QZ")); // the initials
    });
}

TEST_CASE("The recipe's gaps are told head by head, heads with the same ones together", "[paper]") {
    SheetRequest request = sheet_request(Language::english, false, false);
    Job& job = request.job;
    for (Head& head : job.heads) {
        head.squeegee.hardness = 0.0;
        head.squeegee.edge = BladeEdge::not_noted;
        head.notes = {};
    }
    job.heads[1].notes.ink = "plastisol";
    job.garment.name.clear();
    job.run.flash_temperature = job.run.dryer_temperature = 0.0;
    SheetInput input;
    prepare_sheet(request, input);
    const std::string all = all_texts(job_sheet(input.paper));
    std::string others;
    for (const Head& head : job.heads)
        if (head.id != job.heads[1].id)
            others += (others.empty() ? "" : ", ") + std::to_string(head.station);
    CHECK_THAT(all,
               ContainsSubstring("Heads " + others + ": stencil, ink, blade hardness, blade edge"));
    CHECK_THAT(all, ContainsSubstring("Head " + std::to_string(job.heads[1].station) +
                                      ": stencil, blade hardness, blade edge"));
    CHECK_THAT(all, ContainsSubstring("Job: garment, heat of the flash unit, dryer"));
}
