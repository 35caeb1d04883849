/// The program `framewright`: finds the verb, sorts its words, runs it, and says what went wrong.
#include <QCommandLineOption>
#include <QCommandLineParser>
#include <QCoreApplication>
#include <algorithm>
#include <iostream>

#include "apps/cli/verb.h"

namespace {

using cli::Call;
using cli::Exit;
using cli::Option;
using cli::Verb;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

void fail(const std::string& message) { std::cerr << "framewright: " << message << '\n'; }

std::string padded(std::string text, std::size_t width) {
    text.resize(std::max(text.size() + 2, width), ' ');
    return text;
}

void printHelp() {
    std::cout << "framewright VERB ... -- work orders of a laboratory for removable partial "
                 "dentures\n\n";
    for (const Verb& verb : cli::verbs())
        std::cout << "  " << padded(std::string{verb.name} + ' ' + std::string{verb.arguments}, 24)
                  << verb.says << '\n';
    std::cout << "\nframewright VERB --help says more; framewright --version names the version.\n"
                 "Exit codes: 0 done or clean, 1 refused, 2 unusable input, 3 storage trouble.\n";
}

void printHelp(const Verb& verb) {
    std::cout << "framewright " << verb.name << ' ' << verb.arguments << "\n\n  " << verb.says
              << "\n\n";
    for (const Option& option : verb.options)
        std::cout << "  --"
                  << padded(std::string{option.name} + ' ' + std::string{option.value}, 22)
                  << option.says << '\n';
    std::cout << "\nexample: " << verb.example << '\n';
}

QString text(std::string_view view) {
    return QString::fromUtf8(view.data(), static_cast<qsizetype>(view.size()));
}

Result<Call> parse(const Verb& verb, const QStringList& words) {
    QCommandLineParser parser;
    for (const Option& option : verb.options)
        parser.addOption({text(option.name), text(option.says), text(option.value)});
    if (!parser.parse(words))
        return Error{ErrorCode::Unusable, parser.errorText().toStdString() + " See framewright " +
                                              std::string{verb.name} + " --help"};
    std::vector<std::string> arguments;
    for (const QString& argument : parser.positionalArguments())
        arguments.push_back(argument.toStdString());
    if (arguments.size() < verb.fewest || arguments.size() > verb.most)
        return Error{ErrorCode::Unusable, "expected: framewright " + std::string{verb.name} + ' ' +
                                              std::string{verb.arguments} + "; given: " +
                                              std::to_string(arguments.size()) + " arguments"};
    std::multimap<std::string, std::string> options;
    for (const Option& option : verb.options) {
        if (!parser.isSet(text(option.name))) continue;
        if (option.value.empty())
            options.emplace(std::string{option.name}, std::string{});
        else
            for (const QString& value : parser.values(text(option.name)))
                options.emplace(std::string{option.name}, value.toStdString());
    }
    return Call{std::move(arguments), std::move(options)};
}

Exit run(const Verb& verb, const QStringList& words) {
    const auto call = parse(verb, words);
    if (!call) {
        fail(call.error().message);
        return cli::exitOf(call.error().code);
    }
    const auto exit = verb.run(*call);
    if (exit) return *exit;
    fail(exit.error().message);
    return cli::exitOf(exit.error().code);
}

}  // namespace

int main(int count, char** words) {
    QCoreApplication application{count, words};
    QStringList given = QCoreApplication::arguments();
    if (given.size() < 2 || given[1] == "--help" || given[1] == "help") {
        printHelp();
        return static_cast<int>(given.size() < 2 ? Exit::Unusable : Exit::Done);
    }
    if (given[1] == "--version") {
        std::cout << "framewright " FRAMEWRIGHT_VERSION "\n";
        return 0;
    }
    const std::string name = given.takeAt(1).toStdString();
    const auto verb = std::ranges::find(cli::verbs(), name, &Verb::name);
    if (verb == cli::verbs().end()) {
        fail("no verb \"" + name + "\"; framewright --help lists them");
        return static_cast<int>(Exit::Unusable);
    }
    if (given.contains("--help")) {
        printHelp(*verb);
        return 0;
    }
    const Exit exit = run(*verb, given);
    std::cout.flush();
    if (std::cout.good()) return static_cast<int>(exit);
    fail("the answer could not be written out in full");
    return static_cast<int>(Exit::Storage);
}
