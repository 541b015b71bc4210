"""Codes that a process draws for its rows: never the same one twice."""

import pytest

from inventory.models import own_code


def test_a_code_that_was_drawn_is_not_drawn_again(monkeypatch: pytest.MonkeyPatch) -> None:
    draws = iter(["SGVPKCJK", "SGVPKCJK", "SGVPKCJK", "SBCDFGHJ"])
    monkeypatch.setattr(own_code, "_drawn", set())
    monkeypatch.setattr(own_code, "new_code", lambda letter: next(draws))

    assert [own_code.step_code(), own_code.step_code()] == ["SGVPKCJK", "SBCDFGHJ"]
