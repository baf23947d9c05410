# SPDX-License-Identifier: GPL-3.0-or-later
"""Finds the places where one small slip could stand in a C source: what tests/mutate.py tries.

A mutation is the text of one token, or of one statement, replaced by another. Comments, strings,
preconditions (g_return_if_fail, g_assert), names of types, sizes of arrays, how often a free name for a
file is tried, and the 1e-6 or less that keeps rounding out of a comparison are left alone: a slip there
is not a slip in what is computed. Neither are these made, which nobody could see: between measured
numbers < does not become <=, which only one double could tell, unless one is a zero that is written there,
for zero is how a figure says that it is not given or that there is nothing; nor where a loop over all kinds
asks first whether a set has the kind, for no set has one beyond the last; and the -1 and 1 that a comparison
for sorting returns do not become two, for only their sign is asked.
"""
import bisect
import dataclasses
import hashlib
import re

KINDS = ("sign", "arithmetic", "comparison", "constant", "unit", "boolean", "off by one", "dropped")

TOKEN = re.compile(
    r"""
    (?P<comment>/\*.*?\*/|//[^\n]*)
  | (?P<directive>^[ \t]*\#(?!\s*define\b)(?:\\\n|[^\n])*)
  | (?P<define>^[ \t]*\#\s*define[ \t]+\w+(?:\([^)\n]*\))?)
  | (?P<string>"(?:\\.|[^"\\\n])*")
  | (?P<char>'(?:\\.|[^'\\\n])*')
  | (?P<number>(?:0[xX][0-9a-fA-F]+|(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)[uUlLfF]*)
  | (?P<name>[A-Za-z_]\w*)
  | (?P<operator>->|\+\+|--|<<=|>>=|<<|>>|<=|>=|==|!=|&&|\|\||[-+*/%&|^]=|[-+*/%&|^!~<>=?:;,.(){}\[\]])
  | (?P<continued>\\\n)
    """,
    re.VERBOSE | re.DOTALL | re.MULTILINE,
)

PRECONDITION = re.compile(r"g_(?:return|assert|warn|test|abort)\w*|G_STATIC_ASSERT")
# Sizes set aside for text and lists, which grow when they must; allocations; shifts of flags.
SIZES = re.compile(r"\w*sized_new\w*|g_(?:new0?|renew|array_(?:sized_)?new|alloca|malloc0?|snprintf|strlcpy)|G_\w+|sizeof")
ENDS_OPERAND = re.compile(r"\w+$|[)\]]$|'$")
OPERATORS = {
    "arithmetic": {"+": "-", "-": "+", "*": "/", "/": "*", "%": "/", "*=": "/=", "/=": "*="},
    "sign": {"+=": "-=", "-=": "+="},
    "comparison": {"<": ">=", "<=": ">", ">": "<=", ">=": "<", "==": "!=", "!=": "=="},
    "boolean": {"&&": "||", "||": "&&"},
    "off by one": {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "++": "--"},
}
KEYWORDS = {"return", "case", "else", "in", "do"}
TYPES = re.compile(r"^(?:const|struct|enum|union|static|void|char|int|guint|gint|double|float|gsize|gboolean"
                   r"|g?u?int(?:8|16|32|64)|gconstpointer|gpointer|GError|G[A-Z]\w+|Bw[A-Z]\w*|[A-Z][a-z]\w*)$")


@dataclasses.dataclass(frozen=True)
class Token:
    kind: str
    text: str
    at: int


@dataclasses.dataclass(frozen=True)
class Mutation:
    path: str  # below the source root
    line: int
    kind: str
    place: str  # "code" in a function, "data" in a table, "define" in a macro
    at: int  # offset into the file
    before: str
    after: str
    line_before: str  # the whole line, or lines, without the indent
    line_after: str

    @property
    def key(self):
        text = "\0".join((self.path, str(self.at), self.before, self.after))
        return hashlib.sha1(text.encode()).hexdigest()[:12]

    def apply(self, text):
        assert text[self.at:self.at + len(self.before)] == self.before
        return text[:self.at] + self.after + text[self.at + len(self.before):]


