// How many sequences are tried, and from which seed, unless RC_PARAMS says otherwise: the same in
// every run, so that what is hit once is hit always.
#include <gtest/gtest.h>

#include <cstdlib>

int main(int count, char** arguments) {
    testing::InitGoogleTest(&count, arguments);
    constexpr int kKeepWhatIsSet = 0;
    setenv("RC_PARAMS", "max_success=10000 max_size=100 seed=20261125", kKeepWhatIsSet);
    return RUN_ALL_TESTS();
}
