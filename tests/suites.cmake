# Registers the GoogleTest suites of a program with CTest, one entry each, `domain.Kennedy` for the
# suite Kennedy of domain_tests. Not one entry for each case, as gtest_discover_tests() does: under
# the sanitizers, starting the process takes longer than most cases do.
#
# Included, it defines register_suites(); run by `cmake -P` after each link of the program, it asks
# the program for its suites and writes the entries.

if(NOT CMAKE_SCRIPT_MODE_FILE)
    set(SUITES_SCRIPT ${CMAKE_CURRENT_LIST_FILE})

    # register_suites(PROGRAM properties of each entry...)
    function(register_suites program)
        string(REGEX REPLACE "_tests$" "" prefix ${program})
        set(entries ${CMAKE_CURRENT_BINARY_DIR}/${program}_suites.cmake)
        add_custom_command(TARGET ${program} POST_BUILD
            BYPRODUCTS ${entries}
            COMMAND ${CMAKE_COMMAND}
                -D PROGRAM=$<TARGET_FILE:${program}> -D PREFIX=${prefix} -D ENTRIES=${entries}
                -D "PROPERTIES=${ARGN}" -P ${SUITES_SCRIPT}
            VERBATIM)
        set_property(TARGET ${program} APPEND PROPERTY LINK_DEPENDS ${SUITES_SCRIPT})
        # A program that is not built is an entry that fails.
        set(either ${CMAKE_CURRENT_BINARY_DIR}/${program}_if_built.cmake)
        file(WRITE ${either}
            "if(EXISTS [==[${entries}]==])\n"
            "    include([==[${entries}]==])\n"
            "else()\n"
            "    add_test(${prefix}_NOT_BUILT ${prefix}_NOT_BUILT)\n"
            "endif()\n")
        set_property(DIRECTORY APPEND PROPERTY TEST_INCLUDE_FILES ${either})
    endfunction()
    return()
endif()

execute_process(COMMAND ${CMAKE_COMMAND} -E env QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8
    ${PROGRAM} --gtest_list_tests
    OUTPUT_VARIABLE listed COMMAND_ERROR_IS_FATAL ANY)
# Types and parameters stand behind the names as comments.
string(REGEX REPLACE "#[^\n]*" "" listed "${listed}")
string(REGEX MATCHALL "[^\n]+" lines "${listed}")

set(suites "")
set(cases 0)
foreach(line IN LISTS lines)
    if(line MATCHES "^  [^ ]")
        list(APPEND suites ${suite})
        math(EXPR cases "${cases} + 1")
    elseif(line MATCHES "^([A-Za-z0-9_/]+)\\. *$")
        # The types of one typed suite, EnumCodes/0, EnumCodes/1 and so on, are one entry.
        string(REGEX REPLACE "/[0-9]+$" "/*" suite ${CMAKE_MATCH_1})
    endif()
endforeach()
list(REMOVE_DUPLICATES suites)
if(cases EQUAL 0)
    message(FATAL_ERROR "${PROGRAM} lists no test case")
endif()

set(properties "")
foreach(word IN LISTS PROPERTIES)
    string(APPEND properties " [==[${word}]==]")
endforeach()
set(text "# ${cases} cases\n")
foreach(suite IN LISTS suites)
    string(REPLACE "/*" "" name ${PREFIX}.${suite})
    string(APPEND text
        "add_test([==[${name}]==] [==[${PROGRAM}]==] [==[--gtest_filter=${suite}.*]==])\n"
        "set_tests_properties([==[${name}]==] PROPERTIES\n"
        "    ENVIRONMENT [==[QT_QPA_PLATFORM=offscreen;LC_ALL=C.UTF-8]==]\n"
        # A filter that fits nothing passes.
        "    FAIL_REGULAR_EXPRESSION [==[Running 0 tests]==]${properties})\n")
endforeach()
file(WRITE ${ENTRIES} "${text}")
