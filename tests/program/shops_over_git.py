#!/usr/bin/env python3
"""Do three shops end up knowing the same over a real git repository? Each has a clone, exchanges, commits and pushes at the
same time as the others; who comes second rebases. At the end what the three would hand on is the same byte for byte, and
git never met a conflict: the files are immutable and named by their contents."""
import argparse
import pathlib
import subprocess
import sys
import tempfile

from exchanging_shops import Shop, need_agreement


class ShopWithClone(Shop):
    def __init__(self, program, root, origin, name):
        super().__init__(program, root, name, root / name)
        self.environment |= {"GIT_CONFIG_NOSYSTEM": "1", "GIT_AUTHOR_NAME": name, "GIT_AUTHOR_EMAIL": f"{name}@example.org",
                             "GIT_COMMITTER_NAME": name, "GIT_COMMITTER_EMAIL": f"{name}@example.org"}
        self.run("git", "clone", "--quiet", origin, self.folder, folder=root)

    def exchange_and_commit(self):
        self.exchange()
        self.run("git", "add", "--all")
        self.run("git", "commit", "--quiet", "--allow-empty", "-m", "packs")

    def push(self):
        """Whether git took it; not when somebody pushed in between."""
        return self.run("git", "push", "--quiet", "origin", "HEAD:main", good=(0, 1, 128)).returncode == 0

    def pull(self):
        self.run("git", "pull", "--quiet", "--rebase", "origin", "main")


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True, type=pathlib.Path)
    program = arguments.parse_args().program.resolve()
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        subprocess.run(["git", "init", "--quiet", "--bare", "--initial-branch=main", str(root / "origin.git")], check=True)
        shops = [ShopWithClone(program, root, root / "origin.git", name) for name in ("bench", "quill", "relay")]
        for shop, model in zip(shops, ("Tarn", "Brim", "Vell")):
            shop.add_car(model)
        shops[0].exchange_and_commit()
        assert shops[0].push()
        rebased = 0
        for turn in range(3):
            for shop in shops:
                shop.note(f"plate {turn} {shop.name}", ("white", "brown", "green")[turn])
                shop.exchange_and_commit()
            for shop in shops:  # all have committed before the first one pushes: the others come too late
                while not shop.push():
                    shop.pull()
                    rebased += 1
        for shop in shops:
            shop.pull()
            shop.exchange_and_commit()
        need_agreement(shops, 2 + 3 * 4 + 9)
        if rebased < 2:
            sys.exit("nobody had to rebase: this test does not see pushes that meet")
        print(f"3 shops, 9 notes, 12 entries: the same in all, {rebased} pushes came too late and were rebased")


main()
