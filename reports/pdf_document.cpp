#include "reports/pdf_document.h"

#include <hpdf.h>
#include <hpdf_font.h>
#include <hpdf_fontdef.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <fstream>
#include <optional>

#include "reports/text.h"
#include "reports/true_type.h"

// What is reached into below is laid out like this in this version only.
static_assert(HPDF_VERSION_ID == 20300, "look again at embedWholeGlyphs()");

namespace reports {

using domain::Point;

namespace {

constexpr const char* kFontFolder = FRAMEWRIGHT_FONT_FOLDER;
constexpr std::array<const char*, kFaces> kFontFiles{"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"};

std::string fontPath(Face face) {
    return std::string{kFontFolder} + '/' + kFontFiles[static_cast<std::size_t>(face)];
}

std::optional<std::string> wholeFile(const std::string& path) {
    std::ifstream file{path, std::ios::binary | std::ios::ate};
    if (!file) return {};
    std::string bytes(static_cast<std::size_t>(file.tellg()), '\0');
    file.seekg(0);
    if (!file.read(bytes.data(), static_cast<std::streamsize>(bytes.size()))) return {};
    return bytes;
}

HPDF_Date pdfDate(domain::Instant instant) {
    using namespace std::chrono;
    const sys_time<microseconds> moment{microseconds{instant.microseconds()}};
    const auto day = floor<days>(moment);
    const year_month_day date{day};
    const hh_mm_ss time{floor<seconds>(moment - day)};
    return {.year = int{date.year()},
            .month = static_cast<int>(unsigned{date.month()}),
            .day = static_cast<int>(unsigned{date.day()}),
            .hour = static_cast<int>(time.hours().count()),
            .minutes = static_cast<int>(time.minutes().count()),
            .seconds = static_cast<int>(time.seconds().count()),
            .ind = '+',
            .off_hour = 0,
            .off_minutes = 0};
}

HPDF_REAL inPoints(double mm) { return static_cast<HPDF_REAL>(mm / kMmPerPoint); }

bool isFinite(const std::vector<Point>& line) {
    return std::ranges::all_of(
        line, [](Point point) { return std::isfinite(point.x) && std::isfinite(point.y); });
}

/// Marks for embedding the parts of every glyph that is used, and the parts of those parts.
void embedWholeGlyphs(HPDF_Font font, const TrueType& file) {
    const auto definition = static_cast<HPDF_FontAttr>(font->attr)->fontdef;
    const auto attributes = static_cast<HPDF_TTFontDefAttr>(definition->attr);
    HPDF_BYTE* used = attributes->glyph_tbl.flgs;
    std::vector<std::uint16_t> open;
    for (std::uint16_t glyph = 0; glyph < attributes->num_glyphs; ++glyph)
        if (used[glyph] != 0) open.push_back(glyph);
    while (!open.empty()) {
        const std::uint16_t glyph = open.back();
        open.pop_back();
        for (const std::uint16_t part : file.parts(glyph))
            if (part < attributes->num_glyphs && used[part] == 0) {
                used[part] = 1;
                open.push_back(part);
            }
    }
}

}  // namespace

struct PdfDocument::Hidden {
    struct LoadedFace {
        HPDF_Font font{};
        TrueType file;
    };

    Sheet sheet{};
    HPDF_Doc document{};
    std::vector<HPDF_Page> pages{};
    HPDF_Page page{};
    std::array<std::optional<LoadedFace>, kFaces> faces{};
    std::string trouble{};

    ~Hidden() {
        if (document != nullptr) HPDF_Free(document);
    }
    Hidden() = default;
    Hidden(const Hidden&) = delete;
    Hidden& operator=(const Hidden&) = delete;

    void fail(std::string what) {
        if (trouble.empty()) trouble = std::move(what);
    }
    bool canDraw() const { return trouble.empty() && page != nullptr; }

    /// Called by libharu, through C: it must not throw, and keeps numbers only.
    static void onError(HPDF_STATUS code, HPDF_STATUS detail, void* self) noexcept {
        auto* hidden = static_cast<Hidden*>(self);
        if (hidden->firstCode != 0) return;
        hidden->firstCode = code;
        hidden->firstDetail = detail;
    }
    HPDF_STATUS firstCode{0};
    HPDF_STATUS firstDetail{0};

    /// Turns what libharu reported into words, after each of its calls that may fail.
    void look() {
        if (firstCode == 0) return;
        char text[64];
        std::snprintf(text, sizeof text, "the PDF library reports error 0x%04lX (%lu)",
                      static_cast<unsigned long>(firstCode),
                      static_cast<unsigned long>(firstDetail));
        fail(text);
    }

