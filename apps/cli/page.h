/// What the command line shows people: lines, each of them safe for a terminal.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace cli {

/// Lines under each other. Each line passes domain::plainText(): a text from outside can neither
/// steer the terminal nor begin a line or a row of its own, whoever puts it on the page.
class Page {
public:
    Page() = default;
    explicit Page(std::string_view text) { line(text); }

    Page& line(std::string_view text);
    Page& blank() { return line({}); }
    Page& add(const Page& below);

    const std::string& text() const noexcept { return text_; }  ///< each line ended

private:
    std::string text_;
};

/// Rows under a heading, columns as wide as their widest cell; widths count characters.
Page table(const std::vector<std::string>& heading,
           const std::vector<std::vector<std::string>>& rows);

}  // namespace cli
