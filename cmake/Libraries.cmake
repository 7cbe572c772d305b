# The libraries that the core uses: {fmt}, compiled once, and others of headers alone. A native build finds them where
# the system keeps them; a WebAssembly build sees a folder of links to just these, since the system's own include folder
# would shadow the compiler's.
add_library(wp_library_headers INTERFACE)
target_link_libraries(wp_library_headers INTERFACE wp_same_math)
target_compile_definitions(wp_library_headers INTERFACE BOOST_MATH_PROMOTE_DOUBLE_POLICY=false
                           # Sums in lanes round otherwise than sums in line, and not every target has the same lanes.
                           EIGEN_DONT_VECTORIZE)
if(EMSCRIPTEN)
  set(inc "${PROJECT_BINARY_DIR}/inc")
  file(MAKE_DIRECTORY "${inc}/eigen3")
  foreach(name boost toml++ nlohmann fmt tl CLI fast_float)
    file(CREATE_LINK "/usr/include/${name}" "${inc}/${name}" SYMBOLIC)
  endforeach()
  foreach(name Eigen unsupported)
    file(CREATE_LINK "/usr/include/eigen3/${name}" "${inc}/eigen3/${name}" SYMBOLIC)
  endforeach()
  target_include_directories(wp_library_headers SYSTEM INTERFACE "${inc}" "${inc}/eigen3")
  target_compile_options(wp_library_headers INTERFACE -fwasm-exceptions -msimd128)
  target_link_options(wp_library_headers INTERFACE -fwasm-exceptions)
else()
  find_package(Threads REQUIRED)
  target_include_directories(wp_library_headers SYSTEM INTERFACE /usr/include/eigen3)
  target_link_libraries(wp_library_headers INTERFACE Threads::Threads)
endif()

add_library(wp_fmt STATIC "${CMAKE_CURRENT_LIST_DIR}/fmt_once.cc")
target_link_libraries(wp_fmt PRIVATE wp_library_headers)
set_target_properties(wp_fmt PROPERTIES POSITION_INDEPENDENT_CODE ON)  # the bench links it into a shared object
add_library(wp_libraries INTERFACE)
target_link_libraries(wp_libraries INTERFACE wp_library_headers wp_fmt)

# What only native code uses: the book is a file of SQLite, its pass phrase and its chain of hashes are libsodium's.
if(NOT EMSCRIPTEN)
  find_package(SQLite3 REQUIRED)
  find_path(WP_SODIUM_INCLUDE sodium.h REQUIRED)
  find_library(WP_SODIUM sodium REQUIRED)
  add_library(wp_book_libraries INTERFACE)
  target_include_directories(wp_book_libraries SYSTEM INTERFACE "${WP_SODIUM_INCLUDE}")
  target_link_libraries(wp_book_libraries INTERFACE SQLite::SQLite3 "${WP_SODIUM}")
endif()
