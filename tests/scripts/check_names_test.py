#!/usr/bin/python3
"""Does tools/check_names.py find demo names in the program, and only those?"""
import subprocess
import tempfile
import unittest
from pathlib import Path

SCRIPT = Path(__file__).resolve().parents[2] / "tools" / "check_names.py"
VEHICLE = """
[vehicle]
make = "Quorvane"
model = "Zelt 4"
[[system]]
code = "base"
name = "Base sound"
[[circuit]]
code = "front-left"
[[note]]
shop = "Dill Lane"
text = "verbatim"
"""
PARTS = """
[[converter]]
code = "brill-two"
maker = "Qua"
name = "Brill Two"
"""


class CheckNamesTest(unittest.TestCase):
    def run_on(self, source: str, data: dict[str, str]) -> tuple[int, list[str]]:
        """Exit code and lines for a tree with this data/ and src/cli/main.cpp."""
        with tempfile.TemporaryDirectory() as folder:
            for name, text in (data | {"src/cli/main.cpp": source}).items():
                path = Path(folder) / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            run = subprocess.run([SCRIPT, folder], capture_output=True, text=True, check=False)
            self.assertEqual(run.stderr, "")
            return run.returncode, run.stdout.splitlines()

    def run_on_demo(self, source: str) -> tuple[int, list[str]]:
        return self.run_on(source, {"data/vehicles/quorvane.toml": VEHICLE, "data/parts.toml": PARTS})

    def test_a_program_without_demo_names_passes(self):
        code, lines = self.run_on_demo('// Base sound, front-left, verbatim, "Qua", Quorvanes, unbrill-two.\n')
        self.assertEqual((code, lines), (0, ["names: none of 5 names of data/ occurs in src/"]))

    def test_each_kind_of_name_is_found_in_code_and_comments(self):
        for text in ("Quorvane", "quorvane", "Zelt 4", "zelt-4", "dill_lane", "DillLane", "brill-two", "x_quorvane_y"):
            with self.subTest(text=text):
                code, lines = self.run_on_demo(f"// Main.\n// an example: {text}\n")
                self.assertEqual(code, 1)
                self.assertTrue(lines[0].startswith("src/cli/main.cpp:2: "), lines)

    def test_data_without_names_is_no_pass(self):
        self.assertEqual(self.run_on("// Main.\n", {})[0], 1)
        self.assertEqual(self.run_on("// Main.\n", {"data/parts.toml": '[[converter]]\ncode = "base"\n'})[0], 1)


if __name__ == "__main__":
    unittest.main()
