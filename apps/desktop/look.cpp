#include "apps/desktop/look.h"

#include <QLabel>
#include <QPalette>
#include <QProxyStyle>
#include <QStyleFactory>

namespace desktop {

using domain::Colour;

namespace {

/// Every widget comes by here before it is shown; a tool tip is a label of Qt's own.
class PlainLabels : public QProxyStyle {
public:
    PlainLabels() : QProxyStyle{QStyleFactory::create(QStringLiteral("Fusion"))} {}

    using QProxyStyle::polish;
    void polish(QWidget* widget) override {
        QProxyStyle::polish(widget);
        if (auto* label = qobject_cast<QLabel*>(widget)) label->setTextFormat(Qt::PlainText);
    }
};

}  // namespace

QColor Look::of(Colour role) const {
    const domain::Rgb rgb = rgbOf(role, light_);
    return {rgb.red, rgb.green, rgb.blue};
}

QPalette Look::palette() const {
    const QColor ground = of(Colour::Ground);
    const QColor sheet = of(Colour::Sheet);
    const QColor ink = of(Colour::Ink);
    const QColor quiet = of(Colour::Quiet);
    QPalette palette;
    palette.setColor(QPalette::Window, ground);
    palette.setColor(QPalette::Base, sheet);
    palette.setColor(QPalette::AlternateBase, ground);
    palette.setColor(QPalette::Button, sheet);
    palette.setColor(QPalette::ToolTipBase, sheet);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText,
                            QPalette::ToolTipText, QPalette::BrightText})
        palette.setColor(role, ink);
    palette.setColor(QPalette::PlaceholderText, quiet);
    palette.setColor(QPalette::Highlight, ink);
    palette.setColor(QPalette::HighlightedText, sheet);
    palette.setColor(QPalette::Mid, of(Colour::Line));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, quiet);
    return palette;
}

QString Look::styleSheet() const {
    // No text colour for what is typed into: the style would pale its placeholder below 4.5.
    QString sheet = QStringLiteral(R"(
        #sheet { background: %sheet; }
        #hairline { background: %line; }
        QLineEdit, QPlainTextEdit, QComboBox {
            background: %sheet; border: 1px solid %quiet; border-radius: 2px;
            padding: 4px 8px; selection-background-color: %ink; selection-color: %sheet;
        }
        QLineEdit:focus, QPlainTextEdit:focus, QComboBox:focus {
            border: 2px solid %ink; padding: 3px 7px;
        }
        QLineEdit:read-only { background: %ground; color: %quiet; border-color: %line; }
        QComboBox::drop-down { border: none; width: 24px; }
        QAbstractItemView {
            background: %sheet; color: %ink; border: none; outline: none;
            selection-background-color: %ground; selection-color: %ink;
        }
        QHeaderView, QHeaderView::section {
            background: %sheet; color: %quiet; border: none; font-size: 12px;
        }
        QHeaderView::section { border-bottom: 1px solid %line; padding: 4px 8px; }
        QMenu { background: %sheet; color: %ink; border: 1px solid %quiet; padding: 4px; }
        QMenu::item { padding: 8px 28px 8px 16px; }
        QMenu::item:selected { background: %ink; color: %sheet; }
        QMenu::item:checked { font-weight: bold; }
        QMenu::separator { height: 1px; background: %line; margin: 4px; }
        QScrollBar:vertical { background: %sheet; width: 12px; margin: 0; }
        QScrollBar:horizontal { background: %sheet; height: 12px; margin: 0; }
        QScrollBar::handle { background: %line; border-radius: 3px; min-height: 44px; margin: 3px; }
        QScrollBar::handle:hover { background: %quiet; }
        QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
        QScrollBar::add-page, QScrollBar::sub-page { background: none; }
        QToolTip { background: %sheet; color: %ink; border: 1px solid %quiet; padding: 4px; }
        QDialog#sheet { border: 2px solid %ink; }
        QRadioButton { spacing: 12px; padding: 0 8px; border: 2px solid %sheet; }
        QRadioButton:focus { border-color: %ink; }
        QRadioButton::indicator {
            width: 14px; height: 14px; border: 2px solid %ink; border-radius: 9px;
        }
        QRadioButton::indicator:checked { background: %ink; }
        QSplitter::handle { background: %line; margin: 2px 0; }
    )");
    for (const auto& [word, role] :
         {std::pair{"%sheet", Colour::Sheet}, std::pair{"%line", Colour::Line},
          std::pair{"%ink", Colour::Ink}, std::pair{"%quiet", Colour::Quiet},
          std::pair{"%ground", Colour::Ground}})
        sheet.replace(QLatin1String{word}, of(role).name());
    return sheet;
}

QFont face(int pixels, bool bold) {
    QFont font;
    font.setPixelSize(pixels);
    font.setBold(bold);
    return font;
}

void wearHouseStyle() {
    auto* style = new PlainLabels;
    style->setParent(qApp);
    QApplication::setStyle(style);
}

void wear(QApplication& program, const Look& look) {
    wearHouseStyle();
    QApplication::setPalette(look.palette());
    QApplication::setFont(face(kPlainText));
    program.setStyleSheet(look.styleSheet());
}

}  // namespace desktop
