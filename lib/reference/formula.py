"""A formula as the comments of the headers write it, as MathML that a browser shows without help.

    eta(d) = min(1, (d / saturation)^exponent)

Names stay what they are: a name of one letter may have an index (`a_c`, `s0`), a longer one is the name of a
parameter and keeps its underscore. `a b / c d` reads from the left, as in C++: a b over c, times d. Where words
stand among the factors, a slash with blanks stays a slash. What cannot be read raises Unreadable.
"""

from __future__ import annotations

import re
from html import escape

GREEK = {
    "pi": "π",
    "eta": "η",
    "rho": "ρ",
    "sigma": "σ",
    "phi": "φ",
    "lambda": "λ",
    "delta": "δ",
    "chi": "χ",
}
# Words of a sentence: beside them a slash is no fraction, as nobody knows how far it reaches.
WORDS = set(
        "after all are as at before below but by counted does each end everything fine for from half if in is"
    " known least limit long more no not now of off on or over per product so such sum than that the they this those"
    " to values whatever where with without".split()
)
SIGNS = {"<=": "≤", ">=": "≥", "*": "·", "-": "−", "x": "×", "integral": "∫"}
OPEN, CLOSE = {"(": ")", "[": "]", "|(": ")|"}, {")", "]", ")|"}

SPACE = '<mspace width="0.3em"/>'

TOKEN = re.compile(
    r"""(?P<space>\s+)
    |(?P<text>"[^"]*")
    |(?P<number>\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.]))
    |(?P<name>[A-Za-z]\w*(?:(?:::|\.)[A-Za-z]\w*)*(?:-[a-z]{2,})*(?:\(\))?)
    |(?P<star>\*(?=[\s)]*[-/)]|\s*$))
    |(?P<sign><=|>=|[-+*/^=<>|,;:%'()\[\]_])""",
    re.VERBOSE,
)


class Unreadable(ValueError):
    """No formula, or one that this does not know how to show."""


class Token:
    def __init__(self, kind: str, text: str, spaced: bool) -> None:
        self.kind, self.text, self.spaced = kind, text, spaced  # spaced: white space stands before it


def tokens(line: str) -> list[Token]:
    found, at, spaced = [], 0, False
    while at < len(line):
        match = TOKEN.match(line, at)
        if not match:
            raise Unreadable(f"{line[at:]!r} of {line!r}")
        at = match.end()
        if match.lastgroup == "space":
            spaced = True
            continue
        assert match.lastgroup
        text = match.group()
        # `S_(j-1)`: the underscore before an index in brackets is no part of the name.
        if match.lastgroup == "name" and text.endswith("_") and line[at : at + 1] == "(":
            found += [Token("name", text[:-1], spaced), Token("sign", "_", False)]
        else:
            if text == "|":  # with a blank on both sides it stands for "given that", else around a size
                before, after = spaced or not found, line[at : at + 1] in ("", " ")
                text = "|" if before and after else "|(" if not after and (before or found[-1].text in OPEN) else ")|"
            found.append(Token(match.lastgroup, text, spaced))
        spaced = False
    return found


def row(parts: list[str]) -> str:
    return parts[0] if len(parts) == 1 else f"<mrow>{''.join(parts)}</mrow>"


def leaf(token: Token) -> str:
    """A number or a name; an index only where the name itself is one letter."""
    if token.kind == "number":
        return f"<mn>{token.text}</mn>"
    if token.kind == "text":
        return f"<mtext>{escape(token.text[1:-1])}</mtext>"
    match = re.fullmatch(r"([A-Za-z]|chi)(?:_([A-Za-z]\w*)|(\d)(?:_(\w+))?)", token.text)
    if match and match[3] and (match[1] == "chi" or match[4]):
        power = f"<mn>{match[3]}</mn>"
        return f"<msubsup>{name(match[1])}{name(match[4] or '')}{power}</msubsup>" if match[4] else (
            f"<msup>{name(match[1])}{power}</msup>"
        )
    if match and match[3]:
        return f"<msub>{name(match[1])}<mn>{match[3]}</mn></msub>"
    if match and match[1] != "chi":
        return f"<msub>{name(match[1])}{name(match[2])}</msub>"
    return name(token.text)


def name(text: str) -> str:
    return f"<mi>{GREEK.get(text, escape(text))}</mi>"


def sign(text: str) -> str:
    return f"<mo>{escape(SIGNS.get(text, text))}</mo>"


