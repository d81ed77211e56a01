"""Drawings: SVG read safely and rewritten from a list of what a drawing may hold.

Anything that acts, loads or leads elsewhere is refused by name. Anything not seen is dropped: hidden layers, titles,
and the notes, names and file paths that drawing programs leave behind. Lettering is set in the book's own typeface.
Elements and attributes: Scalable Vector Graphics 2, W3C Candidate Recommendation, https://www.w3.org/TR/SVG2/
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator, Mapping
from xml.etree.ElementTree import Element, ParseError

from markupsafe import escape

from tinbook.loading.files import Unfit
from tinbook.models import PictureFile

LARGEST_BYTES = 1_000_000
DEEPEST = 40
MOST_DRAWN = 50_000
"""Elements in a drawing, counting repeats of `use`: more would hold up a tablet."""

SVG, XHTML = "http://www.w3.org/2000/svg", "http://www.w3.org/1999/xhtml"


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


SHAPES = _set("path circle ellipse rect line polyline polygon text use")
WORDS = _set("text tspan textPath")
ELEMENTS = SHAPES | WORDS | _set("svg g defs symbol clipPath mask pattern linearGradient radialGradient stop marker")
UNSEEN = _set("metadata title desc")
PAINT = _set(
    """fill fill-opacity fill-rule stroke stroke-dasharray stroke-dashoffset stroke-linecap stroke-linejoin
    stroke-miterlimit stroke-opacity stroke-width color opacity clip-path clip-rule mask marker-start marker-mid
    marker-end stop-color stop-opacity vector-effect paint-order shape-rendering font-size font-style font-weight
    letter-spacing word-spacing text-anchor dominant-baseline baseline-shift text-decoration display visibility
    overflow"""
)
"""What may be an attribute or a style declaration."""
ATTRIBUTES = PAINT | _set(
    """x y x1 x2 y1 y2 cx cy r rx ry fx fy fr width height d points dx dy rotate pathLength offset viewBox
    preserveAspectRatio transform gradientTransform patternTransform gradientUnits patternUnits patternContentUnits
    clipPathUnits maskUnits maskContentUnits spreadMethod markerWidth markerHeight markerUnits refX refY orient
    lengthAdjust textLength startOffset"""
)
REFUSED = {
    "script": ("it contains a script", "save it as a plain drawing, without script"),
    "foreignObject": ("it contains a piece of a web page", "save its lettering as text, then save it again"),
    "image": ("it contains a photo", "save the photo by itself as .jpg and name both files"),
    "a": ("it contains a link", "take the link off the shape, then save it again"),
    "style": ("it contains a style sheet", 'save it with its styles as attributes ("presentation attributes")'),
    **dict.fromkeys(("animate", "animateMotion", "animateTransform", "set"), ("it moves", "save it without animation")),
    **dict.fromkeys(
        ("iframe", "embed", "object", "audio", "video", "canvas"),
        ("it contains a piece of a web page", "take that out, then save it again"),
    ),
}

URL = re.compile(r"url\(\s*(['\"]?)#([\w.:-]+)\1\s*\)", re.IGNORECASE)
FUNCTION = re.compile(r"([\w-]+)\s*\(")
FUNCTIONS = _set("rgb rgba hsl hsla matrix translate scale rotate skewx skewy")
VALUE = re.compile(r"[\w\s.,%#()+'\"/-]*")
COLOUR = re.compile(r' (?:fill|stroke|stop-color|color)="(?!none"|currentColor"|inherit"|url)')
LENGTH = re.compile(r"\s*(\d+(?:\.\d*)?|\.\d+)\s*(px|pt|pc|mm|cm|in)?\s*")
# CSS Values and Units Module Level 3: 96 px to the inch, 72 pt, 6 pc, 25.4 mm; https://www.w3.org/TR/css-values-3/
PX = {"": 1.0, "px": 1.0, "in": 96.0, "pt": 96 / 72, "pc": 16.0, "mm": 96 / 25.4, "cm": 960 / 25.4}


def read_drawing(raw: bytes, file: str, slug: str) -> PictureFile:
    """A drawing of allowed parts only. Raises Unfit for one that holds anything else, or cannot be read."""
    if len(raw) > LARGEST_BYTES:
        raise Unfit("too large", "the drawing is larger than 1 MB", "simplify its lines, or save it as .png")
    root = _root(raw)
    for depth, element in _walk(root):
        if depth > DEEPEST:
            raise Unfit("drawing", "its groups are nested too deeply", "ungroup the drawing, then save it again")
        _look_at(element)
    if not any(_name(element) in SHAPES for _, element in _walk(root)):
        raise Unfit("drawing", "there is nothing drawn in it", "save the whole drawing again")
    _count_repeats(root)
    box, width, height = _size(root)
    prefix = f"tb-{slug}-{hashlib.sha256(raw).hexdigest()[:6]}-"
    names = {name: f"{prefix}{number}" for number, name in enumerate(_referred(root))}
    inner = "".join(_written(child, names) for child in root)
    paint = {name: value for name, value in _attributes(root, names).items() if name in PAINT}
    own = {"xmlns": SVG, "viewBox": box, "width": f"{width:g}", "height": f"{height:g}", **paint}
    svg = f"<svg{_spelled(own)}>{inner}</svg>"
    return PictureFile(
        file=file,
        kind="drawing",
        width=width,
        height=height,
        svg=svg,
        prefix=prefix,
        inked="fill" in paint and not COLOUR.search(svg),
    )


def _root(raw: bytes) -> Element:
    from defusedxml import DefusedXmlException
    from defusedxml.ElementTree import fromstring

    hint = 'open it in a drawing program and save it again as "plain SVG"'
    if b"<?xml-stylesheet" in raw:
        raise Unfit("drawing", *REFUSED["style"])
    try:
        root: Element = fromstring(raw)
    except DefusedXmlException:
        message = "it defines short forms (entities), which could be used to fill up the memory"
        raise Unfit("drawing", message, hint) from None
    except (ParseError, ValueError, LookupError):
        raise Unfit("unreadable", "the drawing is damaged, or not SVG at all", hint) from None
    if _name(root) != "svg":
        raise Unfit("unreadable", "the file is not an SVG drawing", hint)
    return root


def _walk(root: Element) -> Iterator[tuple[int, Element]]:
    """Every element with its depth."""
    waiting = [(0, root)]
    while waiting:
        depth, element = waiting.pop()
        yield depth, element
        waiting += [(depth + 1, child) for child in reversed(element)]


def _split(name: str) -> tuple[str, str]:
    """Namespace and bare name."""
    space, _, bare = name.rpartition("}")
    return space.removeprefix("{"), bare


def _name(element: Element) -> str:
    """The bare name of an SVG element, otherwise nothing: another program's note."""
    space, bare = _split(element.tag)
    return bare if space in ("", SVG) else ""


