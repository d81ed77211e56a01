"""A group of keys as a table: each key with what it means, what happens if it is left out, and examples."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup, escape

from tinbook.facts import Facts
from tinbook.models import Written
from tinbook.models.a_form import WrittenForm
from tinbook.models.keys import KeyWords, keys_of, lead_of
from tinbook.models.written_forms import form_of
from tinbook.pages.reference.examples import WholeFile
from tinbook.pages.reference.known import known_words, usual_figure
from tinbook.pages.reference.words import ADDRESSES, NEEDED, title_of

Away = Mapping[type[Written], str]
NOT_AWAY: Away = {}
CODE = re.compile(r"`([^`]+)`")


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyRow:
    """A row: the key, how its value is written (a form, or a group with a section of its own), words and examples."""

    anchor: str
    name: str
    form: WrittenForm | None
    group: str
    group_page: str
    group_name: str
    meaning: Markup
    choices: tuple[str, ...]
    left_out: Markup
    examples: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyGroup:
    """A section: its heading and anchor, what it is about, its rows, and a whole file or two before them."""

    title: str
    anchor: str
    lead: Markup
    rows: tuple[KeyRow, ...]
    wholes: tuple[WholeFile, ...] = ()

    @property
    def label(self) -> str:
        """What the table is called."""
        return f"Keys: {self.title}"


def coded(text: str) -> Markup:
    """Plain words, with anything between backticks shown as typed."""
    return Markup(CODE.sub(r"<code>\1</code>", str(escape(text))))


def slug(words: str) -> str:
    """Words as an anchor; for the heading of a group, its own."""
    return ADDRESSES.get(words) or "-".join(re.findall(r"[a-z0-9]+", words.lower()))


def key_group(
    model: type[Written],
    facts: Facts,
    *,
    own: bool = False,
    wholes: tuple[WholeFile, ...] = (),
    more: str = "",
    away: Away = NOT_AWAY,
) -> KeyGroup:
    """The section of a model; `own`: only the keys it does not inherit. `more` is added about it,
    and `away` are the groups that are on another page, with its address."""
    title = title_of(model)
    anchor = slug(title)
    keys = sorted(keys_of(model, own=True), key=lambda key: not key.required) if own else keys_of(model)
    return KeyGroup(
        title=title,
        anchor=anchor,
        lead=coded(" ".join(each for each in (lead_of(model), more) if each)),
        rows=tuple(_row(model, key, anchor, facts, away) for key in keys),
        wholes=wholes,
    )


def _row(model: type[Written], key: KeyWords, anchor: str, facts: Facts, away: Away) -> KeyRow:
    name = title_of(key.inside) if key.inside else ""
    return KeyRow(
        anchor=f"{anchor}-{slug(key.name)}",
        name=key.name,
        form=form_of(key),
        group=slug(name),
        group_page=away.get(key.inside, "") if key.inside else "",
        group_name=f"{name[:1].lower()}{name[1:]}",
        meaning=coded(key.meaning),
        choices=known_words(model, key, facts),
        left_out=_left_out(model, key, facts),
        examples=key.written,
    )


def _left_out(model: type[Written], key: KeyWords, facts: Facts) -> Markup:
    """What happens if it is left out; for a key that has to be there, that it has to."""
    if key.required:
        return Markup("<b>{}</b>").format(NEEDED)
    if key.default:
        return Markup("<code>{}</code>").format(key.default)
    figure = usual_figure(model, key, facts)
    words = f"{key.left_out.removesuffix('.')}, {figure}." if figure else key.left_out
    return coded(f"{words[:1].upper()}{words[1:]}")
