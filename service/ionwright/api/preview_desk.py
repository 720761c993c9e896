"""From a declaration and a cell to what the declared curriculum says of the cell; nothing of it is kept."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

import orjson

from ionwright.api.answers import JSON, Answer
from ionwright.api.predictor import refused
from ionwright.api.problems import Fault, Problem, validation_problem
from ionwright.api.request_reader import FIELDS, OTHER_WORDS, read_prediction_request
from ionwright.api.texts import kind_of, note_unknown_fields, wrong_type
from ionwright.chemistry.faults import Unbalanced
from ionwright.curricula import CurriculumFileFault, describe
from ionwright.errors import IonwrightError
from ionwright.teaching import predict_afresh, prediction_document

if TYPE_CHECKING:
    from ionwright.curricula import Curriculum
    from ionwright.curricula.host import Registry

PREVIEW_FIELDS: Final = ("declaration", *(name for name in FIELDS if name != "curriculum"))
LONGEST_DECLARATION: Final = 65_536
MOST_FAULTS: Final = 100
_OTHER_WORDS: Final = {word: meant for word, meant in OTHER_WORDS.items() if meant != "curriculum"} | {
    "curriculum": "declaration",
    "toml": "declaration",
}
_WHERE: Final = ("declaration",)
_EXAMPLE: Final = 'format = 1\nid = "skerry-foundation"\nbased_on = "gcse"'


@dataclass(frozen=True, slots=True)
class PreviewDesk:
    """Answers requests to judge a cell under a declaration that comes with the request.

    Parameters
    ----------
    registry
        The curricula on which a declaration may build.
    """

    registry: Registry

    def answer(self, members: object) -> Answer:
        """Answer to the members of a request.

        Raises
        ------
        Problem
            If the request, the declaration or the cell cannot be used.
        """
        if type(members) is not dict:
            detail = (
                f"The body is {kind_of(members)}; it has to be an object with the members"
                ' "declaration" and "electrolyte".'
            )
            raise validation_problem([Fault((), "wrong-type", detail)])
        faults: list[Fault] = []
        note_unknown_fields(members, (), PREVIEW_FIELDS, faults, _OTHER_WORDS)
        declaration = _read_declaration(members, faults)
        of_cell = {name: value for name, value in members.items() if name in FIELDS and name != "curriculum"}
        try:
            request = read_prediction_request(of_cell | {"curriculum": "declared"})
        except Problem as problem:
            raise validation_problem([*faults, *problem.faults]) from None
        if faults:
            raise validation_problem(faults)
        curriculum = self._declared(declaration)
        try:
            prediction = prediction_document(predict_afresh(request.cell, curriculum), request.notations)
        except Unbalanced:
            raise  # never the sender's fault: it is answered as a failure of the service
        except IonwrightError as refusal:
            raise refused(refusal, members, "body") from refusal
        document = {"curriculum": describe(curriculum), "prediction": prediction}
        return Answer(200, orjson.dumps(document), (("Content-Type", JSON), ("Cache-Control", "no-store")))

    def _declared(self, declaration: str) -> Curriculum:
        try:
            return self.registry.declared(declaration, "declaration")
        except CurriculumFileFault as fault:
            faults = [
                Fault(_WHERE, fault.code, f"{path or 'The declaration'}: {text}.")
                for path, text in fault.faults[:MOST_FAULTS]
            ]
            number = len(fault.faults)
            told = "is 1 fault" if number == 1 else f"are {number} faults"
            detail = f"There {told} in the declaration. {faults[0].detail}"
            raise Problem(fault.code, detail, faults=faults) from fault


def _read_declaration(members: dict[str, Any], faults: list[Fault]) -> str:
    if "declaration" not in members:
        detail = 'Send the curriculum that is to be tried: "declaration" takes a text in TOML.'
        faults.append(Fault(_WHERE, "missing-field", detail))
        return ""
    value = members["declaration"]
    if type(value) is not str:
        faults.append(wrong_type(value, _WHERE, "a text in TOML", str(orjson.dumps(_EXAMPLE), "utf-8")))
    elif not value.strip():
        faults.append(Fault(_WHERE, "empty", '"declaration" has nothing in it; it takes a text in TOML.'))
    elif len(value) > LONGEST_DECLARATION:
        detail = f'"declaration" takes {LONGEST_DECLARATION} characters at most, and has {len(value)}.'
        faults.append(Fault(_WHERE, "too-long", detail))
    else:
        return value
    return ""