def fraction(over: str, under: list[str]) -> str:
    return f"<mfrac>{over}{row(under)}</mfrac>"


def is_unit(number: Token, token: Token | None) -> bool:
    """Whether a name after a number is its unit. Seconds are counted whole: elsewhere `s` is a quantity."""
    if token is None or token.kind != "name":
        return False
    return token.text in ("um", "mm") or token.text == "s" and number.text.isdigit()


class Reader:
    """Reads tokens from the left. A term is what stands between two signs; its factors stand side by side."""

    def __init__(self, line: str) -> None:
        self.tokens, self.at = tokens(line), 0
        self.inside: dict[str, str] = {}  # of a bracket as it is shown, what stands in it

    def peek(self) -> Token | None:
        return self.tokens[self.at] if self.at < len(self.tokens) else None

    def take(self) -> Token:
        token = self.peek()
        if token is None:
            raise Unreadable("ends too early")
        self.at += 1
        return token

    def is_sign(self, *texts: str) -> bool:
        token = self.peek()
        return token is not None and token.kind == "sign" and token.text in texts

    def whole(self) -> str:
        parts = self.sequence()
        if self.peek() is not None:
            raise Unreadable(f"{self.take().text!r} too many")
        return row(parts)

    def sequence(self) -> list[str]:
        """Terms and the signs between them, up to a closing bracket."""
        parts: list[str] = []
        while (token := self.peek()) is not None and not self.is_sign(*CLOSE):
            if token.kind == "sign" and token.text in "+ - = < > <= >= , ; : | %".split():
                self.take()
                first = token.text == "-" and (not parts or parts[-1].startswith("<mo>"))
                parts += [SPACE] if token.text == "%" else []
                parts.append('<mo form="prefix">−</mo>' if first else sign(token.text))
                if token.text in ",;:%" and (after := self.peek()) and after.spaced:
                    parts.append(SPACE)
            elif self.is_times():
                self.take()
                parts.append(sign(token.text))
            else:
                parts += self.term()
        return parts

    def is_times(self) -> bool:
        """A star, or an x with white space around it that stands between two factors."""
        token = self.peek()
        if token is None or self.at == 0 or self.at + 1 == len(self.tokens):
            return False
        if token.kind == "sign" and token.text == "*":
            return True
        before, after = self.tokens[self.at - 1], self.tokens[self.at + 1]
        ends = before.kind != "sign" or before.text in CLOSE
        begins = after.kind != "sign" or after.text in OPEN
        return token.text == "x" and token.spaced and after.spaced and ends and begins

    def words_ahead(self) -> bool:
        """Whether a word stands in this term, outside all brackets."""
        depth = 0
        for token in self.tokens[self.at :]:
            if token.kind == "sign" and token.text in OPEN:
                depth += 1
            elif token.kind == "sign" and token.text in CLOSE:
                depth -= 1
                if depth < 0:
                    return False
            elif depth == 0 and token.kind == "sign" and token.text in "+ = < > <= >= , ; |".split():
                return False
            elif depth == 0 and token.kind == "name" and token.text in WORDS:
                return True
        return False

    def term(self) -> list[str]:
        words, factors = self.words_ahead(), [self.factor()]
        over, under = "", [""]  # of the fraction that ends the factors, if one does
        while (token := self.peek()) is not None:
            if token.kind == "sign" and token.text == "/":
                self.take()
                tight = not token.spaced
                divisor = self.factor()
                if words and not tight:
                    factors += [sign("/"), divisor]
                elif words:
                    factors[-1] = fraction(self.bare(factors[-1]), [self.bare(divisor)])
                elif over:  # a / b / c is a over b c
                    under += [sign("x") if divisor.startswith("<mn>") else SPACE, divisor]
                    factors = [fraction(over, under)]
                else:
                    over, under = self.bare(row(factors)), [divisor]
                    factors = [fraction(over, [self.bare(divisor)])]
            elif self.is_times() or token.kind == "sign" and token.text not in {*OPEN, "_"}:
                break
            else:
                over = ""
                factors += [SPACE, self.factor()] if token.spaced else [self.factor()]
        return factors

    def bare(self, shown: str) -> str:
        """Without round brackets around all of it: a bar, a root or the height says as much."""
        return self.inside.get(shown, shown)

    def bracket(self) -> str:
        opening = self.take()
        inner = self.sequence()
        closing = self.take()
        if closing.text != OPEN[opening.text]:
            raise Unreadable(f"{opening.text} ends with {closing.text}")
        left, right = (sign(one.text.strip("()") or one.text) for one in (opening, closing))
        shown = row([left, *inner, right])
        if opening.text == "(" and inner:
            self.inside[shown] = row(inner)
        return shown

    def argument(self) -> bool:
        """Whether a bracket follows at once, as it does after the name of a function."""
        token = self.peek()
        return token is not None and self.is_sign(*OPEN) and not token.spaced

    def factor(self) -> str:
        token = self.peek()
        if token is None:
            raise Unreadable("ends too early")
        if token.kind == "sign" and token.text == "-":  # after a slash or in a power
            self.take()
            return row(['<mo form="prefix">−</mo>', self.factor()])
        if token.kind == "sign" and token.text in OPEN:
            return self.scripts(self.bracket())
        if token.kind in ("sign", "star"):
            raise Unreadable(f"{token.text!r} where a factor belongs")
        self.take()
        if token.kind == "number" and is_unit(token, self.peek()):
            return row([leaf(token), SPACE, f"<mtext>{self.take().text}</mtext>"])
        if token.text == "sqrt" and self.argument():
            inner = self.bracket()
            return self.scripts(f"<msqrt>{self.bare(inner)}</msqrt>")
        if token.text == "integral":
            if (after := self.peek()) and after.text == "of":
                self.take()
            return sign("integral")
        shown = self.scripts(leaf(token))
        if token.kind == "name" and self.argument():
            shown = self.scripts(row([shown, self.bracket()]))
        return shown

    def scripts(self, base: str) -> str:
        """What stands at the foot and at the head of a factor."""
        foot, marks, power = "", "", ""
        while (token := self.peek()) is not None and not token.spaced:
            if self.is_sign("_"):
                self.take()
                foot = self.bare(self.bracket())
            elif self.is_sign("'"):
                self.take()
                marks += "<mo>′</mo>"
            elif token.kind == "star":
                self.take()
                marks += "<mo>∗</mo>"
            elif self.is_sign("^"):
                self.take()
                power = self.power()
            else:
                break
        head = row([part for part in (marks, power) if part]) if marks or power else ""
        if foot and head:
            return f"<msubsup>{base}{foot}{head}</msubsup>"
        if foot:
            return f"<msub>{base}{foot}</msub>"
        return f"<msup>{base}{head}</msup>" if head else base

    def power(self) -> str:
        minus = ""
        if self.is_sign("-"):
            self.take()
            minus = '<mo form="prefix">−</mo>'
        if self.is_sign(*OPEN):
            shown = self.bare(self.bracket())
        else:
            token = self.take()
            if token.kind not in ("name", "number"):
                raise Unreadable(f"{token.text!r} as a power")
            shown = leaf(token)
            if token.kind == "name" and self.argument():
                shown = row([shown, self.bracket()])
        return row([minus, shown]) if minus else shown