    LoadedFace* face(Face which) {
        auto& slot = faces[static_cast<std::size_t>(which)];
        if (slot) return &*slot;
        const std::string path = fontPath(which);
        auto bytes = wholeFile(path);
        if (!bytes) {
            fail("font file " + path + " is missing; the package fonts-dejavu-core provides it");
            return nullptr;
        }
        const char* name = HPDF_LoadTTFontFromFile(document, path.c_str(), HPDF_TRUE);
        HPDF_Font font = name != nullptr ? HPDF_GetFont(document, name, "UTF-8") : nullptr;
        look();
        if (font == nullptr) {
            fail("font file " + path + " cannot be read as a font");
            return nullptr;
        }
        slot.emplace(LoadedFace{font, TrueType{std::move(*bytes)}});
        return &*slot;
    }

    Point place(Point at) const { return {at.x, sheet.height - at.y}; }

    void colour(domain::Colour role, bool stroke) {
        const domain::Rgb rgb = domain::rgbOf(role, domain::Light::Light);
        const auto part = [](std::uint8_t value) { return static_cast<HPDF_REAL>(value) / 255.0F; };
        if (stroke)
            HPDF_Page_SetRGBStroke(page, part(rgb.red), part(rgb.green), part(rgb.blue));
        else
            HPDF_Page_SetRGBFill(page, part(rgb.red), part(rgb.green), part(rgb.blue));
    }

    void trace(const std::vector<Point>& line) {
        for (std::size_t index = 0; index < line.size(); ++index) {
            const Point at = place(line[index]);
            if (index == 0)
                HPDF_Page_MoveTo(page, inPoints(at.x), inPoints(at.y));
            else
                HPDF_Page_LineTo(page, inPoints(at.x), inPoints(at.y));
        }
    }

