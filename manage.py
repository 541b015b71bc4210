#!/usr/bin/env python3
"""Start here: `python3 manage.py demo` shows the program, `python3 manage.py test` checks it.

A machine needs Python 3.11 and nothing else: what is missing is installed into `.venv` beside this file.
"""

import os
import sys


def main():
    # An older Python must be able to read this far, to say so in a sentence.
    if sys.version_info < (3, 11):  # noqa: UP036
        found = ".".join(map(str, sys.version_info[:2]))
        sys.exit(
            "Capdate needs Python 3.11 or newer and this is "
            + found
            + ": install a newer one and start again."
        )
    from inventory.project import engines, environment

    testing = sys.argv[1:2] == ["test"]
    if sys.argv[1:2] == ["demo"]:
        # The demo's shop lies in a folder of its own, chosen before the settings look for one.
        os.environ["CAPDATE_DIR"] = environment.demo_folder(sys.argv[2:], os.getcwd())
    environment.enter("test" if testing else "run")
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.project.settings")
    if testing:
        sys.exit(engines.run_tests(sys.argv[2:]))
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
