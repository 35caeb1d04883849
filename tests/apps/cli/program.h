/// The program as a person runs it.
#pragma once

#include <gtest/gtest.h>

#include <QProcess>
#include <nlohmann/json.hpp>

namespace cli_test {

struct Ran {
    int exit{};
    std::string out{};
    std::string err{};
    nlohmann::json json() const { return nlohmann::json::parse(out); }
};

/// `environment`: what is set besides, as "FRAMEWRIGHT_AS=MK".
inline Ran run(const QStringList& words, const QByteArray& input = {},
               const QStringList& environment = {}) {
    QProcess process;
    process.setEnvironment(QProcess::systemEnvironment() << environment);
    process.start(FRAMEWRIGHT, words);
    process.write(input);
    process.closeWriteChannel();
    EXPECT_TRUE(process.waitForFinished(60'000));
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    return {process.exitCode(), process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

}  // namespace cli_test