    /// libharu takes whole points only.
    void dashes(const std::vector<double>& mm) {
        std::array<HPDF_UINT16, 8> pattern{};
        const auto count = std::min(mm.size(), pattern.size());
        for (std::size_t index = 0; index < count; ++index)
            pattern[index] =
                static_cast<HPDF_UINT16>(std::max(1.0, std::round(mm[index] / kMmPerPoint)));
        HPDF_Page_SetDash(page, count > 0 ? pattern.data() : nullptr, static_cast<HPDF_UINT>(count),
                          0);
    }
};

PdfDocument::PdfDocument(PageSize size, std::string_view title, domain::Instant printedAt)
    : hidden_{std::make_unique<Hidden>()} {
    hidden_->sheet = sheetOf(size);
    hidden_->document = HPDF_New(&Hidden::onError, hidden_.get());
    if (hidden_->document == nullptr) {
        hidden_->fail("no memory for a PDF document");
        return;
    }
    HPDF_UseUTFEncodings(hidden_->document);
    HPDF_SetCurrentEncoder(hidden_->document, "UTF-8");
    HPDF_SetCompressionMode(hidden_->document, HPDF_COMP_ALL);
    HPDF_SetInfoAttr(hidden_->document, HPDF_INFO_TITLE, printable(title).c_str());
    HPDF_SetInfoAttr(hidden_->document, HPDF_INFO_CREATOR, "Framewright");
    HPDF_SetInfoDateAttr(hidden_->document, HPDF_INFO_CREATION_DATE, pdfDate(printedAt));
    hidden_->look();
}

PdfDocument::~PdfDocument() = default;

void PdfDocument::addPage() {
    if (!hidden_->trouble.empty()) return;
    hidden_->page = HPDF_AddPage(hidden_->document);
    if (hidden_->page != nullptr) {
        HPDF_Page_SetWidth(hidden_->page, inPoints(hidden_->sheet.width));
        HPDF_Page_SetHeight(hidden_->page, inPoints(hidden_->sheet.height));
        hidden_->pages.push_back(hidden_->page);
    }
    hidden_->look();
}

int PdfDocument::pageCount() const noexcept { return static_cast<int>(hidden_->pages.size()); }

void PdfDocument::turnTo(int page) {
    if (page >= 0 && page < pageCount())
        hidden_->page = hidden_->pages[static_cast<std::size_t>(page)];
}

Sheet PdfDocument::sheet() const noexcept { return hidden_->sheet; }

double PdfDocument::widthOf(std::string_view utf8, const Type& type) {
    const auto* face = hidden_->face(type.face);
    if (face == nullptr) return 0;
    double thousandths = 0;
    for (const char32_t code : decoded(utf8))
        thousandths +=
            HPDF_Font_GetUnicodeWidth(face->font, static_cast<HPDF_UNICODE>(code & 0xFFFF));
    return thousandths / 1000 * type.size * kMmPerPoint;
}

std::string PdfDocument::shown(std::string_view utf8, Face face) {
    const auto* loaded = hidden_->face(face);
    if (loaded == nullptr) return std::string{utf8};
    const auto definition = static_cast<HPDF_FontAttr>(loaded->font->attr)->fontdef;
    std::u32string shown;
    for (const char32_t code : decoded(utf8)) {
        const bool known = code <= 0xFFFF && HPDF_TTFontDef_GetGlyphid(
                                                 definition, static_cast<HPDF_UINT16>(code)) != 0;
        shown += known ? std::u32string(1, code) : spelt(code);
    }
    return encoded(shown);
}

void PdfDocument::text(Point at, std::string_view utf8, const Type& type) {
    if (!std::isfinite(at.x) || !std::isfinite(at.y) || !std::isfinite(type.size))
        return hidden_->fail("a text stands at a place that is not a number");
    const auto* face = hidden_->face(type.face);
    if (!hidden_->canDraw() || face == nullptr || utf8.empty()) return;
    const std::string text = shown(utf8, type.face);
    const Point from = hidden_->place(at);
    hidden_->colour(type.colour, false);
    HPDF_Page_BeginText(hidden_->page);
    HPDF_Page_SetFontAndSize(hidden_->page, face->font, static_cast<HPDF_REAL>(type.size));
    HPDF_Page_TextOut(hidden_->page, inPoints(from.x), inPoints(from.y), text.c_str());
    HPDF_Page_EndText(hidden_->page);
    hidden_->look();
}

void PdfDocument::textRight(Point at, std::string_view utf8, const Type& type) {
    text({at.x - widthOf(shown(utf8, type.face), type), at.y}, utf8, type);
}

void PdfDocument::line(const std::vector<Point>& points, bool closed, const LineLook& look) {
    if (!isFinite(points) || !std::isfinite(look.width))
        return hidden_->fail("a line goes to a place that is not a number");
    if (!hidden_->canDraw() || points.size() < 2) return;
    hidden_->colour(look.colour, true);
    HPDF_Page_SetLineWidth(hidden_->page, inPoints(look.width));
    HPDF_Page_SetLineJoin(hidden_->page, HPDF_ROUND_JOIN);
    hidden_->dashes(look.dashes);
    hidden_->trace(points);
    if (closed)
        HPDF_Page_ClosePathStroke(hidden_->page);
    else
        HPDF_Page_Stroke(hidden_->page);
    hidden_->look();
}

void PdfDocument::area(const std::vector<Point>& outline, domain::Colour colour) {
    if (!isFinite(outline)) return hidden_->fail("an area reaches to a place that is not a number");
    if (!hidden_->canDraw() || outline.size() < 3) return;
    hidden_->colour(colour, false);
    hidden_->trace(outline);
    HPDF_Page_ClosePath(hidden_->page);
    HPDF_Page_Fill(hidden_->page);
    hidden_->look();
}

void PdfDocument::box(const domain::Box& box, const LineLook& look) {
    line({{box.left, box.top},
          {box.right, box.top},
          {box.right, box.bottom},
          {box.left, box.bottom}},
         true, look);
}

void PdfDocument::areas(const std::vector<domain::Box>& boxes, domain::Colour colour) {
    for (const domain::Box& box : boxes)
        if (!isFinite({{box.left, box.top}, {box.right, box.bottom}}))
            return hidden_->fail("an area reaches to a place that is not a number");
    if (!hidden_->canDraw() || boxes.empty()) return;
    hidden_->colour(colour, false);
    for (const domain::Box& box : boxes) {
        const Point corner = hidden_->place({box.left, box.bottom});
        HPDF_Page_Rectangle(hidden_->page, inPoints(corner.x), inPoints(corner.y),
                            inPoints(box.right - box.left), inPoints(box.bottom - box.top));
    }
    HPDF_Page_Fill(hidden_->page);
    hidden_->look();
}

void PdfDocument::refuse(std::string why) { hidden_->fail(std::move(why)); }

domain::Result<std::string> PdfDocument::bytes() {
    const auto unavailable = [&] {
        return domain::Error{domain::ErrorCode::Unavailable,
                             "the paper cannot be drawn: " + hidden_->trouble};
    };
    if (!hidden_->trouble.empty()) return unavailable();
    for (auto& face : hidden_->faces)
        if (face) embedWholeGlyphs(face->font, face->file);
    HPDF_SaveToStream(hidden_->document);
    hidden_->look();
    if (!hidden_->trouble.empty()) return unavailable();
    std::string bytes(HPDF_GetStreamSize(hidden_->document), '\0');
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ResetStream(hidden_->document);
    HPDF_ReadFromStream(hidden_->document, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    hidden_->look();
    if (!hidden_->trouble.empty()) return unavailable();
    bytes.resize(size);
    return bytes;
}

}  // namespace reports
