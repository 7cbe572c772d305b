#include "site/pipe_sizes.h"

#include <gtest/gtest.h>

namespace wellproof {
namespace {

constexpr double inch_m = 0.0254;

double inside_in(std::string_view kind, std::string_view size) {
  auto const found = pipe_size(kind, size);
  return found ? found->inside_diameter_m / inch_m : 0;
}

TEST(pipe_sizes, agree_with_the_standards_dimensions) {
  // ASME B36.10 schedule 40, and a public plumbing model's table of PEX (ASTM F876), copper L (ASTM B88) and CPVC.
  struct Row {
    std::string_view kind;
    std::string_view size;
    double inside_in;
  };
  for (auto const& row :
       {Row{"sch40_pvc", "3/4 in", 0.824}, Row{"sch40_pvc", "1 in", 1.049}, Row{"sch40_pvc", "1-1/4 in", 1.380},
        Row{"sch40_pvc", "1-1/2 in", 1.610}, Row{"sch40_pvc", "2 in", 2.067}, Row{"galvanized_sch40", "3 in", 3.068},
        Row{"sidr_pe", "1-1/4 in", 1.380}, Row{"pex", "3/4 in", 0.671}, Row{"pex", "1 in", 0.862},
        Row{"pex", "1-1/4 in", 1.054}, Row{"pex", "1-1/2 in", 1.244}, Row{"pex", "2 in", 1.629},
        Row{"copper_l", "3/4 in", 0.785}, Row{"copper_l", "1 in", 1.025}, Row{"cpvc_sdr11", "1 in", 0.921}}) {
    EXPECT_NEAR(inside_in(row.kind, row.size), row.inside_in, 0.001) << row.kind << ' ' << row.size;
  }
}

TEST(pipe_sizes, by_ratio_are_the_outside_less_two_walls) {
  // Iron pipe sizes 1 to 2 in: inside = outside · (1 - 2/DR), as printed to three digits.
  double const dr9_in[] = {1.023, 1.291, 1.478, 1.847};
  double const dr11_in[] = {1.076, 1.358, 1.555, 1.943};
  std::string_view const sizes[] = {"1 in", "1-1/4 in", "1-1/2 in", "2 in"};
  for (int i = 0; i < 4; ++i) {
    EXPECT_NEAR(inside_in("dr9_pe", sizes[i]), dr9_in[i], 0.0006) << sizes[i];
    EXPECT_NEAR(inside_in("dr11_pe", sizes[i]), dr11_in[i], 0.0006) << sizes[i];
  }
}

TEST(pipe_sizes, carry_the_pressure_class_of_polyethylene) {
  // Trade tables: DR 9 250, DR 11 200 psi; SIDR 7 250, 9 200, 11.5 160 psi.
  auto const psi = [](std::string_view kind) { return pipe_size(kind, "1 in")->rating_pa / 6894.757; };
  EXPECT_NEAR(psi("dr9_pe"), 250, 0.5);
  EXPECT_NEAR(psi("dr11_pe"), 200, 0.5);
  EXPECT_NEAR(psi("sidr7_pe"), 250, 0.5);
  EXPECT_NEAR(psi("sidr9_pe"), 200, 0.5);
  EXPECT_NEAR(psi("sidr11_5_pe"), 160, 0.5);
}

TEST(pipe_sizes, are_read_however_they_are_written) {
  for (auto const* size : {"1-1/4 in", "1 1/4 in", "1-1/4\"", "1.25 in", "1-1/4", "1.250", "1 1/4 inch", "1-1/4in"}) {
    EXPECT_NEAR(inside_in("sch40_pvc", size), 1.380, 1e-9) << size;
  }
  EXPECT_NEAR(inside_in("sch40_pvc", "3/4 in"), 0.824, 1e-9);
  EXPECT_NEAR(inside_in("sch40_pvc", ".75"), 0.824, 1e-9);
}

TEST(pipe_sizes, that_are_none_give_nothing) {
  for (auto const* size :
       {"", "in", "1-1/8 in", "1/0 in", "/4", "32 mm", "-", "1-1/4-1/4", "999999999999999999999", "1.2.5"}) {
    EXPECT_FALSE(pipe_size("sch40_pvc", size)) << size;
  }
  EXPECT_FALSE(pipe_size("bamboo", "1 in"));
  EXPECT_FALSE(pipe_size("pex", "3 in"));
  EXPECT_EQ(nearest_pipe_size("pex", "3 in"), "2 in");
}

TEST(pipe_sizes, grow_with_the_nominal_size_in_every_kind) {
  for (auto const& kind : pipe_kinds()) {
    auto const sizes = pipe_sizes(kind.key);
    ASSERT_GE(sizes.size(), 6U) << kind.key;
    for (std::size_t i = 1; i < sizes.size(); ++i) {
      EXPECT_GT(sizes[i].inside_diameter_m, sizes[i - 1].inside_diameter_m) << kind.key;
    }
  }
}

}  // namespace
}  // namespace wellproof
