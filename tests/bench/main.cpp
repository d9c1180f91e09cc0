// carriageway_bench [--csv FILE] [NAME...]: runs the measures named, or all of them.
//
// Ends with 1 when any figure is over its limit, 2 when one could not be measured.
#include <cmath>
#include <cstdio>
#include <cstring>
#include <exception>
#include <fstream>
#include <string>
#include <vector>

#include "tests/bench/bench.h"

using namespace carriageway::bench;

namespace {

constexpr Measure measures[] = {
    {"assess_vs_geos", assess_vs_geos},
    {"set_vs_glpk", set_vs_glpk},
    {"press_assess_growth", press_assess_growth},
    {"placement_growth", placement_growth},
    {"registration_vs_eigen", registration_vs_eigen},
    {"frame_vs_demo", frame_vs_demo},
    {"coverage_allocations", coverage_allocations},
    {"search_growth", search_growth},
    {"first_frame_vs_bare", first_frame_vs_bare},
    {"idle", idle},
};

const Measure* find(const char* name) {
    for (const Measure& measure : measures)
        if (std::strcmp(measure.name, name) == 0) return &measure;
    return nullptr;
}

void print(const Ratio& ratio) {
    std::printf("ratio %s %.4g limit %.4g%s\n", ratio.name.c_str(), ratio.value, ratio.limit,
                ratio.over() ? " OVER" : "");
    if (!ratio.detail.empty()) std::printf("  %s\n", ratio.detail.c_str());
    std::fflush(stdout);
}

bool write_csv(const std::string& path, const std::vector<Ratio>& ratios) {
    std::ofstream out(path);
    out << "name,value,limit,over,sides\n";
    for (const Ratio& ratio : ratios)
        out << ratio.name << ',' << ratio.value << ',' << ratio.limit << ',' << ratio.over() << ",\""
            << ratio.detail << "\"\n";
    out.flush();
    return out.good();
}

} // namespace

int main(int count, char** arguments) {
    std::string csv;
    std::vector<const Measure*> chosen;
    for (int i = 1; i < count; ++i) {
        if (std::strcmp(arguments[i], "--csv") == 0 && i + 1 < count) {
            csv = arguments[++i];
        } else if (const Measure* measure = find(arguments[i])) {
            chosen.push_back(measure);
        } else {
            std::fprintf(stderr, "usage: carriageway_bench [--csv FILE] [NAME...]\nThe names are:\n");
            for (const Measure& each : measures) std::fprintf(stderr, "  %s\n", each.name);
            return 2;
        }
    }
    if (chosen.empty())
        for (const Measure& each : measures) chosen.push_back(&each);

    std::printf("seed %u\n", seed);
    std::vector<Ratio> ratios;
    int status = 0;
    for (const Measure* measure : chosen) try {
            for (Ratio& ratio : measure->run()) {
                print(ratio);
                if (ratio.over() && status == 0) status = 1;
                ratios.push_back(std::move(ratio));
            }
        } catch (const std::exception& error) {
            std::printf("%s could not be measured: %s\n", measure->name, error.what());
            status = 2;
        }
    if (!csv.empty() && !write_csv(csv, ratios)) {
        std::fprintf(stderr, "%s can't be written: choose another place for the table.\n", csv.c_str());
        status = 2;
    }
    return status;
}
