#!/usr/bin/env python3
"""Does `cmake --install` put everything in its place, is the manual page sound, and is the Debian package what it should be?"""
import argparse
import gzip
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

arguments = argparse.ArgumentParser()
arguments.add_argument("--build", required=True)
arguments.add_argument("--what", choices=["install", "manual", "package"], required=True)
given = arguments.parse_args()
build = pathlib.Path(given.build).resolve()
problems = []
work = tempfile.TemporaryDirectory()
folder = pathlib.Path(work.name)
wanted = ["bin/tapbook", "share/man/man1/tapbook.1.gz", "share/bash-completion/completions/tapbook", "share/zsh/site-functions/_tapbook",
          "share/fish/vendor_completions.d/tapbook.fish", "share/doc/tapbook/LICENSE", "share/doc/tapbook/README.md",
          "share/doc/tapbook/copyright", "share/tapbook/schema/advise.schema.json"]


def run(*words, **more):
    return subprocess.run([str(word) for word in words], cwd=folder, capture_output=True, text=True, timeout=300, **more)


def need(done, what):
    if done.returncode != 0:
        sys.exit(f"{what}: exit {done.returncode}\n{done.stdout[-3000:]}\n{done.stderr[-3000:]}")
    return done


def check_install():
    need(run("cmake", "--install", build, "--prefix", folder / "usr"), "cmake --install")
    for name in wanted:
        if not (folder / "usr" / name).is_file():
            problems.append(f"not installed: {name}")
    program = folder / "usr/bin/tapbook"
    surroundings = {**os.environ, "HOME": str(folder), "XDG_DATA_HOME": str(folder / "data")}
    version = need(run(program, "--version"), "--version").stdout
    if not re.fullmatch(r"tapbook \d+\.\d+\.\d+\n", version):
        problems.append(f"--version says {version!r}")
    need(run(program, "demo", env=surroundings), "demo")
    if "meter before" not in need(run(program, "taps", "ostrel", env=surroundings), "taps").stdout.lower():
        problems.append("the installed program gives no answer about a practice car")
    places = need(run(program, "where", env=surroundings), "where").stdout
    for name in wanted[1:5]:
        if not re.search(re.escape(str(folder / "usr" / name)) + "$", places, re.M):
            problems.append(f"where does not find {name}:\n{places}")
    for shell, name in (("bash", wanted[2]), ("zsh", wanted[3]), ("fish", wanted[4])):
        if (folder / "usr" / name).read_text() != need(run(program, "completion", shell), shell).stdout:
            problems.append(f"the installed script for {shell} is not what the program prints")


def check_manual():
    page = gzip.decompress((build / "pages/tapbook.1.gz").read_bytes()).decode()
    program = build / "tapbook"
    listing = need(run(program, "--help"), "--help").stdout
    commands = [line[2:15].strip() for line in listing.split("\n") if re.match(r"^  (?!tapbook)[a-z]+( [a-z]+)?  ", line)]
    plain = page.replace("\\-", "-").replace("\\(aq", "'").replace("\\(dq", '"').replace("\\(ga", "`").replace("\\&", "").replace("\\e", "\\")
    for command in commands:
        text = need(run(program, *command.split(), "--help"), command).stdout
        if f'.SS "tapbook {command}' not in plain:
            problems.append(f"the manual has no section about {command}")
        for option in re.findall(r"^  (--[a-z0-9-]+)", text, re.M):
            if option not in plain:
                problems.append(f"the manual does not name {command} {option}")
        for example in re.findall(r"^  (tapbook .*)$", text, re.M):
            if example not in plain:
                problems.append(f"the manual lacks the example {example}")
    for section in ("NAME", "SYNOPSIS", "DESCRIPTION", "SAFETY", "COMMANDS", "EXIT STATUS", "ENVIRONMENT", "FILES", "EXAMPLES"):
        if f".SH {section}\n" not in page:
            problems.append(f"the manual has no section {section}")
    for code in ("0", "1", "2", "3", "4", "5", "6", "7", "130"):
        if f".TP\n.B {code}\n" not in page:
            problems.append(f"the manual does not say what exit code {code} means")
    (folder / "tapbook.1").write_text(page)
    if shutil.which("mandoc"):
        # "missing date": the page is the same on every day it is built
        lint = [line for line in run("mandoc", "-Tlint", "-Wwarning", folder / "tapbook.1").stdout.split("\n") if line and "missing date" not in line]
        problems.extend(lint)
    if shutil.which("groff"):
        done = run("groff", "-man", "-Tutf8", "-ww", "-z", folder / "tapbook.1")
        if done.stderr or done.returncode:
            problems.append("groff: " + done.stderr)


def check_package():
    need(run("cpack", "-G", "DEB", "-B", folder, "--config", build / "CPackConfig.cmake"), "cpack")
    packages = list(folder.glob("*.deb"))
    if len(packages) != 1:
        sys.exit(f"{len(packages)} packages were made")
    contents = need(run("dpkg-deb", "--contents", packages[0]), "--contents").stdout
    for name in wanted:
        if not re.search(rf"^-rw.r.xr.x root/root .* \./usr/{re.escape(name)}$|^-rw-r--r-- root/root .* \./usr/{re.escape(name)}$", contents, re.M):
            problems.append(f"not in the package, or with other rights: {name}")
    outside = [line for line in contents.split("\n") if line and not re.search(r" \./(usr/.*)?$", line)]
    if outside:
        problems.append(f"files outside /usr: {outside}")
    information = need(run("dpkg-deb", "--info", packages[0]), "--info").stdout
    for line in ("Package: tapbook", "Section: electronics", "Maintainer: tapbook contributors <tapbook@example.invalid>",
                 "Description: where to tap a factory sound system, and which converter fits"):
        if line not in information:
            problems.append(f"the package's information lacks {line!r}:\n{information}")
    need(run("dpkg-deb", "--extract", packages[0], folder / "root"), "--extract")
    need(run(folder / "root/usr/bin/tapbook", "--version"), "the packaged program")


{"install": check_install, "manual": check_manual, "package": check_package}[given.what]()
print("\n".join(problems))
print(f"{given.what}: {'in order' if not problems else str(len(problems)) + ' problems'}")
sys.exit(1 if problems else 0)
