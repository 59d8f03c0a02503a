#!/usr/bin/python3
"""Does tools/check_layers.py find each violation it promises to find, and let a clean tree pass?

Each test writes a small tree of its own into a temporary folder: the clean tree, with one thing changed.
"""
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

TOOLS = Path(__file__).resolve().parents[2] / "tools"
sys.path.insert(0, str(TOOLS))
import check_layers  # noqa: E402
from cpp_text import Function, code_only, functions  # noqa: E402

CLEAN = {
    "src/electrical/electrical.h": '// The door.\n#pragma once\n#include "electrical/quantity.h"\n',
    "src/electrical/quantity.h": "// Quantities.\n#pragma once\ninline double in_volts(double millivolts) { return millivolts / 1e3; }\n",
    "src/trade/trade.h": '// The door.\n#pragma once\n#include "electrical/electrical.h"\n#include "trade/path.h"\n',
    "src/trade/path.h": "// Paths.\n#pragma once\n#include <string>\n",
    "src/trade/path.cpp": '// Reading of paths.\n#include "trade/path.h"\n\n#include <nlohmann/json.hpp>\n',
    "src/evidence/evidence.h": '// The door.\n#pragma once\n#include "trade/trade.h"\n',
    "src/sqlite/sqlite.h": "// The door.\n#pragma once\nstruct sqlite3;\n",
    "src/sqlite/database.cpp": '// The file.\n#include "sqlite/sqlite.h"\n\n#include <sqlite3.h>\n',
    "src/catalog/catalog.h": '// The door.\n#pragma once\n#include "evidence/evidence.h"\n#include "trade/trade.h"\n',
    "src/catalog/notes.cpp": '// Notes.\n#include "catalog/catalog.h"\n#include "embedded.h"\n#include "sqlite/sqlite.h"\n'
                             'const char* add = "INSERT OR IGNORE INTO note VALUES (?1)";\n',
    "src/files/files.h": '// The door.\n#pragma once\n#include "catalog/catalog.h"\n',
    "src/rules/rules.h": '// The door.\n#pragma once\n#include "catalog/catalog.h"\n#include "files/files.h"\n',
    "src/rules/sandbox.cpp": '// The sandbox.\n#include "rules/rules.h"\n#include "sqlite/sqlite.h"\n',
    "src/report/report.h": '// The door.\n#pragma once\n#include "rules/rules.h"\n#include "electrical/electrical.h"\n',
    "src/cli/main.cpp": '// The program.\n#include "report/report.h"\n#include "trade/trade.h"\n',
    "src/embedded.h": "// Texts.\n#pragma once\n",
    "schema/0001_first.sql": "CREATE TABLE note (id BLOB); -- no UPDATE note, no DELETE FROM note\n",
    "tests/trade/path_test.cpp": '#include "trade/trade.h"\n',
}


