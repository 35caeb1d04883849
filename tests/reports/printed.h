/// Papers on disk and what other programs see in them: qpdf, pdftotext and pdftoppm (poppler).
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "reports/paper_file.h"

namespace printed {

namespace fs = std::filesystem;

/// A folder of this test alone, gone when it ends.
class Folder {
public:
    Folder() {
        std::string pattern = (fs::temp_directory_path() / "papers-XXXXXX").string();
        if (const char* made = ::mkdtemp(pattern.data())) path_ = made;
    }
    ~Folder() {
        std::error_code ignored;
        fs::permissions(path_, fs::perms::owner_all, ignored);
        fs::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    fs::path operator/(const std::string& name) const { return path_ / name; }
    const fs::path& path() const { return path_; }

private:
    fs::path path_{};
};

inline std::string contentOf(const fs::path& file) {
    std::ifstream stream{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{stream}, {}};
}

inline std::vector<std::string> noOffers(const domain::Finding& /*finding*/) { return {}; }

struct Outcome {
    int code{};
    std::string output{};
};

/// Runs a command line of this test's own making; complaints on stderr are left out.
inline Outcome run(const std::string& command) {
    Outcome outcome;
    // NOLINTNEXTLINE(cert-env33-c): of this test's own making
    std::FILE* pipe = ::popen((command + " 2>/dev/null").c_str(), "r");
    if (pipe == nullptr) return {.code = -1, .output = {}};
    char buffer[4096];
    for (std::size_t read = 0; (read = std::fread(buffer, 1, sizeof buffer, pipe)) > 0;)
        outcome.output.append(buffer, read);
    outcome.code = ::pclose(pipe);
    return outcome;
}

inline bool isSound(const fs::path& pdf) {
    return run(QPDF " --check '" + pdf.string() + "'").code == 0;
}

inline std::string textOf(const fs::path& pdf) {
    return run(PDFTOTEXT " -layout '" + pdf.string() + "' -").output;
}

/// The text with all white space as single spaces, as a reader takes lines together.
inline std::string flat(const std::string& text) {
    std::string joined;
    for (const char letter : text) {
        const bool space = letter == ' ' || letter == '\n' || letter == '\f' || letter == '\r';
        if (!space)
            joined += letter;
        else if (!joined.empty() && joined.back() != ' ')
            joined += ' ';
    }
    return joined;
}

inline int pagesOf(const fs::path& pdf) {
    return std::atoi(run(QPDF " --show-npages '" + pdf.string() + "'").output.c_str());
}

/// Grey values of one page, row by row.
struct Raster {
    int width{};
    int height{};
    std::string grey{};

    /// Dark pixels within a part of the page.
    int ink(int left, int top, int right, int bottom) const {
        int count = 0;
        for (int y = top; y < bottom; ++y)
            for (int x = left; x < right; ++x)
                if (static_cast<unsigned char>(
                        grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                             static_cast<std::size_t>(x)]) < 128)
                    ++count;
        return count;
    }
};

inline Raster rasterOf(const fs::path& pdf, int page, int dotsPerInch) {
    const std::string number = std::to_string(page);
    const auto outcome = run(PDFTOPPM " -gray -r " + std::to_string(dotsPerInch) + " -f " + number +
                             " -l " + number + " '" + pdf.string() + "'");
    Raster raster;
    int begin = 0;
    if (std::sscanf(outcome.output.c_str(), "P5 %d %d 255%n", &raster.width, &raster.height,
                    &begin) == 2)
        raster.grey = outcome.output.substr(static_cast<std::size_t>(begin) + 1);
    return raster;
}

inline reports::PaperHead head() {
    return {.laboratory = "Foundry Walk Dental Workshop",
            .address = "7 Foundry Walk, Westhaven",
            .contact = "bench@foundrywalk.example",
            .order = "26000012",
            .revision = 2,
            .printedAt = domain::Instant::ofMicroseconds(1'795'595'640'000'000),
            .printedBy = "MK",
            .digest = "9f86d081",
            .size = reports::PageSize::A4};
}

inline fs::path put(const Folder& folder, const reports::Paper& paper,
                    const std::string& name = "paper.pdf") {
    const fs::path file = folder / name;
    fs::remove(file);  // a paper is not put in the place of another one
    const auto written = reports::write(paper, file);
    EXPECT_TRUE(written) << (written ? "" : written.error().message);
    return file;
}

/// Compares with the file; where they differ, the new text is put beside it to look at.
inline void expectGolden(const std::string& name, const reports::Paper& paper) {
    const fs::path golden = fs::path{GOLDEN_FOLDER} / name;
    const std::string text = reports::textOf(paper);
    const std::string kept = contentOf(golden);
    if (text == kept) return;
    const auto beside = fs::temp_directory_path() / name;
    std::ofstream{beside, std::ios::binary} << text;
    ADD_FAILURE() << golden << " says something else; see " << beside;
}

}  // namespace printed