def decimal(value):
    """VALUE to 12 digits, as C writes a double."""
    text = f"{value:.12g}"
    return text if re.search(r"[.e]", text) else text + ".0"


def number_after(text, kind, choose):
    """The number TEXT changed as a slip of KIND would change it, or None."""
    body = re.match(r"(.*?)([uUlLfF]*)$", text) if not text.lower().startswith("0x") else \
        re.match(r"(0[xX][0-9a-fA-F]+)([uUlL]*)$", text)
    digits, suffix = body[1], body[2]
    whole = re.fullmatch(r"0[xX][0-9a-fA-F]+|\d+", digits) is not None
    value = int(digits, 0 if not re.match(r"0\d", digits) else 10) if whole else float(digits)
    if kind == "off by one":
        if not whole:
            return None
        return f"{value + choose((-1, 1)) if value > 0 else 1}{suffix}"
    if kind == "unit":
        if abs(value) not in (1e3, 1e6, 1e9, 1e12, 1e-3, 1e-6, 1e-9, 1e-12, 100, 0.01, 10, 60):
            return None
        return f"{value * 10}{suffix}" if whole else decimal(value * choose((1e3, 1e-3, 10)))
    if whole and value < 2:
        return f"{1 - value}{suffix}"
    if whole:
        return f"{choose((value * 2, value + max(1, value // 10), value // 2))}{suffix}"
    return decimal(value * choose((1.1, 0.9, 1.5, 2.0, 0.5)) if value else 0.1)