def pieces(line: str) -> list[str]:
    """The formulas of a line: two blanks after a comma or semicolon, outside all brackets, part them."""
    found, depth, begin = [], 0, 0
    for at, letter in enumerate(line):
        depth += (letter in "([") - (letter in ")]")
        if depth == 0 and letter in ",;" and line[at + 1 : at + 3] == "  ":
            found.append(line[begin : at + 1])
            begin = at + 1
    return [piece.strip() for piece in [*found, line[begin:]] if piece.strip()]


def unbroken(lines: list[str]) -> list[str]:
    """Lines, each with those that go on with its open brackets."""
    found: list[str] = []
    for line in lines:
        if found and sum(found[-1].count(c) for c in "([") > sum(found[-1].count(c) for c in ")]"):
            found[-1] += " " + line.strip()
        else:
            found.append(line.strip())
    return found


def is_formula(line: str) -> bool:
    return re.search(r"[=/^]|\bsqrt\(", line) is not None


def mathml(lines: list[str]) -> str:
    """A block of formulas as HTML on one line. Raises Unreadable where a line is none."""
    rows = []
    for line in unbroken(lines):
        if not is_formula(line):
            raise Unreadable(f"no formula: {line!r}")
        shown = [f'<math displaystyle="true">{Reader(piece).whole()}</math>' for piece in pieces(line)]
        rows.append(f"<div>{' '.join(shown)}</div>")
    return f'<div class="formula">{"".join(rows)}</div>'
