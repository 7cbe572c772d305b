# One interface target that all of our own targets link: warnings, sanitizers, and the one floating-point rule
# (no contraction, so that a result does not depend on what the compiler fuses). GCC 12's -Wnull-dereference takes every
# indexed vector for a null pointer once it is inlined; clang-tidy's analyzer looks for the real ones. Its
# -Wuseless-cast is left out since a cast to size_t that is useless here is needed where size_t has 4 bytes.
add_library(wp_flags INTERFACE)
target_compile_options(
  wp_flags
  INTERFACE -Wall
            -Wextra
            -Wpedantic
            -Wshadow
            -Wconversion
            -Wsign-conversion
            -Wdouble-promotion
            -Wnon-virtual-dtor
            -Wold-style-cast
            -Woverloaded-virtual
            -Wcast-align
            -Wextra-semi
            -Wimplicit-fallthrough
            -Werror
            -ffp-contract=off
            "$<$<CXX_COMPILER_ID:Clang>:-Wnull-dereference>"
            # At -O3 GCC 12 takes "x" + string for an overlapping copy and an empty optional for one that is read.
            "$<$<AND:$<CXX_COMPILER_ID:GNU>,$<CONFIG:Release>>:-Wno-restrict;-Wno-maybe-uninitialized>"
            "$<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond;-Wduplicated-branches;-Wlogical-op>")
if(WP_SANITIZE)
  # The checks that a sanitizer adds make this one warn where nothing is wrong (GCC's manual says so).
  target_compile_options(wp_flags INTERFACE "$<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>")
  # Everything that is linked together is built with them, headers of libraries as well.
  add_compile_options(-fsanitize=${WP_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  add_link_options(-fsanitize=${WP_SANITIZE})
  if(WP_SANITIZE MATCHES "undefined")
    target_compile_options(wp_flags INTERFACE -fsanitize=float-divide-by-zero)
  endif()
endif()
