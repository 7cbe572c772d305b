# A compiler cache, where there is one: the same sources are built under several presets, and again in another clone,
# for which paths are taken as seen from the build folder.
find_program(WP_CCACHE ccache)
if(WP_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env "CCACHE_BASEDIR=${PROJECT_SOURCE_DIR}" CCACHE_NOHASHDIR=1)
  if(EMSCRIPTEN)
    # em++ is a script around clang, which the cache cannot tell by its name.
    list(APPEND CMAKE_CXX_COMPILER_LAUNCHER CCACHE_COMPILERTYPE=clang)
  endif()
  list(APPEND CMAKE_CXX_COMPILER_LAUNCHER "${WP_CCACHE}")
endif()
