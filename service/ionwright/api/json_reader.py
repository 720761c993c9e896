"""Bodies to values: media type, coding and JSON, each fault told so that it can be mended."""

from __future__ import annotations

from typing import Any

import orjson

from ionwright.api.problems import Fault, Problem
from ionwright.api.texts import shown

_BOM = b"\xef\xbb\xbf"
_PLAIN_REASONS = {
    "depth limit exceeded": "it is nested too deeply",
    "number is infinity when parsed as double": "a number is too large",
}


def parsed_media_type(header: str) -> tuple[str, str]:
    """Media type and charset of a Content-Type header, both in lower case."""
    media_type, _, parameters = header.partition(";")
    charset = ""
    for parameter in parameters.split(";"):
        name, _, value = parameter.partition("=")
        if name.strip().lower() == "charset":
            charset = value.strip().strip('"').lower()
    return media_type.strip().lower(), charset


def check_media_type(header: str, coding: str, accepted: tuple[str, ...]) -> str:
    """Return the media type of a body if it is one of those accepted.

    Raises
    ------
    Problem
        With code ``unsupported-media-type``.
    """
    media_type, charset = parsed_media_type(header)
    expected = " or ".join(accepted)
    if coding.strip().lower() not in {"", "identity"}:
        detail = f"The body is compressed ({shown(coding)}). Send it as it is, without Content-Encoding."
    elif not media_type:
        detail = f"The header Content-Type is missing. Send Content-Type: {expected}."
    elif media_type not in accepted:
        detail = f"The body has the media type {shown(media_type)}. Send Content-Type: {expected}."
    elif charset not in {"", "utf-8", "utf8", "us-ascii"}:
        detail = f"The body is said to be in {shown(charset)}. Send Content-Type: {expected}, in UTF-8."
    else:
        return media_type
    name = "Content-Encoding" if "compressed" in detail else "Content-Type"
    fault = Fault((name,), "unsupported-media-type", detail)
    headers = {"Accept": ", ".join(accepted)}
    raise Problem("unsupported-media-type", detail, faults=[fault], source="header", headers=headers)


def read_json(body: bytes) -> Any:
    """Return the value that a body holds.

    Raises
    ------
    Problem
        With code ``malformed-json`` and the position, in characters, where reading stopped.
    """
    text = body[3:] if body.startswith(_BOM) else body
    try:
        return orjson.loads(text)
    except orjson.JSONDecodeError as error:
        raise _malformed(text, error) from None


def _malformed(body: bytes, error: orjson.JSONDecodeError) -> Problem:
    if not body.strip():
        detail = "The body is empty. Send a JSON object."
        return Problem("malformed-json", detail, faults=[Fault((), "malformed-json", detail)])
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as miscoded:
        detail = f"The body is not UTF-8: byte {miscoded.start} does not belong there. Send it in UTF-8."
        return Problem("malformed-json", detail, faults=[Fault((), "malformed-json", detail)])
    reason = error.msg.split(": line")[0]
    reason = _PLAIN_REASONS.get(reason, reason)
    place = f"at line {error.lineno}, column {error.colno}"
    detail = f"The body is not JSON: {reason}, {place}. {_remedy(reason, text, error.pos)}"
    fault = Fault((), "malformed-json", detail.strip(), error.pos)
    return Problem("malformed-json", detail.strip(), faults=[fault])


def _remedy(reason: str, text: str, position: int) -> str:
    rest = text[max(position - 1, 0) : position + 12].lstrip(" :,[-")
    before = text[: position + 1].rstrip()
    if rest.startswith(("NaN", "Inf", "nan", "inf")):
        return "JSON has no NaN and no Infinity: write a number in digits, or leave the field out."
    if rest.startswith(("None", "True", "False")):
        return "JSON writes null, true and false in small letters."
    if rest.startswith("'") or before.endswith("'"):
        return 'JSON puts texts and names in double quotes: "NiSO4".'
    if rest.startswith(("//", "/*", "#")):
        return "JSON has no comments."
    if "trailing comma" in reason:
        return "Leave out the comma after the last member."
    return ""
