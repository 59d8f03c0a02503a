"""Catalogs that are none, are damaged, may not be read or written, are in use, or find no room on the disk."""
import os
import pathlib
import random
import shutil
import sqlite3
import subprocess
import sys

from bad_input import Row

READ = "tapbook find --db shop.sqlite"
WRITE = "tapbook add more.toml --db shop.sqlite"
MORE = '[vehicle]\nmake = "Orvane"\nmodel = "Fell"\nbody = "wagon"\nfirst_year = 2016\nlast_year = 2019\n'
NOBODY = "setpriv --reuid=65534 --regid=65534 --clear-groups "  # who does not own the catalog
FOUND = "Orvane Tarn sedan  2015-2018  orvane/tarn/sedan/2015\n"
ANOTHER = "give the catalog with --db FILE; tapbook init makes a new one\n"
NOT_OURS = "tapbook: shop.sqlite is a database, but not a tapbook catalog\n" + ANOTHER
NO_DATABASE = "tapbook: shop.sqlite is not a tapbook catalog\n" + ANOTHER
NO_FILE = "tapbook: shop.sqlite is not a file\ngive the catalog with --db FILE\n"
MISSING = "tapbook: there is no catalog at shop.sqlite\nmake one with `tapbook init`, or a practice shop with `tapbook demo`\n"
DAMAGED = "tapbook: shop.sqlite is damaged: running PRAGMA user_version: database disk image is malformed\nrestore the last backup\n"
KNOWN = len(list((pathlib.Path(__file__).resolve().parents[2] / "schema").glob("*.sql")))
NEWER = f"tapbook: shop.sqlite was written by a newer tapbook (schema 99, this one knows {KNOWN})\nuse the newer program; nothing was changed\n"
CIRCLE = "tapbook: cannot reach shop.sqlite: Too many levels of symbolic links\nchoose another place with --db FILE\n"
BUSY = "tapbook: shop.sqlite is in use by another program\nwait a moment and try again; nothing was changed\n"
THERE = "tapbook: shop.sqlite is there already\nopen it with --db, or choose another place\n"
READ_ONLY = "tapbook: shop.sqlite may only be read\nwrite from an account that owns it, or copy it with backup\n"
DISK = "check the disk; nothing was changed\n"


def more(folder):
    (folder / "more.toml").write_text(MORE)


def cut(size):
    def make(folder):
        more(folder)
        os.truncate(folder / "shop.sqlite", size)
    return make


def written(data):
    def make(folder):
        more(folder)
        (folder / "shop.sqlite").write_bytes(data)
    return make


def sql(text):
    def make(folder):
        more(folder)
        database = sqlite3.connect(folder / "shop.sqlite", isolation_level=None)
        database.executescript(text)
        database.close()
    return make


def replaced(how):
    def make(folder):
        more(folder)
        (folder / "shop.sqlite").unlink()
        how(folder / "shop.sqlite")
    return make


def foreign(file):
    database = sqlite3.connect(file)
    database.executescript("CREATE TABLE vehicle (path TEXT); INSERT INTO vehicle VALUES ('x')")
    database.close()


def with_log(make_log):
    def make(folder):
        more(folder)
        make_log(folder / "shop.sqlite-wal")
    return make


def killed_while_open(program):
    """A catalog whose last change is still in its log, as a program leaves it that is killed: a copy of both files."""
    def make(folder):
        more(folder)
        (folder / "open").mkdir()
        shutil.copy(folder / "shop.sqlite", folder / "open" / "shop.sqlite")
        reader = sqlite3.connect(folder / "open" / "shop.sqlite", isolation_level=None)
        reader.execute("SELECT count(*) FROM vehicle").fetchall()  # keeps the log from being folded in
        subprocess.run([str(program), "add", "more.toml", "--db", "open/shop.sqlite"], cwd=folder, check=True, stdout=subprocess.DEVNULL)
        for name in ("shop.sqlite", "shop.sqlite-wal"):
            shutil.copy(folder / "open" / name, folder / name)
        reader.close()
        shutil.rmtree(folder / "open")
    return make


