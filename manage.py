#!/usr/bin/env python3
"""Start here: `python3 manage.py demo` shows the program, `python3 manage.py test` checks it.

A machine needs Python 3.11 and nothing else: what is missing is installed into `.venv` beside this file.
"""

import os
import sys


def main():  # no annotations or imports above the check: an older Python must be able to read this far
    if sys.version_info < (3, 11):
        sys.exit(
            "Capdate needs Python 3.11 or newer and this is %d.%d: install a newer one and start again with it."
            % sys.version_info[:2]
        )
    from inventory.project import engines, environment

    testing = sys.argv[1:2] == ["test"]
    environment.enter("test" if testing else "run")
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "inventory.project.settings")
    if testing:
        sys.exit(engines.run_tests(sys.argv[2:]))
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
