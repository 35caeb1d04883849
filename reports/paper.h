/// A paper as composed: what stands on it, in order, before anything is drawn.
///
/// Every paper of the laboratory is made of these few blocks, so all look alike and each can be
/// compared as text. How they are drawn is the business of paper_layout.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "domain/base/date.h"
#include "domain/base/id.h"
#include "domain/drawing/picture.h"
#include "domain/production/question.h"
#include "domain/rules/finding.h"
#include "reports/page_style.h"

namespace reports {

/// What stands in the header and the footer of every page.
struct PaperHead {
    std::string laboratory{};
    std::string address{};
    std::string contact{};
    std::string order{};  ///< the order number; empty: about no single order
    int revision{1};      ///< of the prescription
    domain::Instant printedAt{};
    std::string printedBy{};  ///< code of the person
    std::string digest{};     ///< short form of the digest of what is printed
    PageSize size{};
};

/// A question flagged at the bench and not answered yet.
struct FlagOnPaper {
    domain::FlagReason reason{};
    std::optional<std::string> note{};
    std::string person{};  ///< code of who flagged it
    domain::Instant since{};
};

/// Cautions somebody took responsibility for.
struct TakenCautions {
    std::vector<std::string> rules{};  ///< ids
    std::string person{};              ///< code
    std::string reason{};
    std::optional<domain::Instant> at{};
};

/// What the prescriber kept as prescribed, in signed words, and who recorded that.
struct KeptOnPaper {
    std::string place{};  ///< "clasp.rest 16"
    std::string found{};
    std::string words{};
    std::string person{};  ///< code
    std::optional<domain::Date> day{};
};

struct Heading {
    std::string text{};
};

struct Paragraph {
    std::string text{};
    bool quiet{};
};

struct Fact {
    std::string label{};
    std::string value{};
    bool ask{};  ///< the value is not given: shown as such
};

/// Labels at the left, values beside them; short ones stand two in a line.
struct Facts {
    std::vector<Fact> facts{};
};

enum class CheckState : std::uint8_t {
    Given,  ///< a ticked box
    Open,   ///< an empty box
    Look,   ///< a triangle
};

struct Table {
    std::vector<std::string> columns{};
    std::vector<double> shares{};  ///< of the width, one for each column; they sum to 1
    std::vector<std::vector<std::string>> rows{};
    std::vector<CheckState> ticks{};  ///< before each row; empty: none
    bool writable{};                  ///< rows are high enough to write in by hand
};

/// The number of a flag on the picture, repeated in its form beside the text it belongs to.
struct FlagNumber {
    int number{};
    domain::Severity severity{};
};

struct Check {
    CheckState state{};
    std::optional<FlagNumber> flag{};
    std::string text{};
    std::string detail{};  ///< smaller, below: rule id and source
};

struct Checklist {
    std::vector<Check> checks{};
};

struct PictureBlock {
    domain::Picture picture{};
};

/// In a frame of double line with the triangle mark.
struct CautionFrame {
    std::string title{};
    std::vector<std::string> paragraphs{};
};

/// One place a question is about, to be answered on its own.
struct AskedPlace {
    FlagNumber flag{};
    std::string text{};  ///< "Tooth 14: no rest is named"
    int lines{};         ///< to write on
    /// Changes that would clear it, each beside a box to tick, numbered from 1.
    std::vector<std::string> offers{};
};

struct Question {
    std::string text{};
    std::string why{};                   ///< what must hold, in plain words
    std::string source{};                ///< rule id and source
    std::vector<std::string> choices{};  ///< each beside a box to tick, at every place
    std::vector<AskedPlace> places{};
};

/// Empty places to be filled in by hand, side by side.
struct WriteIn {
    std::vector<std::string> labels{};
};

/// Empty lines to write on.
struct WritingLines {
    int count{};
};

/// The number of an order as bars, as modules and in digits. That it holds no more, and never a
/// patient, is said by its type.
struct BarcodeBlock {
    domain::OrderNumber number;
};

/// A short text as a QR code, for what people do not type.
struct CodeBlock {
    std::string text{};
};

using Block = std::variant<Heading, Paragraph, Facts, Table, Checklist, PictureBlock, CautionFrame,
                           Question, WriteIn, WritingLines, BarcodeBlock, CodeBlock>;

struct Paper {
    PaperHead head{};
    std::string name{};   ///< "Prescription"
    std::string about{};  ///< what tells it from others where it is about no single order
    std::string patientReference{};  ///< as the practice calls the patient; may be empty
    std::vector<Block> blocks{};
};

/// The paper as plain text, a line or more for each block; pictures as their words.
std::string textOf(const Paper& paper);

}  // namespace reports
