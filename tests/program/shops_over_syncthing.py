#!/usr/bin/env python3
"""Do three shops end up knowing the same over folders that a file synchroniser keeps alike? Three instances of Debian's
syncthing on this machine alone, each with a configuration of its own, known to each other by address: no discovery, relays,
port mapping or reports. Two copies of one file are changed apart from each other as well: the conflict copy is named, and
nothing is lost. Exit code 77: no syncthing here."""
import argparse
import hashlib
import json
import pathlib
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request

from exchanging_shops import Shop, need_agreement

CONFIGURATION = """<configuration version="36">
<folder id="packs" path="{folder}" type="sendreceive" rescanIntervalS="3600" fsWatcherEnabled="true" fsWatcherDelayS="1" autoNormalize="true">
{members}
<maxConflicts>10</maxConflicts>
</folder>
{devices}
<gui enabled="true" tls="false"><address>127.0.0.1:{gui}</address><apikey>{key}</apikey></gui>
<options>
<listenAddress>tcp://127.0.0.1:{port}</listenAddress>
<globalAnnounceEnabled>false</globalAnnounceEnabled><localAnnounceEnabled>false</localAnnounceEnabled>
<relaysEnabled>false</relaysEnabled><natEnabled>false</natEnabled><stunKeepaliveStartS>0</stunKeepaliveStartS>
<reconnectionIntervalS>1</reconnectionIntervalS><startBrowser>false</startBrowser><urAccepted>-1</urAccepted>
<crashReportingEnabled>false</crashReportingEnabled><autoUpgradeIntervalH>0</autoUpgradeIntervalH>
</options>
</configuration>
"""
DEVICE = """<device id="{0}" name="{1}" compression="never"><address>tcp://127.0.0.1:{2}</address></device>"""
PATIENCE = 120  # seconds


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


class SyncedShop(Shop):
    def __init__(self, program, root, name):
        super().__init__(program, root, name, root / f"{name}-packs")
        self.folder.mkdir()
        (self.folder / ".stfolder").mkdir()
        self.home, self.port, self.gui, self.process = root / f"{name}-home", free_port(), free_port(), None
        self.key = hashlib.sha256(name.encode()).hexdigest()
        self.run("syncthing", "generate", f"--home={self.home}", "--no-default-folder", "--skip-port-probing")
        self.device = self.run("syncthing", f"--home={self.home}", "--device-id").stdout.decode().strip()

    def configure(self, shops):
        members = "\n".join(f'<device id="{shop.device}"></device>' for shop in shops)
        devices = "\n".join(DEVICE.format(shop.device, shop.name, shop.port) for shop in shops)
        (self.home / "config.xml").write_text(CONFIGURATION.format(
            folder=self.folder, members=members, devices=devices, gui=self.gui, key=self.key, port=self.port))

    def start(self):
        log = (self.root / f"{self.name}.log").open("ab")
        environment = {**self.environment, "STNOUPGRADE": "1", "STNORESTART": "1"}
        self.process = subprocess.Popen(["syncthing", "serve", f"--home={self.home}", "--no-browser", "--no-restart"],
                                        env=environment, stdout=log, stderr=log)
        wait_until(f"{self.name}'s syncthing to answer", lambda: self.ask("system/ping"))

    def stop(self):
        if self.process:
            self.process.terminate()
            self.process.wait(60)
        self.process = None

    def ask(self, what, method="GET"):
        request = urllib.request.Request(f"http://127.0.0.1:{self.gui}/rest/{what}", method=method, headers={"X-API-Key": self.key})
        try:
            with urllib.request.urlopen(request, timeout=10) as answer:
                return json.loads(answer.read() or b"true") or True
        except (OSError, ValueError):
            return None

    def files(self):
        """Names and contents, without what is still being written."""
        return {file.name: hashlib.sha256(file.read_bytes()).hexdigest() for file in self.folder.iterdir() if not file.name.startswith(".")}


def wait_until(what, is_so):
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        if is_so():
            return
        time.sleep(0.2)
    sys.exit(f"waited {PATIENCE} s for {what}")


def wait_for_the_same(shops, is_enough=lambda files: True):
    """The synchroniser has brought every file everywhere."""
    for shop in shops:
        shop.ask("db/scan?folder=packs", "POST")

    def is_same():
        all_files = [shop.files() for shop in shops]
        return all(files == all_files[0] for files in all_files) and is_enough(all_files[0])

    wait_until("the folders to be the same", is_same)


def exchange_until_all_know(shops):
    """Everybody writes, the folders become the same, everybody reads."""
    for _ in range(2):
        written = {name for shop in shops for name in (shop.exchange(), shop.files())[1]}
        wait_for_the_same(shops, lambda files: written <= set(files))


def make_a_conflict(shops):
    """One pack is cut off in one folder and spoilt in another while the two do not see each other."""
    name = sorted(shops[0].files())[0]
    shops[1].stop()
    for shop, keep in ((shops[0], 0.5), (shops[1], 0.7)):
        text = (shop.folder / name).read_bytes()
        (shop.folder / name).write_bytes(text[:int(len(text) * keep)])
    shops[0].ask("db/scan?folder=packs", "POST")
    wait_until("the first change to spread", lambda: shops[0].files()[name] == shops[2].files()[name])
    shops[1].start()
    wait_for_the_same(shops, lambda files: any(".sync-conflict-" in one for one in files))
    return name, [one for one in shops[0].files() if ".sync-conflict-" in one]


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--program", required=True, type=pathlib.Path)
    program = arguments.parse_args().program.resolve()
    if shutil.which("syncthing") is None:
        print("there is no syncthing here: apt-get install syncthing", file=sys.stderr)
        sys.exit(77)
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder)
        shops = [SyncedShop(program, root, name) for name in ("bench", "quill", "relay")]
        try:
            for shop, model in zip(shops, ("Tarn", "Brim", "Vell")):
                shop.configure(shops)
                shop.add_car(model)
            for shop in shops:
                shop.start()
            for turn in range(3):
                for shop in shops:
                    shop.note(f"plate {turn} {shop.name}", ("white", "brown", "green")[turn])
                exchange_until_all_know(shops)
            need_agreement(shops, 2 + 3 * 4 + 9)
            name, copies = make_a_conflict(shops)
            for shop in shops:
                shop.note(f"plate 3 {shop.name}", "white")
                said = shop.exchange(good=(1,))
                for damaged in (name, *copies):
                    if damaged not in said:
                        sys.exit(f"{shop.name} does not name {damaged}:\n{said}")
            wait_for_the_same(shops, lambda files: len(files) >= 7)
            for shop in shops:
                shop.exchange(good=(1,))
            need_agreement(shops, 2 + 3 * 4 + 12)
            print(f"3 shops, 12 notes, 12 entries: the same in all; {len(copies)} conflict copy named and survived")
        finally:
            for shop in shops:
                shop.stop()


main()
