#include "tests/meta/edges.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <string>
#include <vector>

#include "domain/rules/examine.h"

namespace {

using namespace domain;
using edges::Edge;

std::vector<Edge> allEdges() {
    std::vector<Edge> all;
    for (const auto table : {edges::adminEdges(), edges::dentitionEdges(), edges::claspEdges(),
                             edges::frameworkEdges(), edges::materialEdges()})
        all.insert(all.end(), table.begin(), table.end());
    return all;
}

class EveryEdge : public testing::TestWithParam<Edge> {};

TEST_P(EveryEdge, IsFoundAsOftenAsItSays) {
    Prescription prescription = GetParam().start();
    GetParam().change(prescription);
    const auto findings = examine(prescription, support::examinationDay());
    EXPECT_EQ(std::ranges::count(findings, GetParam().rule, &Finding::rule), GetParam().times);
}

std::string testName(const testing::TestParamInfo<Edge>& edge) {
    std::string name = std::string{edge.param.rule} + '_' + std::string{edge.param.name};
    for (char& letter : name)
        if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '_';
    return name;
}

INSTANTIATE_TEST_SUITE_P(Rules, EveryEdge, testing::ValuesIn(allEdges()), testName);

}  // namespace
