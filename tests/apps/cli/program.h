/// The program as a person runs it.
#pragma once

#include <gtest/gtest.h>

#include <QProcess>
#include <QTemporaryDir>
#include <nlohmann/json.hpp>
#include <sstream>

namespace cli_test {

struct Ran {
    int exit{};
    std::string out{};
    std::string err{};
    nlohmann::json json() const { return nlohmann::json::parse(out); }
};

/// Where the sessions of terminals are kept: of this program of tests alone.
inline QString runtimeFolder() {
    static const QTemporaryDir kFolder;
    return "XDG_RUNTIME_DIR=" + kFolder.path();
}

/// `environment`: what is set besides, as "FRAMEWRIGHT_AS=MK".
inline Ran run(const QStringList& words, const QByteArray& input = {},
               const QStringList& environment = {}) {
    QProcess process;
    process.setEnvironment(QProcess::systemEnvironment() << runtimeFolder() << environment);
    process.start(FRAMEWRIGHT, words);
    process.write(input);
    process.closeWriteChannel();
    EXPECT_TRUE(process.waitForFinished(60'000));
    EXPECT_EQ(process.exitStatus(), QProcess::NormalExit);
    return {process.exitCode(), process.readAllStandardOutput().toStdString(),
            process.readAllStandardError().toStdString()};
}

/// The verbs as `--help` lists them.
inline std::vector<std::string> verbsInHelp() {
    const Ran all = run({"--help"});
    EXPECT_EQ(all.exit, 0);
    std::vector<std::string> verbs;
    std::istringstream lines{all.out};
    for (std::string line; std::getline(lines, line);)
        if (line.starts_with("  ")) verbs.push_back(line.substr(2, line.find(' ', 2) - 2));
    return verbs;
}

}  // namespace cli_test
