/// Runs the tests of the desktop in one application without a display.
#include <gtest/gtest.h>

#include <QApplication>

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    testing::InitGoogleTest(&argc, argv);
    const QApplication program{argc, argv};
    return RUN_ALL_TESTS();
}
