"""The verbs: how each begins, what it takes while it waits, and how it is settled after a yes."""

from collections.abc import Callable
from typing import Any

from ..answers import Heard
from ..turn import Turn
from . import away, count, delivery, fill, hold, move, open, receive, received, rinse, sign, undo, use, washed

Begin = Callable[[Turn], Heard]
GoOn = Callable[[Turn], "Heard | None"]
Settle = Callable[[Turn, dict[str, Any]], Heard]

BEGIN: dict[str, Begin] = {
    "receive": receive.begin,
    "open": open.begin,
    "use": use.begin,
    "already": use.already,
    "fill": fill.begin,
    "rinse": rinse.begin,
    "rinse_bottle": rinse.the_bottle,
    "washed": washed.begin,
    "move": move.begin,
    "bring_back": move.bring_back,
    "count": count.begin,
    "discard": away.discard,
    "return": away.give_back,
    "hold": hold.begin,
    "whole_lot": hold.whole_lot,
    "release": hold.release,
    "sign": sign.begin,
    "undo": undo.begin,
    "damaged": delivery.trouble("damaged"),
    "wrong": delivery.trouble("wrong"),
    "short": delivery.short,
    "done": delivery.done,
}
GO_ON: dict[str, GoOn] = {
    "receive": receive.go_on,
    "open": open.go_on,
    "use": use.go_on,
    "fill": fill.go_on,
    "rinse": rinse.go_on,
    "washed": washed.go_on,
    "move": move.go_on,
    "count": count.go_on,
    "discard": away.discard_on,
    "return": away.give_back_on,
    "hold": hold.go_on,
    "damaged": delivery.on,
    "wrong": delivery.on,
}
SETTLE: dict[str, Settle] = {
    "receive": received.settle,
    "use": use.settle,
    "fill": fill.settle,
    "rinse": rinse.settle,
    "move": move.settle,
    "discard": away.settle,
}
