#!/usr/bin/python3
"""Does tools/approve.py accept exactly what was received, and change nothing when it only shows?"""
import subprocess
import tempfile
import unittest
from pathlib import Path

SCRIPT = Path(__file__).resolve().parents[2] / "tools" / "approve.py"


class ApproveTest(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.build = Path(folder.name) / "build"
        self.approved = Path(folder.name) / "approved"
        (self.build / "tests").mkdir(parents=True)
        self.approved.mkdir()

    def received(self, name: str, content: bytes, folder: str = "tests") -> Path:
        path = self.build / folder / f"{name}.received.txt"
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)
        return path

    def approve(self, *options: str) -> tuple[int, str]:
        run = subprocess.run([SCRIPT, "--approved", self.approved, *options, self.build],
                             capture_output=True, text=True, check=False)
        return run.returncode, run.stdout

    def test_nothing_received_is_nothing_to_do(self):
        self.assertEqual(self.approve(), (0, "0 accepted\n"))
        self.assertEqual(self.approve("--show"), (0, "0 differ\n"))

    def test_a_received_text_replaces_the_approved_one_byte_for_byte(self):
        (self.approved / "taps.txt").write_bytes(b"a\nb\n")
        path = self.received("taps", b"a\r\nc\n\xff")
        self.assertEqual(self.approve(), (0, "taps: changed, +3 -3 lines\n1 accepted\n"))
        self.assertEqual((self.approved / "taps.txt").read_bytes(), b"a\r\nc\n\xff")
        self.assertFalse(path.exists())

    def test_a_new_text_is_accepted_as_new(self):
        self.received("sheet", b"one\n")
        self.assertIn("sheet: new, ", self.approve()[1])
        self.assertEqual((self.approved / "sheet.txt").read_bytes(), b"one\n")

    def test_show_prints_the_difference_and_changes_nothing(self):
        (self.approved / "taps.txt").write_bytes(b"a\nb\n")
        path = self.received("taps", b"a\nc\n")
        code, text = self.approve("--show")
        self.assertEqual(code, 1)
        self.assertIn("\n-b\n+c\n", text)
        self.assertEqual((self.approved / "taps.txt").read_bytes(), b"a\nb\n")
        self.assertTrue(path.exists())

    def test_an_equal_text_is_no_difference(self):
        (self.approved / "taps.txt").write_bytes(b"a\n")
        self.received("taps", b"a\n")
        self.assertEqual(self.approve("--show"), (0, "0 differ\n"))
        self.assertEqual(self.approve(), (0, "0 accepted\n"))

    def test_two_versions_of_one_name_are_refused(self):
        self.received("taps", b"a\n")
        self.received("taps", b"b\n", folder="other")
        self.assertEqual(self.approve()[0], 1)
        self.assertFalse((self.approved / "taps.txt").exists())


if __name__ == "__main__":
    unittest.main()
