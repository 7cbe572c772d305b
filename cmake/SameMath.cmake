# exp, log, pow and their kin end in other digits in each C library, and in glibc on each processor; over thousands of
# simulated runs such a digit grows to another margin. The WebAssembly module has musl's functions. The native programs
# link the same, from Debian's musl-dev, so that a plan is the same bytes at a desk and in a browser.
add_library(wp_same_math INTERFACE)
if(NOT EMSCRIPTEN)
  string(REPLACE "-gnu" "-musl" musl "${CMAKE_LIBRARY_ARCHITECTURE}")
  find_file(WP_MUSL libc.a PATHS "/usr/lib/${musl}" NO_DEFAULT_PATH REQUIRED)
  set(functions exp exp2 expm1 log log2 log10 log1p pow sin cos tan asin acos atan atan2 sinh cosh tanh cbrt hypot erf
                cabs cexp)
  set(tables exp_data log_data log2_data pow_data __sin __cos __tan __expo2 __rem_pio2 __rem_pio2_large
             __math_divzero __math_invalid __math_oflow __math_uflow __math_xflow __cexp)
  list(TRANSFORM functions APPEND .lo OUTPUT_VARIABLE members)
  list(TRANSFORM tables APPEND .lo OUTPUT_VARIABLE others)
  list(APPEND members ${others})
  set(folder "${PROJECT_BINARY_DIR}/same_math")
  file(MAKE_DIRECTORY "${folder}")
  execute_process(COMMAND "${CMAKE_AR}" x "${WP_MUSL}" ${members} WORKING_DIRECTORY "${folder}"
                  COMMAND_ERROR_IS_FATAL ANY)
  execute_process(COMMAND "${CMAKE_AR}" rcs libsame_math.a ${members} WORKING_DIRECTORY "${folder}"
                  COMMAND_ERROR_IS_FATAL ANY)
  target_link_libraries(wp_same_math INTERFACE "${folder}/libsame_math.a")
endif()
