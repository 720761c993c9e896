"""Every kind of problem that the service answers with: code, status, title, and what it means."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ProblemKind:
    """A kind of problem; the code is stable, the title and the meaning are for people."""

    code: str
    status: int
    title: str
    meaning: str


_KINDS = (
    # --- the request as such
    ProblemKind(
        "malformed-json",
        400,
        "The body is not JSON",
        "The body could not be read as JSON. The position says where reading stopped, counted in"
        " characters from 0. NaN and Infinity, comments, single quotes and trailing commas are not JSON.",
    ),
    ProblemKind(
        "bad-request",
        400,
        "The request cannot be read",
        "The request breaks a rule of HTTP, so that its parts cannot be told apart. Send it again with an"
        " ordinary client library.",
    ),
    ProblemKind(
        "not-found",
        404,
        "There is nothing at this address",
        "No resource has this address. The addresses are listed in /openapi.json and on the page /docs.",
    ),
    ProblemKind(
        "method-not-allowed",
        405,
        "The method does not fit the address",
        "The address exists, but not for this method. The header Allow lists the methods that do.",
    ),
    ProblemKind(
        "content-too-large",
        413,
        "The body is too long",
        "The body is longer than this service reads. Send the cells in several smaller requests.",
    ),
    ProblemKind(
        "unsupported-media-type",
        415,
        "The media type is not one that is read here",
        "The header Content-Type says which form the body has. Predictions are read as application/json,"
        " batches also as application/jsonl or application/x-ndjson, always in UTF-8 and not compressed.",
    ),
    ProblemKind(
        "validation-error",
        422,
        "The fields are not as they must be",
        "A field is missing, unknown, of the wrong type or out of range. Each error names its field and says"
        " what would be right.",
    ),
    ProblemKind(
        "internal-error",
        500,
        "The service failed",
        "Something went wrong inside the service; the request may well be right. The operator finds the"
        " incident number in the log.",
    ),
    ProblemKind(
        "no-curriculum",
        503,
        "No curriculum is loaded",
        "The service runs, but every curriculum was set aside or left out, so that it cannot answer. The"
        " member set_aside says why.",
    ),
    # --- cells that cannot be answered, in the order in which they are checked
    ProblemKind(
        "unreadable-formula",
        422,
        "The formula cannot be read",
        "The text is neither a formula nor a name that the tables know. The position points at the character"
        " where reading stopped.",
    ),
    ProblemKind(
        "unknown-element",
        422,
        "There is no such element",
        "A symbol in the formula is not that of an element. Symbols have a capital letter first: Co is"
        " cobalt, CO is carbon monoxide.",
    ),
    ProblemKind(
        "unknown-substance",
        422,
        "The substance is not known",
        "The text reads well, but the tables hold no such substance or ion. The remedy offers names that look"
        " alike.",
    ),
    ProblemKind(
        "charges-do-not-cancel",
        422,
        "The charges do not cancel",
        "The ions in the formula do not add up to a neutral substance: sodium chloride is NaCl, not NaCl2.",
    ),
    ProblemKind(
        "does-not-exist",
        422,
        "This substance does not exist",
        "The charges cancel, but no such substance can be had: its ions react with each other or with water.",
    ),
    ProblemKind(
        "insoluble",
        422,
        "The substance does not dissolve",
        "Too little dissolves in water to carry a current. Many such substances conduct when molten.",
    ),
    ProblemKind(
        "precipitates",
        422,
        "The solutions make a precipitate",
        "The substances dissolve singly, but together their ions form a solid that falls out.",
    ),
    ProblemKind(
        "non-electrolyte",
        422,
        "The substance does not conduct",
        "The substance dissolves as whole molecules, so that there are no ions to carry a current.",
    ),
    ProblemKind(
        "ions-cannot-move",
        422,
        "The ions cannot move",
        "A solid ionic substance holds its ions in place. Melt it or dissolve it in water.",
    ),
    ProblemKind(
        "decomposes-before-melting",
        422,
        "The substance decomposes before it melts",
        "Heat breaks the substance down before it becomes liquid, so that there is no melt to electrolyse.",
    ),
    ProblemKind(
        "molecular-melt",
        422,
        "The melt holds no ions",
        "The substance melts to molecules, which carry no charge. It may conduct when dissolved in water.",
    ),
    ProblemKind(
        "no-melt-of-water",
        422,
        "Water has no melt of this kind",
        "Pure water hardly conducts and is not electrolysed as a melt. Add an electrolyte such as dilute"
        " sulfuric acid.",
    ),
    ProblemKind(
        "not-an-electrolyte",
        422,
        "This is not an electrolyte",
        "The substance is an element, a metal or something else that gives no ions to a solution or a melt.",
    ),
    ProblemKind(
        "unknown-electrode",
        422,
        "The electrode is not known",
        "The tables hold no such electrode. GET /v1/electrodes lists those that are known.",
    ),
    ProblemKind(
        "non-conducting-electrode",
        422,
        "The electrode does not conduct",
        "An electrode has to carry electrons: take a metal or graphite.",
    ),
    ProblemKind(
        "electrode-reacts",
        422,
        "The electrode reacts by itself",
        "The electrode reacts with the electrolyte, or melts in it, before any current flows.",
    ),
    ProblemKind(
        "alternating-supply",
        422,
        "The supply alternates",
        "With alternating current each electrode is cathode and anode in turn, so that nothing is separated."
        " Electrolysis needs a direct current.",
    ),
    ProblemKind(
        "bad-concentration",
        422,
        "The concentration cannot be used",
        "The concentration is not a quantity with a fitting unit, or not one that a solution can have. Write"
        ' "0.25 mol/dm3", "10 g/dm3", "dilute" or "concentrated".',
    ),
    ProblemKind(
        "too-many-substances",
        422,
        "Too many substances",
        "A mixture may hold a few substances only. Leave out those that play no part.",
    ),
    ProblemKind(
        "unreadable-quantity",
        422,
        "The quantity cannot be read",
        'A quantity is a number and its unit, such as "25 degC" or "20 mA/cm2".',
    ),
    ProblemKind(
        "wrong-dimension",
        422,
        "The unit does not fit",
        "The unit measures something else than the field: a temperature is in degC or K, a current density in"
        " mA/cm2.",
    ),
    ProblemKind(
        "below-absolute-zero",
        422,
        "The temperature is below absolute zero",
        "Nothing is colder than 0 K, which is -273.15 degC.",
    ),
    ProblemKind(
        "out-of-range",
        422,
        "The value is out of range",
        "The number reads well, but the field or the cell cannot have it. The detail says what it can have.",
    ),
    ProblemKind(
        "unknown-curriculum",
        422,
        "The curriculum is not known",
        "No curriculum with this id is loaded. GET /v1/curricula lists those that are.",
    ),
    # --- questions against which no answer can be marked
    ProblemKind(
        "expectation-missing",
        422,
        "No half-equation is expected",
        "A question needs a cell with an electrode, or at least one half-equation that is right.",
    ),
    ProblemKind(
        "expectation-unbalanced",
        422,
        "The expected half-equation does not balance",
        "The half-equation that answers are to be compared with has different atoms or charges on its sides.",
    ),
    ProblemKind(
        "expectation-without-electrons",
        422,
        "The expected line is no half-equation",
        "The line that answers are to be compared with holds no electrons. Write what happens at one electrode.",
    ),
    ProblemKind(
        "expectation-undecided",
        422,
        "The course does not decide this electrode",
        "The rules of the curriculum do not say what happens at the electrode, so no answer can be marked against"
        " them. Choose another curriculum, or give the half-equation that you expect.",
    ),
    # --- equations that cannot be balanced or combined
    ProblemKind(
        "no-solution",
        422,
        "The equation cannot be balanced",
        "No numbers in front of these species make all elements and the charge agree. The detail names what cannot"
        " agree: mostly a species is forgotten, stands on the wrong side, or has a slip in its formula.",
    ),
    ProblemKind(
        "several-solutions",
        422,
        "The equation balances in several ways",
        "With these species, several equations balance that are no multiples of each other. The member basis shows"
        " simple ones, and the detail says what would settle which one is meant.",
    ),
    ProblemKind(
        "not-balanced",
        422,
        "The half-equation does not balance",
        "Half-equations are added only if atoms and charge agree in each of them. Balance it first.",
    ),
    ProblemKind(
        "no-electrons",
        422,
        "There are no electrons in it",
        "A half-equation holds electrons: on the left of a reduction, on the right of an oxidation.",
    ),
    ProblemKind(
        "both-oxidations",
        422,
        "Both half-equations are oxidations",
        "Both release electrons, and nothing takes them up. One of the two has to be a reduction.",
    ),
    ProblemKind(
        "both-reductions",
        422,
        "Both half-equations are reductions",
        "Both take electrons up, and nothing releases them. One of the two has to be an oxidation.",
    ),
    ProblemKind(
        "wrong-way-round",
        422,
        "The half-equations are exchanged",
        "What was given as the oxidation takes electrons up, and what was given as the reduction releases them.",
    ),
    # --- tasks about amounts that cannot be worked out
    ProblemKind(
        "unknown-quantity",
        422,
        "There is no such quantity",
        'Quantities are named by words such as current, time, mass or thickness; "mass of Ni in mg" also says of what'
        " and in which unit. The remedy offers the name that was probably meant.",
    ),
    ProblemKind(
        "ambiguous-number",
        422,
        "The number can be read in two ways",
        "A comma or a point may part thousands or decimals. Write 1500 or 1.500, and 96 500 with a space.",
    ),
    ProblemKind(
        "not-finite",
        422,
        "The number is not finite",
        "A quantity has to be a number that can be written down; infinity and NaN are none.",
    ),
    ProblemKind(
        "absurd-magnitude",
        422,
        "The value is far too large or too small",
        "No electrolysis has such a value. Mostly a prefix of the unit or a power of ten has slipped.",
    ),
    ProblemKind(
        "negative-quantity",
        422,
        "The quantity cannot be negative",
        "Give it without a sign: the half-equation says what is used up and what is formed.",
    ),
    ProblemKind(
        "zero-quantity",
        422,
        "The quantity cannot be zero",
        "With a zero here nothing would happen. Give a value above zero, or leave it out and ask for it.",
    ),
    ProblemKind(
        "bad-electron-count",
        422,
        "The number of electrons cannot be",
        "The charge of an ion, and with it the number of electrons, is a whole number of at least 1.",
    ),
    ProblemKind(
        "below-vapour-pressure",
        422,
        "The pressure is below the vapour pressure of water",
        "A gas over water shares its pressure with water vapour. At this temperature the vapour alone needs as much"
        " as there is, so that the water would boil.",
    ),
    ProblemKind(
        "not-in-task",
        422,
        "There is no such thing in this task",
        "A quantity names a substance or a process that does not run in this task, or one that cannot have such a"
        " quantity. The remedy lists those that are there.",
    ),
    ProblemKind(
        "needs-more",
        422,
        "More has to be known",
        "What is asked for does not follow from what is given, or it is not clear what it belongs to. The remedy names"
        " what would be enough, or what there is to choose from.",
    ),
    ProblemKind(
        "contradictory",
        422,
        "The figures do not go together",
        "More is given than needed and it does not agree, or something impossible follows from it: a current"
        " efficiency above 100%, more taken from a bath than it holds. The detail names the quantities at odds.",
    ),
    ProblemKind(
        "not-formed",
        422,
        "The cell does not give that",
        "What should be seen does not form in this cell under this curriculum. The remedy names what does.",
    ),
    ProblemKind(
        "bad-curriculum",
        422,
        "The declaration cannot be used",
        "A declaration of a curriculum that was sent with the request has faults. Each error names the key and what"
        " would be right there.",
    ),
    # --- faults of an installed curriculum, which its maintainers have to mend
    ProblemKind(
        "impossible-choice",
        500,
        "The curriculum is at fault",
        "A rule of the curriculum chose a process that cannot run in this cell. Tell those who maintain the"
        " curriculum; the others still answer.",
    ),
    ProblemKind(
        "rule-failed",
        500,
        "The curriculum is at fault",
        "A rule of the curriculum raised an error, took too long, changed what it was shown, or returned what is no"
        " ruling. Tell those who maintain the curriculum; the others still answer.",
    ),
    ProblemKind(
        "no-decision",
        500,
        "The curriculum is at fault",
        "The rules of the curriculum came to no decision and did not say that the cell is out of their reach."
        " Tell those who maintain the curriculum; the others still answer.",
    ),
)

PROBLEM_KINDS = {kind.code: kind for kind in _KINDS}

FAULT_KINDS = {
    "missing-field": "A field that must be there is not.",
    "unknown-field": "A field has a name that the operation does not know.",
    "wrong-type": "A value is of another JSON type than the field takes.",
    "empty": "A text or a list has nothing in it.",
    "too-long": "A text is longer than the field takes.",
    "too-many": "A list has more members than the field takes.",
    "not-a-choice": "A word is not one of those that the field takes.",
    "bad-number": "A query parameter is not a number in digits.",
    "unwanted-character": "A text holds a control character or half of a character.",
    "repeated": "A query parameter or a name that is taken once was given more than once.",
    "line-too-long": "A line of a JSON Lines batch is longer than this service reads.",
}
