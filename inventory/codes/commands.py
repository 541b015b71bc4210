"""The printed command codes. Fixed for ever: they hang on the wall beside every station."""

from inventory.codes.own import CodeError, tidy

COMMANDS = {
    "yes": "CFKENGBX",
    "no": "CSSDEFNX",
    "undo": "CVTSHHNP",
    "open": "CNNSDXVV",
    "use": "CRDHJCHE",
    "fill": "CEDHKLLK",
    "rinse": "CKGEBKJN",
    "move": "CJJCBLKD",
    "count": "CFNTFKSN",
    "discard": "CGGREFSK",
    "return": "CPJECXHX",
    "hold": "CSGGDELX",
    "release": "CBNRTXCF",
    "receive": "CGETNBDN",
    "finished": "CCBHJXXJ",
    "planned": "CBGBXFLJ",
    "damaged": "CFSKEREL",
    "short": "CHJHJELV",
    "wrong": "CFRFDTVN",
    "no_lot": "CBGHLREC",
    "no_date": "CLHPLFEF",
    "done": "CBKCRPLF",
    "sign": "CRTEDVHG",
    "emergency": "CBXDNBGJ",
    "reprint": "CHRDPLTC",
    "bring_back": "CCFRRRKC",
    "washed": "CDSBKKED",
}
_NAMES = {code: name for name, code in COMMANDS.items()}


def command_of(code: str) -> str | None:
    """Return the name of a command code in any case and grouping, or None where it is not one."""
    return _NAMES.get(tidy(code) or "")


def code_of(command: str) -> str:
    """Return the code of a command. Raises CodeError for a name that is not in the table."""
    if command not in COMMANDS:
        raise CodeError(f"“{command}” is no command. The commands are {', '.join(COMMANDS)}.")
    return COMMANDS[command]
