"""Reading bodies: media types and JSON, with a remedy for the usual slips."""

from __future__ import annotations

import pytest

from ionwright.api.json_reader import check_media_type, read_json
from ionwright.api.problems import Problem

JSON = ("application/json",)


@pytest.mark.parametrize(
    "header",
    [
        "application/json",
        "Application/JSON",
        "application/json; charset=utf-8",
        'application/json;charset="UTF-8"',
    ],
)
def test_json_in_utf_8_is_read(header: str) -> None:
    assert check_media_type(header, "", JSON) == "application/json"


@pytest.mark.parametrize(
    ("header", "coding", "words"),
    [
        ("", "", "The header Content-Type is missing"),
        ("text/plain", "", 'has the media type "text/plain"'),
        ("application/x-www-form-urlencoded", "", "Send Content-Type: application/json"),
        ("application/json; charset=utf-16", "", 'said to be in "utf-16"'),
        ("application/json", "gzip", 'compressed ("gzip")'),
    ],
)
def test_other_media_types_are_refused_with_the_right_one(header: str, coding: str, words: str) -> None:
    with pytest.raises(Problem) as caught:
        check_media_type(header, coding, JSON)
    assert caught.value.status == 415
    assert words in caught.value.detail
    assert caught.value.headers == {"Accept": "application/json"}
    (error,) = caught.value.document()["errors"]
    assert error["in"] == "header"
    assert error["parameter"] == ("Content-Encoding" if coding else "Content-Type")


@pytest.mark.parametrize(
    ("body", "position", "words"),
    [
        (b'{"ph": NaN}', 7, "JSON has no NaN"),
        (b'{"ph": Infinity}', 7, "JSON has no NaN and no Infinity"),
        (b'{"ph": -Infinity}', 8, "JSON has no NaN and no Infinity"),
        (b'{"ph": None}', 7, "null, true and false in small letters"),
        (b"{'electrolyte': 1}", 1, "double quotes"),
        (b'{"ph": 1, // acid\n}', 10, "no comments"),
        (b'{"ph": 1,}', None, "comma after the last member"),
        (b'{"electrolyte": "Ni', 19, "at line 1, column"),
        (b'{"electrolyte": "\\ud800"}', None, "surrogate"),
        (b"{\n}}", 3, "at line 2, column 2"),
        (b'{"ph": 1e999}', None, "a number is too large, at line 1"),
        (b"[" * 5000, None, "it is nested too deeply, at line 1"),
    ],
)
def test_what_is_not_json_is_told_with_its_place(body: bytes, position: int | None, words: str) -> None:
    with pytest.raises(Problem) as caught:
        read_json(body)
    assert caught.value.status == 400
    assert words in caught.value.detail
    (error,) = caught.value.document()["errors"]
    assert error["pointer"] == ""
    if position is not None:
        assert error["position"] == position


def test_positions_count_characters_and_not_bytes() -> None:
    with pytest.raises(Problem) as caught:
        read_json('{"a": "Ni²⁺", x}'.encode())
    assert caught.value.document()["errors"][0]["position"] == 14


@pytest.mark.parametrize("body", [b"", b"  \n", b"\xef\xbb\xbf"])
def test_an_empty_body_is_told_as_such(body: bytes) -> None:
    with pytest.raises(Problem, match="The body is empty"):
        read_json(body)


def test_other_codings_are_told_as_such() -> None:
    with pytest.raises(Problem, match=r"not UTF-8: byte 7 does not belong there"):
        read_json(b'{"a": "\xff"}')


def test_a_byte_order_mark_is_passed_over() -> None:
    assert read_json(b'\xef\xbb\xbf{"a": 1}') == {"a": 1}