def _look_at(element: Element) -> None:
    """Raise Unfit for an element that acts, loads or leads elsewhere, or does not belong in a drawing."""
    space, bare = _split(element.tag)
    if space == XHTML:
        raise Unfit("drawing", *REFUSED["foreignObject"])
    if space not in ("", SVG):
        return
    told = {name.lower(): why for name, why in REFUSED.items()}.get(bare.lower())
    if told:
        raise Unfit("drawing", *told)
    if bare not in ELEMENTS | UNSEEN:
        message = f'it contains "{bare[:30]}", which the book does not allow in a drawing'
        raise Unfit("drawing", message, 'save it as "plain SVG" without effects')
    for name, value in element.attrib.items():
        _look_at_attribute(_split(name)[1], value)


def _look_at_attribute(name: str, value: str) -> None:
    if name.lower().startswith("on"):
        message = f'it does something when it is touched ("{name[:30]}")'
        raise Unfit("drawing", message, "save it as a plain drawing, without script")
    outside = Unfit("drawing", "it points to something outside itself", "copy that into the drawing itself")
    if name.lower() in ("href", "src") and not re.fullmatch(r"\s*(#[\w.:-]+\s*)?", value):
        raise outside
    if name in ATTRIBUTES or name == "style":
        # Colours and rotations take arguments too; anything else with brackets loads something.
        called = FUNCTION.findall(URL.sub("", value).lower())
        if set(called) - FUNCTIONS:
            raise outside


