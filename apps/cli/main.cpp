/// The program `framewright`: finds the verb, sorts its words, runs it, and says what went wrong.
#include <QCommandLineOption>
#include <QCommandLineParser>
#include <QCoreApplication>
#include <algorithm>

#include "apps/cli/output.h"
#include "apps/cli/verb.h"

namespace {

using cli::Call;
using cli::Exit;
using cli::Option;
using cli::Page;
using cli::Verb;
using domain::Error;
using domain::ErrorCode;
using domain::Result;

std::string padded(std::string text, std::size_t width) {
    text.resize(std::max(text.size() + 2, width), ' ');
    return text;
}

void printHelp() {
    Page page{"framewright VERB ... -- work orders of a laboratory for removable partial dentures"};
    page.blank();
    for (const Verb& verb : cli::verbs())
        page.line("  " + padded(std::string{verb.name} + ' ' + std::string{verb.arguments}, 24) +
                  std::string{verb.says});
    page.blank()
        .line("framewright VERB --help says more; framewright --version names the version.")
        .line("Exit codes: 0 done or clean, 1 refused, 2 unusable input, 3 storage trouble.");
    cli::print(page);
}

void printHelp(const Verb& verb) {
    Page page{"framewright " + std::string{verb.name} + ' ' + std::string{verb.arguments}};
    page.blank().line("  " + std::string{verb.says}).blank();
    for (const Option& option : verb.options)
        page.line("  --" + padded(std::string{option.name} + ' ' + std::string{option.value}, 22) +
                  std::string{option.says});
    cli::print(page.blank().line("example: " + std::string{verb.example}));
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
    return Call{std::move(arguments), std::move(options), verb.needs};
}

Exit run(const Verb& verb, const QStringList& words) {
    const auto call = parse(verb, words);
    if (!call) {
        cli::complain(call.error().message);
        return cli::exitOf(call.error().code);
    }
    const auto exit = verb.run(*call);
    if (exit) return *exit;
    cli::complain(exit.error().message);
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
        cli::print(cli::Page{"framewright " FRAMEWRIGHT_VERSION});
        return 0;
    }
    const std::string name = given.takeAt(1).toStdString();
    const auto verb = std::ranges::find(cli::verbs(), name, &Verb::name);
    if (verb == cli::verbs().end()) {
        cli::complain("no verb \"" + name + "\"; framewright --help lists them");
        return static_cast<int>(Exit::Unusable);
    }
    if (given.contains("--help")) {
        printHelp(*verb);
        return 0;
    }
    const Exit exit = run(*verb, given);
    if (cli::isWrittenOut()) return static_cast<int>(exit);
    cli::complain("the answer could not be written out in full");
    return static_cast<int>(Exit::Storage);
}