class CheckLayersTest(unittest.TestCase):
    def violations(self, changes: dict[str, str]) -> list[str]:
        """What is found in the clean tree with `changes` laid over it, as path:line: text."""
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder)
            for name, text in (CLEAN | changes).items():
                path = root / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            return [str(violation) for violation in check_layers.violations(root)]

    def assert_found(self, changes: dict[str, str], *expected: str) -> None:
        """Exactly one violation for each of `expected`, which are the beginnings of the lines in their order."""
        found = self.violations(changes)
        self.assertEqual([line[:len(start)] for line, start in zip(found, expected)], list(expected), found)
        self.assertEqual(len(found), len(expected), found)

    def assert_clean(self, changes: dict[str, str]) -> None:
        self.assertEqual(self.violations(changes), [])

    def test_a_clean_tree_passes(self):
        self.assert_clean({})

    def test_an_empty_tree_does_not_pass(self):
        with tempfile.TemporaryDirectory() as folder:
            self.assertEqual(len(check_layers.violations(Path(folder))), 1)

    def test_an_arrow_upwards_is_found(self):
        self.assert_found({"src/trade/path.h": '// Paths.\n#pragma once\n\n#include "evidence/evidence.h"\n'},
                          "src/trade/path.h:4: include cycle: evidence/evidence.h -> trade/trade.h -> trade/path.h -> ",
                          "src/trade/path.h:4: trade/ may not include evidence/")

    def test_every_pair_of_folders_without_an_arrow_is_found(self):
        order = "electrical trade evidence catalog files rules report cli".split()
        for i, low in enumerate(order):
            for high in order[i + 1:]:
                with self.subTest(low=low, high=high):
                    found = self.violations({f"src/{low}/new.cpp": f'// New.\n#include "{high}/{high}.h"\n'})
                    self.assertEqual(found, [f"src/{low}/new.cpp:2: {low}/ may not include {high}/"])

    def test_sisters_do_not_include_each_other(self):
        for a, b in (("page", "cli"), ("shelf", "exchange"), ("files", "rules"), ("shelf", "rules")):
            with self.subTest(a=a, b=b):
                self.assert_found({f"src/{a}/new.cpp": f'// New.\n#include "{b}/{b}.h"\n'},
                                  f"src/{a}/new.cpp:2: {a}/ may not include {b}/")

    def test_the_sqlite_wrapper_is_reached_by_catalog_and_rules_alone(self):
        for folder in ("electrical", "trade", "evidence", "files", "shelf", "exchange", "report", "cli", "page"):
            with self.subTest(folder=folder):
                self.assert_found({f"src/{folder}/new.cpp": '// New.\n#include "sqlite/sqlite.h"\n'},
                                  f"src/{folder}/new.cpp:2: {folder}/ may not include sqlite/")

    def test_the_sqlite_wrapper_knows_nothing_of_cars(self):
        self.assert_found({"src/sqlite/new.cpp": '// New.\n#include "trade/trade.h"\n'},
                          "src/sqlite/new.cpp:2: sqlite/ may not include trade/")

    def test_going_past_a_door_is_found(self):
        for bracket in ('"trade/path.h"', "<trade/path.h>"):
            self.assert_found({"src/cli/main.cpp": f"// The program.\n#include {bracket}\n"},
                              "src/cli/main.cpp:2: cli/ must go through trade/trade.h, not trade/path.h")

    def test_a_folder_without_a_place_is_found(self):
        self.assert_found({"src/radio/radio.h": "// The door.\n#pragma once\n"},
                          "src/radio/radio.h:1: src/radio/ has no place among the layers")

    def test_the_core_does_not_include_the_embedded_texts(self):
        self.assert_found({"src/trade/path.cpp": '// Paths.\n#include "embedded.h"\n'},
                          "src/trade/path.cpp:2: trade/ lies too low to include embedded.h")

    def test_an_include_not_written_from_src_is_found(self):
        self.assert_found({"src/trade/path.cpp": '// Paths.\n#include "path.h"\n'},
                          'src/trade/path.cpp:2: "path.h" is not written from src/')

    def test_an_include_in_a_comment_is_none(self):
        self.assert_clean({"src/trade/path.cpp": '// Paths.\n/*\n#include "cli/cli.h"\n*/\n// #include <sqlite3.h>\n'})

    def test_the_sqlite_header_outside_the_wrapper_is_found(self):
        for path in ("src/catalog/notes.cpp", "src/sqlite/sqlite.h"):
            self.assert_found({path: "// Text.\n#include <sqlite3.h>\n"}, f"{path}:2: only src/sqlite/*.cpp")

    def test_a_heavy_header_in_a_second_file_is_found(self):
        for first, second in (("CLI/CLI.hpp", "CLI/CLI.hpp"), ("toml++/toml.h", "toml++/toml.h"),
                              ("boost/beast.hpp", "boost/beast/http.hpp"),
                              ("boost/math/distributions.hpp", "boost/math/tools/roots.hpp")):
            with self.subTest(header=second):
                self.assert_clean({"src/cli/a.cpp": f"// A.\n#include <{first}>\n"})
                self.assert_found({"src/cli/a.cpp": f"// A.\n#include <{first}>\n",
                                   "src/cli/b.cpp": f"// B.\n#include <{second}>\n"}, "src/cli/b.cpp:2: ")
        self.assert_found({"src/cli/a.cpp": "// A.\n#include <nlohmann/json.hpp>\n"},
                          "src/trade/path.cpp:4: nlohmann/json.hpp is heavy and already included in src/cli/a.cpp")
        self.assert_clean({"src/cli/a.cpp": "// A.\n#include <nlohmann/json_fwd.hpp>\n"})

    def test_an_include_cycle_is_found(self):
        self.assert_found({"src/trade/a.h": '// A.\n#pragma once\n#include "trade/b.h"\n',
                           "src/trade/b.h": '// B.\n#pragma once\n#include "trade/c.h"\n',
                           "src/trade/c.h": '// C.\n#pragma once\n#include "trade/a.h"\n'},
                          "src/trade/c.h:3: include cycle: trade/a.h -> trade/b.h -> trade/c.h -> trade/a.h")

    def test_a_file_over_350_lines_is_found(self):
        for path in ("src/cli/long.cpp", "tests/cli/long_test.cpp"):
            self.assert_clean({path: "// Long.\n" * 350})
            self.assert_found({path: "// Long.\n" * 351}, f"{path}:351: 351 lines, 350 at most")

    def test_a_median_of_120_lines_is_found_and_119_pass(self):
        sources = [name for name in CLEAN if name.startswith("src/")]
        self.assert_clean({name: CLEAN[name] + "\n" * (119 - CLEAN[name].count("\n")) for name in sources})
        self.assert_found({name: CLEAN[name] + "\n" * (120 - CLEAN[name].count("\n")) for name in sources},
                          "src:1: the median file has 120 lines")

    def test_vague_file_names_are_found(self):
        for path in ("src/trade/trade_utils.cpp", "src/cli/common.h", "src/trade/path_manager.h", "src/cli/misc.cpp",
                     "src/trade/util/path.cpp"):
            with self.subTest(path=path):
                found = self.violations({path: "// Text.\n"})
                self.assertEqual(len(found), 1, found)
                self.assertIn("a name that says nothing", found[0])
        self.assert_clean({"src/electrical/common_return.h": "// A speaker with a shared return.\n"})

    def test_a_file_that_does_not_open_with_its_reason_is_found(self):
        for text in ("#pragma once\n// Late.\n", "\n// Late.\n", ""):
            self.assert_found({"src/trade/new.h": text}, "src/trade/new.h:1: does not open with a comment")

    def test_words_the_core_may_not_name_are_found(self):
        for word in ("sqlite3*", "std::cout", "std::cerr", "getenv", "std::chrono::system_clock", "std::stod", "std::stoi",
                     "std::locale", "fopen", "std::ifstream"):
            for folder in ("electrical", "trade", "evidence", "shelf"):
                with self.subTest(word=word, folder=folder):
                    self.assert_found({f"src/{folder}/new.cpp": f"// New.\n\nauto x = {word}(1);\n"},
                                      f"src/{folder}/new.cpp:3: ")
        self.assert_clean({"src/cli/new.cpp": '// New.\nauto x = getenv("HOME");\n',
                           "src/trade/new.cpp": '// No std::cout here.\nauto x = "fopen"; // getenv\n'})

    def test_mutable_statics_of_the_core_are_found(self):
        for line in ("static int calls = 0;", "    static std::vector<int> seen;", "thread_local Cache cache{};"):
            self.assert_found({"src/evidence/new.cpp": f"// New.\n{line}\n"}, "src/evidence/new.cpp:2: mutable static")
        self.assert_clean({"src/evidence/new.cpp": "// New.\nstatic constexpr int most = 5;\nstatic Grade grade_of(int points);\n"
                                                   "static const Table table = {1};\nstatic_assert(1 < 2);\n"})

    def test_a_bare_number_in_a_core_header_is_found(self):
        for folder in ("electrical", "trade"):
            self.assert_found({f"src/{folder}/new.h": "// New.\n\ndouble volts();\n"}, f"src/{folder}/new.h:3: double")
        self.assert_clean({"src/trade/new.h": "// No double here.\n", "src/trade/new.cpp": "// New.\nstatic const double x = 1;\n",
                           "src/evidence/new.h": "// New.\ndouble odds();\n"})

    def test_changing_or_deleting_a_note_is_found(self):
        statements = ("UPDATE note SET", "update  note set", "DELETE FROM note", "delete from main.note", "UPDATE [note] SET",
                      "INSERT OR REPLACE INTO note VALUES")
        for statement in statements:
            with self.subTest(statement=statement):
                self.assert_found({"src/catalog/new.cpp": f'// New.\n\nauto sql = "{statement}";\n'}, "src/catalog/new.cpp:3: ")
                self.assert_found({"schema/0002_new.sql": f"-- New.\n{statement};\n"}, "schema/0002_new.sql:2: ")
        self.assert_found({"src/catalog/new.cpp": '// New.\nauto sql = "DELETE FROM "\n    "note WHERE id = ?1";\n'},
                          "src/catalog/new.cpp:2: ")
        self.assert_found({"src/catalog/new.cpp": '// New.\nauto sql = "UPDATE \\"note\\" SET x = 1";\n'},
                          "src/catalog/new.cpp:2: ")
        self.assert_found({"schema/0002_new.sql": 'UPDATE "note" SET x = 1;\n'}, "schema/0002_new.sql:1: ")
        self.assert_clean({"src/catalog/new.cpp": '// New.\nauto sql = "UPDATE note_state SET x = 1; DELETE FROM noted";\n',
                           "schema/0002_new.sql": "CREATE TRIGGER keep BEFORE UPDATE ON note BEGIN SELECT 1; END;\n"})

    def test_a_default_in_a_switch_is_found_unless_it_is_not_our_enum(self):
        self.assert_found({"src/cli/new.cpp": "// New.\nswitch (x) {\n    default:\n        return;\n}\n"},
                          "src/cli/new.cpp:3: default:")
        self.assert_clean({"src/cli/new.cpp": "// New.\nswitch (x) {\n    default:  // not our enum\n        return;\n}\n"
                                              'struct A { A() = default; };\nauto text = "default: none";\n'})

    def test_the_script_fails_and_prints_places_or_says_that_all_is_well(self):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "src/cli/main.cpp"
            path.parent.mkdir(parents=True)
            for text, code, first in (("// Main.\n", 0, "layers: 1 files of src in order\n"),
                                      ("int x;\n", 1, "src/cli/main.cpp:1: does not open")):
                path.write_text(text, encoding="utf-8")
                run = subprocess.run([TOOLS / "check_layers.py", folder], capture_output=True, text=True, check=False)
                self.assertEqual((run.returncode, run.stdout[:len(first)]), (code, first), run.stderr)


class CppTextTest(unittest.TestCase):
    def test_blanking_keeps_lines_and_columns(self):
        text = 'a(1\'000, \'"\'); // "x\nb = R"x(\n)" // no comment)x"; /* c\n */ d'
        code = code_only(text)
        self.assertEqual(len(code), len(text))
        self.assertEqual(code.count("\n"), text.count("\n"))
        self.assertEqual("".join(code.split()), "a(1'000,);b=;d")

    def test_the_lines_of_functions_are_counted(self):
        text = ("namespace n {\nstruct S {\n    int a() {\n        if (x) {\n        }\n        return 1;\n    }\n};\n"
                "template <typename T>\nvoid f(T t) { g(t); }\nint table[] = {1, 2};\n}\n")
        self.assertEqual(functions(text), [Function(3, 5), Function(10, 1)])


if __name__ == "__main__":
    unittest.main()
