#include "apps/cli/classify.h"

#include <algorithm>
#include <iostream>
#include <nlohmann/json.hpp>

#include "apps/cli/output.h"

namespace cli {
namespace {

using domain::Arch;
using domain::Error;
using domain::ErrorCode;
using domain::Notation;
using domain::Result;
using domain::ToldArch;
using domain::Tooth;
using domain::ToothSet;

Error unusable(std::string why) { return {ErrorCode::Unusable, std::move(why)}; }

/// Which set of teeth each word fills; the same words are options and batch words.
struct ToothWord {
    std::string_view word;
    ToothSet ToldArch::* teeth;
};
constexpr ToothWord kToothWords[] = {{"missing", &ToldArch::missing},
                                     {"not-replaced", &ToldArch::notReplaced},
                                     {"extract", &ToldArch::toBeExtracted},
                                     {"abutment", &ToldArch::abutments},
                                     {"replaced", &ToldArch::replaced}};

/// Calls `use` with each part of a text between separators, the empty ones left out.
template <typename Use>
void eachPart(std::string_view text, char separator, Use use) {
    while (!text.empty()) {
        const auto end = std::min(text.find(separator), text.size());
        if (end > 0) use(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

std::optional<Error> addTeeth(ToothSet& teeth, std::string_view list, Arch arch,
                              Notation notation) {
    std::optional<Error> trouble;
    eachPart(list, ',', [&](std::string_view name) {
        const auto tooth = domain::parseTooth(name, notation);
        if (!tooth)
            trouble = unusable("\"" + std::string{name} + "\" is no tooth in the notation " +
                               std::string{codeOf(notation)});
        else if (tooth->arch() != arch)
            trouble = unusable("tooth " + std::string{name} + " is not in the " +
                               std::string{codeOf(arch)} + " arch");
        else
            teeth.add(*tooth);
    });
    return trouble;
}

/// What cannot be true of one mouth.
std::optional<Error> contradiction(const ToldArch& told) {
    const ToothSet gone = told.missing | told.notReplaced | told.toBeExtracted | told.replaced;
    for (const Tooth tooth : told.abutments.teeth())
        if (gone.has(tooth))
            return unusable("tooth " + tooth.text() + " is named as abutment and as missing");
    for (const Tooth tooth : told.replaced.teeth())
        if (told.notReplaced.has(tooth))
            return unusable("tooth " + tooth.text() + " is named as replaced and as not replaced");
    return {};
}

Result<Arch> parseArch(std::string_view word) {
    const auto arch = domain::parseCode<Arch>(word);
    if (!arch)
        return unusable("\"" + std::string{word} + "\" is no arch; expected " +
                        domain::allWords<Arch>());
    return *arch;
}

Result<Notation> parseNotation(std::string_view word) {
    const auto notation = domain::parseCode<Notation>(word);
    if (!notation)
        return unusable("\"" + std::string{word} + "\" is no notation; expected one of " +
                        domain::allWords<Notation>());
    return *notation;
}

}  // namespace

Result<ToldArch> parseToldArch(std::string_view line) {
    std::vector<std::string_view> words;
    eachPart(line, ' ', [&](std::string_view word) { words.push_back(word); });
    if (words.empty()) return unusable("the line is empty; expected an arch, then its teeth");
    const auto arch = parseArch(words.front());
    if (!arch) return arch.error();
    ToldArch told{.arch = *arch};
    Notation notation = Notation::Iso3950;
    for (const std::string_view word : words)
        if (constexpr std::string_view kWord = "notation="; word.starts_with(kWord)) {
            const auto declared = parseNotation(word.substr(kWord.size()));
            if (!declared) return declared.error();
            notation = *declared;
        }
    for (const std::string_view word : std::span{words}.subspan(1)) {
        const auto equals = word.find('=');
        const std::string_view name = word.substr(0, equals);
        const auto row = std::ranges::find(kToothWords, name, &ToothWord::word);
        if (equals == std::string_view::npos ||
            (row == std::end(kToothWords) && name != "notation"))
            return unusable("\"" + std::string{word} +
                            "\" is not understood; expected missing=, not-replaced=, extract=, "
                            "abutment=, replaced= or notation=");
        if (row == std::end(kToothWords)) continue;
        if (auto trouble = addTeeth(told.*(row->teeth), word.substr(equals + 1), *arch, notation))
            return *std::move(trouble);
    }
    if (auto trouble = contradiction(told)) return *std::move(trouble);
    return told;
}

std::string answerTo(const ToldArch& told) {
    const auto kennedy = domain::classify(domain::placesOf(told));
    return kennedy ? kennedy->text() : "none";
}

Exit classifyBatch(std::istream& lines, const Teller& answer, const Teller& complaint) {
    Exit exit = Exit::Done;
    std::string line;
    for (std::int64_t number = 1; std::getline(lines, line); ++number) {
        if (line.ends_with('\r')) line.pop_back();
        const auto told = parseToldArch(line);
        answer(told ? answerTo(*told) : "unusable");
        if (told) continue;
        complaint("line " + std::to_string(number) + ": " + told.error().message);
        exit = Exit::Unusable;
    }
    return exit;
}

Result<Exit> classify(const Call& call) {
    if (call.has("batch")) {
        std::ios::sync_with_stdio(false);
        return classifyBatch(std::cin, [](std::string_view line) { print(Page{line}); }, complain);
    }
    const auto arch = call.option("arch");
    if (!arch) return unusable("--arch is needed: upper or lower");
    std::string line = *arch;
    for (const ToothWord& row : kToothWords)
        if (auto teeth = call.option(row.word)) {
            std::erase(*teeth, ' ');
            line += ' ' + std::string{row.word} + '=' + *teeth;
        }
    if (const auto notation = call.option("notation")) line += " notation=" + *notation;
    const auto told = parseToldArch(line);
    if (!told) return told.error();
    if (call.has("json"))
        print("class-1", {{"kennedy", answerTo(*told)}});
    else
        print(Page{answerTo(*told)});
    return Exit::Done;
}

}  // namespace cli
