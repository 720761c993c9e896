"""The root of every refusal: what is wrong, where, and what would be right."""

from __future__ import annotations

from typing import Self


class IonwrightError(Exception):
    """An input that cannot be answered, told so that its sender can mend it.

    Parameters
    ----------
    code
        Stable word for programs, in kebab-case, such as ``"charges-do-not-cancel"``.
    detail
        One or two sentences for a person: what is wrong and why.
    where
        Path of the field at fault, such as ``"electrolyte/0/concentration"``; empty if not known yet.
    position
        Offset of the fault in the text that was given, in Unicode code points from 0; None if it is the whole text.
    remedy
        What would be right, as a sentence; empty if there is nothing to suggest.
    """

    def __init__(
        self, code: str, detail: str, *, where: str = "", position: int | None = None, remedy: str = ""
    ) -> None:
        super().__init__(code, detail)
        self.code = code
        self.detail = detail
        self.where = where
        self.position = position
        self.remedy = remedy

    def __str__(self) -> str:
        return f"{self.detail} {self.remedy}".strip()

    def within(self, where: str) -> Self:
        """Name the field in which the fault lies, unless a deeper layer named it already; returns itself."""
        self.where = f"{where}/{self.where}" if self.where else where
        return self
