# The shapes that rooms, tests and their programs share. Each finds its files by itself: a new file needs no line here.

# wp_room(NAME [USES ROOM...]): one folder of src is one static library. Its headers are checked to compile each alone
# by the target all_verify_interface_header_sets.
function(wp_room name)
  cmake_parse_arguments(room "" "" "USES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/src/${name}/*.cc")
  file(GLOB headers CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/src/${name}/*.h")
  if(sources)
    add_library(wp_${name} STATIC ${sources})
    set(scope PUBLIC)
    target_link_libraries(wp_${name} PRIVATE wp_flags)
  else()
    add_library(wp_${name} INTERFACE)
    set(scope INTERFACE)
  endif()
  if(headers)
    target_sources(wp_${name} ${scope} FILE_SET HEADERS BASE_DIRS "${PROJECT_SOURCE_DIR}/src" FILES ${headers})
    set_target_properties(wp_${name} PROPERTIES VERIFY_INTERFACE_HEADER_SETS ON)
  endif()
  target_include_directories(wp_${name} ${scope} "${PROJECT_SOURCE_DIR}/src")
  target_link_libraries(wp_${name} ${scope} wp_libraries)
  foreach(used ${room_USES})
    target_link_libraries(wp_${name} ${scope} wp_${used})
  endforeach()
  set_property(GLOBAL APPEND PROPERTY WP_ROOMS ${name})
endfunction()

# wp_native_room(NAME [USES ROOM...]): a room that no WebAssembly module has, so that the door does not have it either.
# Its tests and the native programs that use it name it.
function(wp_native_room name)
  if(NOT EMSCRIPTEN)
    get_property(rooms GLOBAL PROPERTY WP_ROOMS)
    wp_room(${name} ${ARGN})
    set_property(GLOBAL PROPERTY WP_ROOMS ${rooms})
  endif()
endfunction()

# wp_test(NAME FOLDER FOLDER [USES TARGET...]): tests/FOLDER/*_test.cc as one program; nothing where there are none.
function(wp_test name)
  cmake_parse_arguments(test "" "FOLDER" "USES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${PROJECT_SOURCE_DIR}/tests/${test_FOLDER}/*_test.cc")
  if(sources)
    wp_test_program(${name} SOURCES ${sources} USES ${test_USES})
  endif()
endfunction()

# wp_test_program(NAME SOURCES FILE... [USES TARGET...]): a GoogleTest program, one CTest test for each of its tests,
# labelled with the program's name.
function(wp_test_program name)
  cmake_parse_arguments(test "" "" "SOURCES;USES" ${ARGN})
  add_executable(${name} ${test_SOURCES})
  target_include_directories(${name} PRIVATE "${PROJECT_SOURCE_DIR}/tests")
  target_link_libraries(${name} PRIVATE ${test_USES} wp_test_folders wp_flags wp_libraries GTest::gtest
                                        GTest::gtest_main)
  gtest_discover_tests(${name} DISCOVERY_MODE PRE_TEST DISCOVERY_TIMEOUT 60 PROPERTIES TIMEOUT 300 LABELS ${name})
endfunction()