def _href(element: Element) -> str:
    """What an element refers to within its own drawing, without the #."""
    return next((value for name, value in element.attrib.items() if _split(name)[1] == "href"), "").strip()[1:]


def _referred(root: Element) -> dict[str, None]:
    """The names that something in the drawing refers to, in order; all others are a drawing program's own labels."""
    found: dict[str, None] = {}
    for _, element in _walk(root):
        found |= {_href(element): None} if _href(element) else {}
        found |= {name: None for value in element.attrib.values() for _, name in URL.findall(value)}
    return found


def _count_repeats(root: Element) -> None:
    """Raise Unfit if `use` repeats itself, or repeats more than can be drawn."""
    named = {element.get("id"): element for _, element in _walk(root) if element.get("id")}
    known: dict[str, int] = {}

    def drawn(element: Element, inside: tuple[str, ...]) -> int:
        total = 0
        for _, each in _walk(element):
            total += 1
            target = _href(each)
            if _name(each) != "use" or target not in named:
                continue
            if target in inside or len(inside) > DEEPEST:
                raise Unfit("drawing", "a shape in it repeats itself for ever", "save it again without clones")
            if target not in known:
                known[target] = drawn(named[target], (*inside, target))
            total += known[target]
        if total > MOST_DRAWN:
            raise Unfit("too large", f"it draws more than {MOST_DRAWN:,} shapes", "simplify it, or save it as .png")
        return total

    drawn(root, ())


def _size(root: Element) -> tuple[str, float, float]:
    """View box, width and height in px."""
    sides = [_px(root.get(side, "")) for side in ("width", "height")]
    box = re.split(r"[\s,]+", root.get("viewBox", "").strip())
    try:
        left, top, wide, high = map(float, box)
    except ValueError:
        left, top, wide, high = 0.0, 0.0, *(side or 0.0 for side in sides)
    if not (0 < wide < 1e6 and 0 < high < 1e6 and abs(left) < 1e6 and abs(top) < 1e6):
        raise Unfit("drawing", "the drawing does not say how large it is", "save it again with its page size")
    width, height = (side if side and side < 1e6 else length for side, length in zip(sides, (wide, high), strict=True))
    return f"{left:g} {top:g} {wide:g} {high:g}", width, height


def _px(length: str) -> float | None:
    """A length in px; None if there is none, or it depends on the page."""
    found = LENGTH.fullmatch(length)
    return float(found[1]) * PX[found[2] or ""] if found else None


def _written(element: Element, names: Mapping[str, str]) -> str:
    """An element and everything in it, as text; empty for anything not seen."""
    name, attributes = _name(element), _attributes(element, names)
    if name not in ELEMENTS or attributes.get("display") == "none":
        return ""
    if attributes.get("visibility") in ("hidden", "collapse"):
        return ""
    words = name in WORDS
    inner = str(escape(element.text or "")) if words else ""
    for child in element:
        inner += _written(child, names) + (str(escape(child.tail or "")) if words else "")
    return f"<{name}{_spelled(attributes)}>{inner}</{name}>"


def _attributes(element: Element, names: Mapping[str, str]) -> dict[str, str]:
    """The allowed attributes of an element; a style is split into the attributes it stands for.

    `names` gives whatever is referred to a name no other drawing on the page has.
    """
    found: dict[str, str] = {}
    for name, value in element.attrib.items():
        space, bare = _split(name)
        if bare in ATTRIBUTES and not space:
            found[bare] = value
    for declaration in element.get("style", "").split(";"):
        bare, _, value = declaration.partition(":")
        if bare.strip() in PAINT:
            found[bare.strip()] = value.replace("!important", "").strip()
    sound = {name: value for name, value in found.items() if VALUE.fullmatch(URL.sub("", value))}
    own = {name: URL.sub(lambda ref: f"url(#{names[ref[2]]})", value) for name, value in sound.items()}
    if element.get("id") in names:
        own["id"] = names[element.get("id", "")]
    if _href(element):
        own["href"] = f"#{names[_href(element)]}"
    if element.get("{http://www.w3.org/XML/1998/namespace}space") == "preserve":
        own["xml:space"] = "preserve"
    return own


def _spelled(attributes: Mapping[str, str]) -> str:
    return "".join(f' {name}="{escape(value)}"' for name, value in attributes.items())
