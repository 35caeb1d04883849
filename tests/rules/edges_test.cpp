#include "tests/rules/edges.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cctype>
#include <string>
#include <vector>

#include "domain/rules/examine.h"

namespace {

using namespace domain;
using edges::Edge;
using testing::HasSubstr;

std::vector<Edge> allEdges() {
    std::vector<Edge> all;
    for (const auto table : {edges::adminEdges(), edges::dentitionEdges(), edges::claspEdges(),
                             edges::frameworkEdges(), edges::materialEdges()})
        all.insert(all.end(), table.begin(), table.end());
    return all;
}

class EveryEdge : public testing::TestWithParam<Edge> {};

TEST_P(EveryEdge, IsFoundAsOftenAsItSays) {
    const Edge& edge = GetParam();
    Prescription prescription = edge.start();
    edge.change(prescription);
    int times = 0;
    for (const Finding& finding : examine(prescription, support::examinationDay())) {
        if (finding.rule != edge.rule) continue;
        ++times;
        EXPECT_EQ(finding.severity, edge.severity.value_or(finding.severity));
        EXPECT_THAT(finding.found, HasSubstr(std::string{edge.says}));
    }
    EXPECT_EQ(times, edge.times);
}

std::string testName(const testing::TestParamInfo<Edge>& edge) {
    std::string name = std::string{edge.param.rule} + '_' + std::string{edge.param.name};
    for (char& letter : name)
        if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '_';
    return name;
}

INSTANTIATE_TEST_SUITE_P(Rules, EveryEdge, testing::ValuesIn(allEdges()), testName);

}  // namespace
