#!/usr/bin/env python3
"""The house checks catch what is planted for them, and only that."""
import pathlib
import tempfile
import unittest

import contracts
import doc_examples
import rooms
import text
import unit_names

# Each line that ends in "// planted" must be reported; no other may be.
PLANTED = """#include <algorithm>
#include <cmath>
namespace wellproof {
double friction_head_m(double flow_m3_s, double length_m);
struct Point { double flow_m3_s = 0; double head_m = 0; };
struct Level {
  explicit Level(double depth_m) : depth_m_(depth_m) {}
  Level(double time_s, int) : depth_m_(time_s) {}  // planted
  double depth_m() const { return depth_m_; }
  double depth_m_;
};
double level_m(double flow_m3_s, double length_m, double time_s) {
  double fine = friction_head_m(flow_m3_s, length_m) + length_m;
  double swapped = friction_head_m(length_m, 1);  // planted
  double wait_s = length_m;  // planted
  double stay_s{time_s};
  if (time_s > length_m) {  // planted
    stay_s += flow_m3_s;  // planted
  }
  Point good{.flow_m3_s = flow_m3_s, .head_m = std::max(length_m, 0.0)};
  Point bad{.flow_m3_s = length_m,  // planted
            .head_m = 1};
  double product = flow_m3_s * time_s;
  double least = std::min(length_m, time_s);  // planted
  auto own = [&](double pressure_pa) { return pressure_pa + 1; };
  double lambda = own(time_s);  // planted
  Level level(length_m);
  double water_c = 10, rise_k = 2;
  double warmed_c = water_c + rise_k;
  double risen_k = warmed_c - water_c;
  bool hot = risen_k > water_c;  // planted
  good.head_m = level.depth_m() - length_m;
  good.head_m = good.flow_m3_s;  // planted
  good.head_m = fine + swapped + wait_s + product + least + lambda + bad.head_m + hot;  // planted
  return -time_s;  // planted
}
template <class T> double twice_m(T length_m) { return 2 * length_m; }
}  // namespace wellproof
"""


class UnitNames(unittest.TestCase):
    def test_every_planted_line_is_found_and_no_other(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "planted.cc"
            path.write_text(PLANTED)
            found = {line for _, line, _ in unit_names.findings_of(path)}
        wanted = {n for n, line in enumerate(PLANTED.splitlines(), 1) if line.endswith("// planted")}
        self.assertEqual(found, wanted)

    def test_a_file_that_does_not_compile_is_a_finding(self):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder) / "broken.cc"
            path.write_text("int f( {")
            self.assertTrue(unit_names.findings_of(path))

    def test_the_longest_unit_counts(self):
        self.assertEqual(unit_names.unit("flow_m3_s"), "m3_s")
        self.assertEqual(unit_names.unit("time_s_"), "s")
        self.assertIsNone(unit_names.unit("half_width_95"))


class Rooms(unittest.TestCase):
    ROWS = {"contract": [], "quantity": ["contract"], "site": ["quantity"], "regulator": ["quantity/dimension.h"]}

    def count(self, path, source):
        path = pathlib.Path(path)
        return len([*rooms.include_findings(path, source, self.ROWS), *rooms.word_findings(path, source)])

    def test_what_a_used_room_uses_is_allowed(self):
        self.assertEqual(self.count("src/site/a.h", '#include "contract/finding.h"\n#include "site/b.h"\n'), 0)

    def test_a_room_upwards_is_refused(self):
        self.assertEqual(self.count("src/quantity/a.h", '#include "site/site.h"\n'), 1)

    def test_one_header_of_a_room_is_not_the_room(self):
        self.assertEqual(self.count("src/regulator/a.h", '#include "quantity/dimension.h"\n'), 0)
        self.assertEqual(self.count("src/regulator/a.h", '#include "quantity/range.h"\n'), 1)

    def test_the_core_has_no_effects(self):
        self.assertEqual(self.count("src/site/a.cc", "#include <fstream>\n"), 1)
        self.assertEqual(self.count("src/site/a.cc", "std::uniform_real_distribution<> d;\n"), 1)
        self.assertEqual(self.count("src/site/a.cc", "// no std::cout here\n"), 0)

    def test_heavy_headers_stay_in_sources(self):
        self.assertEqual(self.count("src/site/a.h", "#include <toml++/toml.h>\n"), 1)
        self.assertEqual(self.count("src/site/a.cc", "#include <toml++/toml.h>\n"), 0)


class Text(unittest.TestCase):
    def count(self, line):
        return len(list(text.findings(pathlib.Path("src/site/a.cc"), line + "\n")))

    def test_machine_paths_and_open_ends_are_found(self):
        self.assertEqual(self.count("see /" + "home/someone/notes"), 1)
        self.assertEqual(self.count("// TO" + "DO later"), 1)
        self.assertEqual(self.count("int a; "), 1)

    def test_other_lines_are_not(self):
        self.assertEqual(self.count("// m/s, src/rooms/a.h, and /usr/include"), 0)


class Contracts(unittest.TestCase):
    def count(self, comment, after="double f(double flow_m3_s);"):
        return len(list(contracts.findings(pathlib.Path("src/site/a.h"), comment + after + "\n", {"churchill_1977"})))

    def test_known_keys_files_and_parameters_pass(self):
        good = "/// Law.\n/// @param flow_m3_s [m3/s]\n/// Source: churchill_1977\n/// Checked: tests/house/contracts.py\n"
        self.assertEqual(self.count(good), 0)

    def test_what_points_at_nothing_is_found(self):
        self.assertEqual(self.count("/// Source: nobody_1999, eq. 3\n"), 1)
        self.assertEqual(self.count("/// Checked: tests/no_such_test.cc\n"), 1)
        self.assertEqual(self.count("/// @param length_m [m]\n"), 1)


class DocExamples(unittest.TestCase):
    def made(self, line):
        with tempfile.TemporaryDirectory() as folder:
            (pathlib.Path(folder) / "law.h").write_text(line + "\n")
            out = pathlib.Path(folder) / "out.cc"
            return doc_examples.main(out, folder, ["law.h"]), out.read_text()

    def test_an_example_becomes_a_test(self):
        code, made = self.made("/// Example: f(1, 2) == 3e-4 within 1e-3")
        self.assertEqual(code, 0)
        self.assertIn("EXPECT_NEAR(f(1, 2), 3e-4, tolerance(3e-4, 1e-3));", made)
        self.assertIn('EXPECT_EQ((name(x)), ("a flow"));', self.made('/// Example: name(x) == "a flow"')[1])

    def test_an_example_of_another_form_is_an_error(self):
        self.assertEqual(self.made("/// Example: f(1) is about 3")[0], 1)


if __name__ == "__main__":
    unittest.main()
