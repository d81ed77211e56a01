"""Drawings: what is drawn stays, what acts or leads elsewhere is refused, what is not seen is gone."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.loading.drawings import ATTRIBUTES, ELEMENTS, read_drawing
from tinbook.loading.files import Unfit
from tinbook.models import PictureFile

DEMO = sorted((Path(__file__).parents[2] / "recipes" / "pictures").glob("*.svg"))
NAMESPACES = (
    'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
    'xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" xmlns:h="http://www.w3.org/1999/xhtml"'
)
HULL = '<path d="M0 0h9v9z"/>'
SVG = "{http://www.w3.org/2000/svg}"


def drawn(inner: str, root: str = 'viewBox="0 0 90 60"', head: str = "") -> PictureFile:
    return read_drawing(f"{head}<svg {NAMESPACES} {root}>{inner}</svg>".encode(), "hull.svg", "hull")


def refusal(inner: str, head: str = "") -> str:
    with pytest.raises(Unfit) as found:
        drawn(inner, head=head)
    assert found.value.hint and len(found.value.message) <= 90
    return found.value.message


REFUSED = {
    "script": ("<script>alert(1)</script>", "it contains a script"),
    "script of another program's namespace within": ("<inkscape:x><script/></inkscape:x>", "it contains a script"),
    "script in notes": ("<metadata><script/></metadata>", "it contains a script"),
    "SCRIPT": ("<SCRIPT>alert(1)</SCRIPT>", "it contains a script"),
    "script of a web page": ("<h:script>alert(1)</h:script>", "it contains a piece of a web page"),
    "handler": ('<rect onclick="alert(1)"/>', 'it does something when it is touched ("onclick")'),
    "handler in capitals": ('<rect ONLOAD="alert(1)"/>', 'it does something when it is touched ("ONLOAD")'),
    "handler on a tip": ('<title onload="alert(1)">x</title>', 'it does something when it is touched ("onload")'),
    "web page": ("<foreignObject><h:p>x</h:p></foreignObject>", "it contains a piece of a web page"),
    "web page by itself": ("<h:iframe src='x'/>", "it contains a piece of a web page"),
    "iframe": ("<iframe src='x'/>", "it contains a piece of a web page"),
    "photo from elsewhere": ('<image href="https://example.org/a.png"/>', "it contains a photo"),
    "photo inside": ('<image xlink:href="data:image/png;base64,AAAA"/>', "it contains a photo"),
    "link": ('<a href="https://example.org"><rect/></a>', "it contains a link"),
    "link that acts": ('<a xlink:href="javascript:alert(1)"><rect/></a>', "it contains a link"),
    "style sheet": ("<style>path { fill: red }</style>", "it contains a style sheet"),
    "style sheet that loads": ("<style>@import url(//example.org/a.css);</style>", "it contains a style sheet"),
    "movement": ('<rect><animate attributeName="x"/></rect>', "it moves"),
    "movement to a script": ('<set attributeName="href" to="javascript:alert(1)"/>', "it moves"),
    "shape of another file": ('<use href="other.svg#a"/>', "it points to something outside itself"),
    "shape of an address": ('<use xlink:href="//example.org/a.svg#a"/>', "it points to something outside itself"),
    "shape of data": ('<use href="data:image/svg+xml,AAAA#a"/>', "it points to something outside itself"),
    "fill from elsewhere": ('<rect fill="url(https://example.org/a.svg#a)"/>', "it points to something outside itself"),
    "fill from a file": ("<rect fill=\"url('a.svg#a')\"/>", "it points to something outside itself"),
    "style from elsewhere": ('<g style="fill:red;background:url(//example.org/a)"/>', "it points to something outside"),
    "style in disguise": ('<g style="fill:u\\72l(//example.org/a)"/>', "it points to something outside itself"),
    "mask from elsewhere": ('<g mask="image-set(&quot;a.png&quot; 1x)"/>', "it points to something outside itself"),
    "clip in capitals": ('<g clip-path="URL(HTTPS://EXAMPLE.ORG/A)"/>', "it points to something outside itself"),
    "effect": ("<filter><feImage href='#a'/></filter>", 'it contains "filter", which the book does not allow in a drawing'),
    "page": ("<view/>", 'it contains "view", which the book does not allow in a drawing'),
}  # fmt: skip


@every("name", REFUSED)
def test_what_acts_or_leads_elsewhere_is_refused_by_name(name: str) -> None:
    inner, message = REFUSED[name]
    assert refusal(HULL + inner).startswith(message)


@pytest.mark.parametrize(
    ("head", "message"),
    [
        ('<!DOCTYPE svg [<!ENTITY a "aaaa">]>', "it defines short forms (entities)"),
        ('<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>', "it defines short forms (entities)"),
        ('<!DOCTYPE svg [<!ENTITY % a SYSTEM "http://example.org/a.dtd"> %a;]>', "it defines short forms (entities)"),
        ('<?xml-stylesheet href="https://example.org/a.css"?>', "it contains a style sheet"),
    ],
)  # fmt: skip
def test_no_entities_and_no_sheets(head: str, message: str) -> None:
    assert refusal(HULL, head).startswith(message)


def test_a_plain_document_type_is_no_fault() -> None:
    public = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">'
    assert "M0 0h9v9z" in drawn(HULL, head=f'<?xml version="1.0" encoding="UTF-8"?>{public}').svg


@every(
    "raw",
    [b"", b"<svg", b"hull", b"\xff\xd8\xff\xe0", b"<html/>", b"<svg xmlns='http://www.w3.org/1999/xhtml'/>", b"\0"],
)
def test_what_is_no_drawing(raw: bytes) -> None:
    with pytest.raises(Unfit) as found:
        read_drawing(raw, "x.svg", "x")
    assert (found.value.code, bool(found.value.hint)) == ("unreadable", True)


def test_too_much_of_it() -> None:
    with pytest.raises(Unfit, match="larger than 1 MB"):
        read_drawing(b" " * 1_000_001, "x.svg", "x")
    assert refusal("<g>" * 60 + HULL + "</g>" * 60) == "its groups are nested too deeply"
    assert refusal("<g/>") == "there is nothing drawn in it"
    # ten times ten times ten ...: a few hundred bytes that would draw a thousand million shapes
    laughs = "".join(f'<g id="a{n}">' + f'<use href="#a{n + 1}"/>' * 10 + "</g>" for n in range(9))
    assert refusal(f'{laughs}<g id="a9">{HULL}</g>') == "it draws more than 50,000 shapes"
    assert refusal('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>').startswith("a shape in it repeats")
    assert refusal('<g id="a"><rect/><use href="#a"/></g>') == "a shape in it repeats itself for ever"


@pytest.mark.parametrize(
    ("root", "width", "height", "box"),
    [
        ('viewBox="0 0 90 60"', 90, 60, "0 0 90 60"),
        ('viewBox="-5,-5 90 60" width="100%"', 90, 60, "-5 -5 90 60"),
        ('width="90" height="60px"', 90, 60, "0 0 90 60"),
        # An inch is 96 px and 25.4 mm: CSS Values and Units, https://www.w3.org/TR/css-values-3/#absolute-lengths
        ('viewBox="0 0 10 20" width="25.4mm" height="2in"', 96, 192, "0 0 10 20"),
        ('viewBox="0 0 10 20" width="72pt" height="6pc"', 96, 96, "0 0 10 20"),
    ],
)  # fmt: skip
def test_its_size(root: str, width: float, height: float, box: str) -> None:
    found = drawn(HULL, root)
    assert (found.width, found.height) == (pytest.approx(width), pytest.approx(height))
    assert f'viewBox="{box}"' in found.svg


@pytest.mark.parametrize("root", ["", 'width="100%"', 'viewBox="0 0 0 60"', 'viewBox="0 0 nan 60"', 'viewBox="a"'])
def test_without_a_size(root: str) -> None:
    with pytest.raises(Unfit, match="does not say how large it is"):
        drawn(HULL, root)


def test_what_is_not_seen_is_gone() -> None:
    secret = "cormorant"
    found = drawn(
        f"""<!-- {secret} --><title>{secret}</title><desc>{secret}</desc>
        <metadata><inkscape:path>{secret}</inkscape:path></metadata>
        <inkscape:namedview inkscape:export-filename="/home/{secret}/cake.png"/>
        <g id="{secret}" inkscape:label="{secret}" class="{secret}" data-name="{secret}" aria-label="{secret}">
        <text x="1" y="2" font-family="{secret}">tide <tspan font-weight="bold">high</tspan> water</text></g>
        <g style="display:none"><text>{secret}</text></g><text visibility="hidden">{secret}</text>"""
    )
    assert secret not in found.svg
    assert "tide <tspan" in found.svg and ">high</tspan> water</text>" in found.svg
    assert "inkscape" not in found.svg


def test_references_are_its_own() -> None:
    inner = """<defs><linearGradient id="sea"><stop offset="0" stop-color="#036"/></linearGradient>
    <linearGradient id="sky" xlink:href="#sea"/><clipPath id="hold"><circle r="9"/></clipPath>
    <path id="boat" d="M0 0h9"/></defs>
    <rect id="unused" fill="url(#sky)" style="clip-path:url('#hold');stroke: #fff !important"/>
    <use xlink:href="#boat"/>"""
    one = drawn(inner)
    two = read_drawing(f"<svg {NAMESPACES} viewBox='0 0 9 9'>{inner}</svg>".encode(), "other.svg", "other")
    root = ET.fromstring(one.svg)
    ids = {each.get("id") for each in root.iter() if each.get("id")}
    assert len(ids) == 4 and all(name and name.startswith(one.prefix) for name in ids)
    assert {each.get("href", "").removeprefix("#") for each in root.iter() if each.get("href")} < ids
    (rect,) = root.iter(f"{SVG}rect")
    assert rect.get("stroke") == "#fff" and rect.get("style") is None
    for name in ("fill", "clip-path"):
        assert rect.get(name, "")[5:-1] in ids
    assert not ids & {each.get("id") for each in ET.fromstring(two.svg).iter()}


def test_whether_it_takes_the_ink_of_the_page() -> None:
    assert drawn(HULL, 'viewBox="0 0 9 9" fill="none" stroke="currentColor"').inked
    assert not drawn(HULL).inked
    assert not drawn('<path d="M0 0h9" stroke="#036"/>', 'viewBox="0 0 9 9" fill="none"').inked
    assert not drawn('<path d="M0 0h9" style="fill:red"/>', 'viewBox="0 0 9 9" fill="none"').inked


def shapes(svg: str) -> list[tuple[str, str, str, str]]:
    """What is drawn, in order, as an independent reader sees it."""
    keys = ("d", "points", "x")
    return [
        (each.tag.removeprefix(SVG), *(each.get(key, "") for key in keys))
        for each in ET.fromstring(svg).iter()
        if each.tag.removeprefix(SVG) in ("path", "rect", "circle", "polyline", "polygon", "text", "use")
    ]


@every("path", DEMO, ids=lambda path: path.stem)
def test_the_drawings_of_the_demo_keep_every_shape(path: Path) -> None:
    assert shapes(read_drawing(path.read_bytes(), path.name, path.stem).svg) == shapes(path.read_text("utf-8"))


names = st.sampled_from(["g", "path", "text", "use", "title", "svg", "pattern", "b", "x"])
values = st.sampled_from(
    ["#a", "url(#a)", "url('#a') red", "red", "none", "M0 0", "&quot;&gt;&lt;script&gt;", "&lt;/svg&gt;&lt;p&gt;",
     "a/*b", "matrix(1 0 0 1 0 0)", "12px", "&#39;", "x;y:z", "a\\b"]
)  # fmt: skip
keys = st.sampled_from(
    ["id", "fill", "d", "transform", "style", "href", "xlink:href", "mask", "class", "x", "xml:space"]
)
attributes = st.dictionaries(keys, values, max_size=4).map(
    lambda found: "".join(f' {name}="{value}"' for name, value in found.items())
)
elements = st.recursive(
    st.builds(lambda name, more, words: f"<{name}{more}>{words}</{name}>", names, attributes, values),
    lambda inner: st.builds(
        lambda name, more, parts: f"<{name}{more}>{''.join(parts)}</{name}>",
        names, attributes, st.lists(inner, max_size=3),
    ),
    max_leaves=8,
)  # fmt: skip


@many(300)
@given(st.lists(elements, min_size=1, max_size=3).map("".join))
def test_whatever_comes_out_is_on_the_list(inner: str) -> None:
    """Read again by another reader: nothing but allowed elements and attributes, no reference out of the drawing."""
    try:
        found = drawn(HULL + inner)
    except Unfit:
        return
    for each in ET.fromstring(found.svg).iter():
        assert each.tag.removeprefix(SVG) in ELEMENTS
        for key, value in each.attrib.items():
            assert key in ATTRIBUTES | {"id", "href", "{http://www.w3.org/XML/1998/namespace}space"}
            assert "url(" not in value or "url(#tb-hull-" in value
            assert key != "href" or value.startswith("#tb-hull-")
            assert "\\" not in value