class Source:
    """One file, cut into tokens, with what stands around each of them."""

    def __init__(self, path, text):
        self.path, self.text = path, text
        self.lines = [0] + [m.end() for m in re.finditer("\n", text)]
        self.tokens = [Token(m.lastgroup, m[0], m.start()) for m in TOKEN.finditer(text)
                       if m.lastgroup not in ("comment", "directive", "continued")]
        self.starts = [token.at for token in self.tokens]
        self.places = self.find_places()

    def find_places(self):
        """For each token: "code" (a function's body), "data" (an initialiser), "define" or ""."""
        places, stack, paren_calls, define_end, was_size = [], [], [], -1, False
        for i, token in enumerate(self.tokens):
            before = self.tokens[i - 1].text if i else ""
            if token.kind == "define":
                define_end = self.end_of_define(token)
                places.append("")
                continue
            if token.at < define_end:
                places.append("define" if not paren_calls else "")
                continue
            if token.text == "{":
                if stack:
                    stack.append(stack[-1])
                else:
                    stack.append("code" if before == ")" else "data" if before == "=" else "")
            elif token.text == "(":
                name = self.tokens[i - 1].text if i and self.tokens[i - 1].kind == "name" else ""
                paren_calls.append(bool(PRECONDITION.fullmatch(name) or SIZES.fullmatch(name)))
            elif token.text == "[":  # the second of two as the first
                paren_calls.append(was_size if before == "]" else self.is_declared_size(i, bool(stack)))
            place = stack[-1] if stack else "data" if before == "=" else ""
            places.append("" if any(paren_calls) else place)
            if token.text == "}" and stack:
                stack.pop()
            elif token.text in ")]" and paren_calls:
                was_size = paren_calls.pop()
        return places

    def end_of_define(self, token):
        end = re.compile(r"(?:\\\n|[^\n])*").match(self.text, token.at)
        return end.end()

    def is_declared_size(self, i, inside):
        """Whether the bracket at token I follows a name that is being declared."""
        if not inside:
            return True
        if i < 2 or self.tokens[i - 1].kind != "name":
            return False
        before = self.tokens[i - 2]
        return before.kind == "name" and before.text not in KEYWORDS or \
            before.text == "*" and bool(TYPES.match(self.tokens[i - 3].text))

    def line_of(self, at):
        return bisect.bisect_right(self.lines, at)

    def make(self, kind, at, before, after):
        i = bisect.bisect_right(self.starts, at) - 1
        start = self.text.rfind("\n", 0, at) + 1
        end = self.text.find("\n", at + len(before))
        end = len(self.text) if end < 0 else end
        line = self.text[start:end]
        changed = line[:at - start] + after + line[at - start + len(before):]
        return Mutation(self.path, self.line_of(at), kind, self.places[i], at, before, after,
                        " ".join(line.split()), " ".join(changed.split()))

    def is_binary(self, i):
        """Whether the operator at token I stands between two operands, and is not part of a type."""
        left, right = self.tokens[i - 1], self.tokens[i + 1]
        if not ENDS_OPERAND.search(left.text) or left.text in KEYWORDS:
            return False
        if self.tokens[i].text == "*":
            return not TYPES.match(left.text) and right.text not in "),;*" and \
                not (left.text == ")" and self.is_cast(i - 1))
        return not (left.text == ")" and self.is_cast(i - 1))

    def is_cast(self, i):
        """Whether the parenthesis that closes at token I holds a type alone."""
        depth = 0
        for j in range(i, -1, -1):
            depth += (self.tokens[j].text == ")") - (self.tokens[j].text == "(")
            if depth == 0:
                inside = self.tokens[j + 1:i]
                named = j > 0 and self.tokens[j - 1].kind == "name" and self.tokens[j - 1].text not in KEYWORDS
                return not named and bool(inside) and all(
                    t.text == "*" or t.kind == "name" and TYPES.match(t.text) for t in inside)
        return False

    def compares_measures(self, i):
        """Whether the comparison at token I is between numbers that are measured, not counted: there
        less and less or equal are the same but for one double among all. A zero that is written there is no
        measure: it asks whether a figure is given."""
        if self.is_zero(i + 1, i + 2) or self.is_zero(i - 1, i - 2):
            return False
        measured = re.compile(r"BW_\w+_OHM$|\w+_(?:s|v|va|hz|m|ohm|db|f|a|w|ire|deg|us|pp|tvl|share)$|f(?:abs|min|max)$|distance$"
                              r"|value$|off$|level$|margin$|ratio$|deviation$|G_PI$|.*[.e].*\d$|\d+\.\d*$")
        for step in (-1, 1):
            j, depth = i + step, 0
            while 0 <= j < len(self.tokens):
                text = self.tokens[j].text
                depth += step * ((text in "([") - (text in ")]"))
                if depth < 0 or depth == 0 and text in ("&&", "||", ";", ",", "?", ":", "{", "}"):
                    break
                if self.tokens[j].kind in ("name", "number") and measured.match(text):
                    return True
                j += step
        return False

    def is_zero(self, i, beyond):
        """Whether one side of a comparison is a zero and nothing more: the token at I, with BEYOND after it."""
        return self.tokens[i].text == "0" and \
            self.tokens[beyond].text in ("(", ")", ";", ",", "?", ":", "&&", "||", "return", "=")

    def walks_set(self, i):
        """Whether the < at token I ends a loop over all kinds, up to BW_N_..., whose first question is whether a
        set has the bit of the kind: no set has the bit beyond the last one, so that one step more does nothing."""
        texts = [t.text for t in self.tokens[i - 1:i + 40]]
        counter = texts[0]
        if texts[1] != "<" or not re.match(r"BW_N_", texts[2]) or texts[3:8] != [";", counter, "++", ")", "if"]:
            return False
        asked = texts.index("BW_BIT") if "BW_BIT" in texts else 0
        return asked > 0 and texts[asked - 1:asked + 4] == ["&", "BW_BIT", "(", counter, ")"] \
            and not {"[", ";", "{", "||", "?"} & set(texts[8:asked])

    def operator_mutations(self, i, token):
        binary = self.is_binary(i)
        if token.text in "+-*/" and (self.guards_rounding(i + 1) or token.text == "*" and self.guards_rounding(i - 1)):
            return
        if token.text in "+-*/%" and not binary:
            if token.text == "-":
                yield self.make("sign", token.at, "-", "")
            return
        for kind, table in OPERATORS.items():
            if kind == "off by one" and token.text in "<=>=" and (self.compares_measures(i) or self.walks_set(i)):
                continue
            if token.text in table and (binary or token.text in ("++",)):
                yield self.make(kind, token.at, token.text, table[token.text])
        if token.text == "!":
            yield self.make("boolean", token.at, "!", "")

    def guards_rounding(self, i):
        """Whether the number at token I only keeps rounding out of a comparison: 1e-6 and less, and
        no unit, which would be what something else is multiplied by."""
        if not re.fullmatch(r"1(?:\.0)?e-(?:[6-9]|1\d)", self.tokens[i].text):
            return False
        if re.fullmatch(r"same_\w+|slip", self.tokens[i - 2].text):
            return True
        unit = self.tokens[i - 1].text in ("*", "/", "=") or self.tokens[i + 1].text == "/"
        return not unit or self.places[i] == "define"

    def is_only_a_sign(self, i):
        """Whether the 1 at token I is one of what a comparison for sorting returns, "? -1 : 1", of which only
        the sign is asked."""
        texts = [t.text for t in self.tokens[max(i - 40, 0):i + 4]]
        at = min(i, 40)
        statement = texts[max((k for k in range(at) if texts[k] in (";", "{", "}", ")")), default=-1):at]
        first = texts[at - 2:at + 4] == ["?", "-", "1", ":", "1", ";"]
        second = texts[at - 4:at + 2] == ["?", "-", "1", ":", "1", ";"]
        return (first or second) and "return" in statement

    def number_mutations(self, i, token, place, choose):
        if place == "define" and self.tokens_on_line_say_size(token):
            return
        for kind in ("constant", "unit", "off by one"):
            after = number_after(token.text, kind, choose)
            if after == "2" and self.is_only_a_sign(i):
                continue
            if after is not None and after != token.text:
                yield self.make(kind, token.at, token.text, after)

    def tokens_on_line_say_size(self, token):
        line = self.text[self.text.rfind("\n", 0, token.at) + 1:token.at]
        return re.search(r"define\s+(?:\w*(?:_N_|_BITS|_BYTES|_SIZE)\w*|TRIES)\s", line) is not None

    def dropped_statement(self, i):
        """The statement that begins at token I, if it assigns and can be left out."""
        start, has_set, depth = self.tokens[i], False, 0
        for j in range(i, len(self.tokens)):
            text = self.tokens[j].text
            if text in "{}" or self.tokens[j].kind in ("define",):
                return None
            depth += (text in "([") - (text in ")]")
            if depth == 0 and re.fullmatch(r"[-+*/|&^]?=", text):
                # Two names before it, or a type with a star, are a declaration.
                words = self.tokens[i:j]
                if len(words) > 1 and words[0].kind == "name" and (
                        words[1].kind == "name" or words[1].text == "*"
                        or words[0].text in ("g_autoptr", "g_auto", "g_autofree")):
                    return None
                has_set = True
            if depth == 0 and text == ";":
                end = self.tokens[j].at
                return (start.at, self.text[start.at:end]) if has_set else None
        return None

    def mutations(self, choose):
        starts = False
        for i, token in enumerate(self.tokens):
            place = self.places[i]
            if place and 0 < i < len(self.tokens) - 1:
                if token.kind == "operator":
                    yield from self.operator_mutations(i, token)
                elif token.kind == "number" and not self.guards_rounding(i):
                    yield from self.number_mutations(i, token, place, choose)
                elif token.text in ("TRUE", "FALSE"):
                    after = "FALSE" if token.text == "TRUE" else "TRUE"
                    yield self.make("boolean", token.at, token.text, after)
                elif token.text == "fabs" and self.tokens[i + 1].text == "(":
                    yield self.make("sign", token.at, "fabs", "")
                if starts and place == "code" and (token.kind == "name" or token.text == "*"):
                    found = self.dropped_statement(i)
                    if found is not None:
                        yield self.make("dropped", found[0], found[1], "")
            starts = token.text in (";", "{", "}")


def find_mutations(path, text, choose):
    """All mutations of the file PATH with the contents TEXT; CHOOSE picks one of a list."""
    return list(Source(path, text).mutations(choose))