def modes(file, where):
    """Modes of the catalog and of its folder."""
    def make(folder):
        more(folder)
        (folder / "shop.sqlite").chmod(file)
        folder.chmod(where)
        return lambda: folder.chmod(0o755)
    return make


HOLDER = """import sqlite3, sys
database = sqlite3.connect(sys.argv[1], isolation_level=None)
for line in sys.argv[2:]:
    database.execute(line)
print("held", flush=True)
sys.stdin.read()
"""


def held(*statements):
    """Another program that has the catalog in its hands until the row is over."""
    def make(folder):
        more(folder)
        other = subprocess.Popen([sys.executable, "-c", HOLDER, str(folder / "shop.sqlite"), *statements], stdin=subprocess.PIPE,
                                 stdout=subprocess.PIPE)
        other.stdout.readline()
        return lambda: other.communicate()
    return make



def both(claim, exit_code, says, before):
    """The same for a command that reads and one that writes."""
    yield Row(f"{claim}: reading", READ, exit_code, says, before=before)
    yield Row(f"{claim}: writing", WRITE, exit_code, says, before=before)


def no_catalogs():
    for size in (0, 1, 50):
        yield from both(f"a catalog cut to {size} bytes is none", 3, NOT_OURS, cut(size))
    for size in (99, 100, 512, 4095, 4096, 8192, 40000):
        yield from both(f"a catalog cut to {size} bytes is damaged", 6, DAMAGED, cut(size))
    lost = lambda said: said.startswith("tapbook: shop.sqlite is damaged: ") and said.endswith(": no such table: vehicle\nrestore the last backup\n")
    yield Row("a catalog that lost a table is damaged: writing", WRITE, 6, lost, before=sql("DROP TABLE vehicle"))
    yield Row("a catalog that lost a table is damaged: reading", READ, 6, lost, before=sql("DROP TABLE vehicle; DELETE FROM packed_names"))
    yield from both("a letter", 3, NO_DATABASE, written(b"this is a letter\n" * 100))
    yield from both("the first 16 bytes of a database before zeros", 3, NO_DATABASE, written(b"SQLite format 3\0" + bytes(4080)))
    yield from both("a catalog of a newer program", 3, NEWER, sql("PRAGMA user_version = 99"))
    yield from both("a version below zero", 3, NOT_OURS, sql("PRAGMA user_version = -1"))
    yield from both("a version of zero", 3, NOT_OURS, sql("PRAGMA user_version = 0"))
    yield from both("another program's database", 3, NOT_OURS, replaced(foreign))
    yield from both("another program's application_id", 3, NOT_OURS, sql("PRAGMA application_id = 1"))
    yield from both("a folder", 3, NO_FILE, replaced(os.mkdir))
    yield from both("a pipe", 3, NO_FILE, replaced(os.mkfifo))
    yield from both("a link to a device", 3, NO_FILE, replaced(lambda file: os.symlink("/dev/null", file)))
    yield from both("a link that leads nowhere", 3, MISSING, replaced(lambda file: os.symlink("nowhere", file)))
    yield from both("links in a circle", 5, CIRCLE, replaced(lambda file: os.symlink(file.name, file)))
    yield from both("no file at all", 3, MISSING, replaced(lambda file: None))


def making():
    for command in ("init", "demo"):
        yield Row(f"{command} leaves a catalog alone that is there", f"tapbook {command} --db shop.sqlite", 3, THERE)
        for what, how in (("a link that leads nowhere", lambda file: os.symlink("nowhere", file)), ("a folder", os.mkdir), ("a pipe", os.mkfifo)):
            yield Row(f"{command} leaves {what} alone", f"tapbook {command} --db shop.sqlite", 3, THERE, before=replaced(how))
        for place, why in (("car.toml/new.sqlite", "Not a directory"), ("x" * 300, "File name too long"), ("/proc/x/new.sqlite", "No such file or directory")):
            yield Row(f"{command} cannot make {place[:20]}", f"tapbook {command} --db {place}", 5, f"tapbook: cannot make {place}: {why}\nchoose another place with --db FILE\n")
        for place in ("new.sqlite", "/root/x/new.sqlite"):
            yield Row(f"{command} may not write {place}", f"{NOBODY} tapbook {command} --db {place}", 4, f"tapbook: may not write {place}\nchoose another place with --db FILE\n")
        yield Row(f"{command} without room leaves nothing behind", f"ulimit -f 8; tapbook {command} --db new.sqlite", 5,
                  "tapbook: new.sqlite: line 1 of the script: running BEGIN IMMEDIATE: disk I/O error\n" + DISK)
        yield Row(f"{command} with too little room leaves nothing behind", f"ulimit -f 100; tapbook {command} --db new.sqlite", 5,
                  "tapbook: new.sqlite: line 1 of the script: running COMMIT: disk I/O error\n" + DISK)


def in_use():
    yield Row("another program that writes does not keep anybody from reading", READ, 0, "", FOUND, before=held("BEGIN IMMEDIATE", "DELETE FROM tap"))
    yield Row("a catalog another program writes is busy", WRITE, 7, BUSY, before=held("BEGIN IMMEDIATE"))
    yield from both("a catalog another program holds for itself is busy", 7, BUSY, held("PRAGMA locking_mode = EXCLUSIVE", "BEGIN EXCLUSIVE"))


def rights():
    yield Row("a closed catalog", f"{NOBODY} cat shop.sqlite; {NOBODY}{READ}", 4,
              "cat: shop.sqlite: Permission denied\ntapbook: may not read shop.sqlite\nread it from the account that owns it\n", before=modes(0o600, 0o755))
    yield Row("a closed folder", NOBODY + READ, 4, "tapbook: cannot reach shop.sqlite: Permission denied\nask from an account that may enter the folder\n", before=modes(0o666, 0o700))
    for what, before in (("a catalog", modes(0o644, 0o777)), ("a folder", modes(0o666, 0o755))):
        yield Row(f"{what} that may only be read is read", NOBODY + READ, 0, "", FOUND, before=before)
        yield Row(f"{what} that may only be read is not written", NOBODY + WRITE, 4, READ_ONLY, before=before)


def no_room():
    yield Row("a disk that is full at the first byte", f"ulimit -f 8; {WRITE}", 5, "tapbook: shop.sqlite: running PRAGMA user_version: disk I/O error\n" + DISK, before=more)
    # Room for the catalog, the 32 KiB its readers share, and one page of a log.
    small = ("unshare -m bash -c 'mount -t tmpfs -o size=$(($(stat -c %s shop.sqlite) + 32768 + 8192)) none small && "
             "cp shop.sqlite small && {0}'")
    probe = subprocess.run(["unshare", "-m", "true"], stderr=subprocess.DEVNULL)
    if probe.returncode == 0:
        write = "tapbook add more.toml --db small/shop.sqlite; code=$?; tapbook find --db small/shop.sqlite; exit $code"
        yield Row("a disk that fills up in the middle", small.format(write), 5, "tapbook: small/shop.sqlite: line 1 of the script: running COMMIT: database or disk is full\n" + DISK,
                  FOUND, before=lambda folder: (more(folder), (folder / "small").mkdir())[0])
    else:
        print("NOT RUN: a disk that fills up in the middle: no own mounts here (unshare -m)")


def logs(program):
    for what, make_log in (("without a byte", lambda file: file.touch()), ("of noise", lambda file: file.write_bytes(random.Random(5).randbytes(5000)))):
        yield Row(f"a log {what} is passed over", READ, 0, "", FOUND, before=with_log(make_log))
        yield Row(f"a log {what} does not hinder writing", WRITE, 0, "", lambda out: "1 entry new" in out and out.endswith("Saved.\n"), before=with_log(make_log), changes=("shop.sqlite",))
    yield from both("a folder in the place of the log", 5, "tapbook: shop.sqlite: running PRAGMA user_version: unable to open database file\n" + DISK, with_log(os.mkdir))
    yield Row("what a killed program had saved is there", READ, 0, "",
              "Orvane Fell wagon  2016-2019  orvane/fell/wagon/2016\n" + FOUND, before=killed_while_open(program), changes=("shop.sqlite",))


def rows(program):
    for part in (no_catalogs, making, in_use, rights, no_room):
        yield from part()
    yield from logs(program)
