"""A folder becomes a book, whatever is in it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tinbook.loading import Loaded, load_book
from tinbook.plans.base.weighing import weigh_all
from tinbook.problems import spell
from tinbook.source import Document

Write = Callable[..., Path]
ROOT = Path(__file__).parents[2]


def test_the_demo_book_is_sound(demo: Loaded) -> None:
    assert not demo.errors, "\n".join(map(spell, demo.errors))
    assert not demo.broken
    on_disk = {path.stem for path in (ROOT / "recipes" / "mixtures").glob("*.yaml")}
    assert set(demo.book.mixtures) == on_disk
    assert set(demo.book.techniques) == {path.stem for path in (ROOT / "recipes" / "techniques").glob("*.yaml")}


def test_what_is_written_is_what_is_read(write: Write) -> None:
    book = load_book(write()).book
    assert (book.house.name, book.house.book, book.house.eggs) == ("Lamp Room house book", 1, "UK large")
    assert [(own.tin.name, own.tin.depth_mm, own.have) for own in book.tins] == [("round 20 cm", 75.0, 2)]
    assert list(book.cards) == ["butter", "caster sugar", "egg", "self-raising flour", "lavender"]
    assert book.cards["lavender"].known_allergens == ()
    sponge = book.mixtures["plain-sponge"]
    assert [(line.take.quantity.base, line.take.name) for line in sponge.mix] == [
        (300.0, "butter"),
        (300.0, "caster sugar"),
        (6.0, "eggs"),
        (300.0, "self-raising flour"),
    ]
    assert sponge.bake is not None
    assert (sponge.bake.oven.celsius, sponge.bake.time.low.base, sponge.bake.time.high.base) == (160.0, 35.0, 40.0)
    assert [step.do for step in book.techniques["line-a-tin"].steps] == ["Cut the paper to the base."]


def test_a_card_with_nothing_on_it_is_a_card_of_which_nothing_is_known(write: Write, base: Mapping[str, str]) -> None:
    loaded = load_book(write({"house/ingredients.yaml": base["house/ingredients.yaml"] + "  salt:\n"}))
    assert not loaded.problems
    assert loaded.book.cards["salt"].known_allergens is None


@pytest.mark.parametrize("bom", [b"", b"\xef\xbb\xbf"], ids=["plain", "byte order mark"])
@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"], ids=["lf", "crlf", "cr"])
def test_any_editor_will_do(write: Write, base: Mapping[str, str], bom: bytes, end: bytes) -> None:
    files = {name: bom + text.encode().replace(b"\n", end) for name, text in base.items()}
    loaded = load_book(write(files))
    assert not loaded.problems
    assert loaded.book == load_book(write()).book


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"], ids=["lf", "crlf", "cr"])
def test_the_place_of_a_slip_does_not_depend_on_the_editor(write: Write, base: Mapping[str, str], end: bytes) -> None:
    name = "mixtures/plain-sponge.yaml"
    raw = b"\xef\xbb\xbf" + base[name].replace("300 g butter", "300 g buter").encode().replace(b"\n", end)
    (problem,) = load_book(write({name: raw})).problems
    assert (problem.place.line, problem.place.column, problem.place.text) == (5, 11, "  - 300 g buter")


@pytest.mark.parametrize(
    ("raw", "text"),
    [
        (
            "name: Crème\n".encode("latin-1"),
            "recipes/mixtures/x.yaml:1:9: this character is not saved as UTF-8\n"
            "    1 | name: Cr\N{REPLACEMENT CHARACTER}me\n"
            "      |         ^ save the file as UTF-8",
        ),
        (
            b"name: x\nkind: a\0b\n",
            "recipes/mixtures/x.yaml:2:8: there is an invisible character here (U+0000)\n"
            "    2 | kind: a\N{SYMBOL FOR NULL}b\n"
            "      |        ^ delete it and type the text again",
        ),
        (
            "name: x\n".encode("utf-16"),
            "recipes/mixtures/x.yaml:1:1: the file is saved as UTF-16\n      | choose Save As in your editor and set the encoding to UTF-8",
        ),
    ],
    ids=["latin 1", "a nought byte", "utf 16"],
)
def test_bytes_that_are_no_text(write: Write, raw: bytes, text: str) -> None:
    loaded = load_book(write({"mixtures/x.yaml": raw}))
    assert "\n".join(map(spell, loaded.problems)) == text
    assert "plain-sponge" in loaded.book.mixtures


BROKEN = {
    "no text": b"\xff\xfe\x00",
    "another code": "name: Cr\u00e8me".encode("latin-1"),
    "a nought byte": b"name: a\0b\n",
    "nothing": b"",
    "a list": b"- a\n",
    "unclosed": b"name: [\n",
    "another thing": b"colour: blue\n",
    "a slip": b"name: A\nkind: creamed\ntins: round\nmix:\n  - 1 kg butter\n",
}


@pytest.mark.parametrize("raw", BROKEN.values(), ids=BROKEN)
@pytest.mark.parametrize("folder", ["mixtures", "techniques"])
def test_a_broken_page_hides_no_sound_one(write: Write, folder: str, raw: bytes) -> None:
    loaded = load_book(write({f"{folder}/a-broken.yaml": raw, f"{folder}/z-broken.yaml": raw}))
    assert loaded.problems
    assert {problem.place.file for problem in loaded.problems} == {
        f"recipes/{folder}/a-broken.yaml",
        f"recipes/{folder}/z-broken.yaml",
    }
    assert set(loaded.broken) == {f"{folder}/a-broken", f"{folder}/z-broken"}
    assert set(loaded.book.mixtures) == {"plain-sponge"}
    assert set(loaded.book.techniques) == {"line-a-tin"}


@pytest.mark.parametrize("raw", BROKEN.values(), ids=BROKEN)
@pytest.mark.parametrize("name", ["house", "tins", "ingredients"])
def test_a_broken_file_of_the_house_leaves_the_rest(write: Write, name: str, raw: bytes) -> None:
    loaded = load_book(write({f"house/{name}.yaml": raw}))
    assert {problem.place.file for problem in loaded.problems} == {f"recipes/house/{name}.yaml"}
    assert set(loaded.book.techniques) == {"line-a-tin"}
    assert ("plain-sponge" in loaded.book.mixtures) == (name != "ingredients")


def test_a_link_to_a_broken_page_is_no_second_slip(write: Write) -> None:
    loaded = load_book(write({"techniques/line-a-tin.yaml": "name: [\n"}))
    assert len(loaded.problems) == 1
    assert "plain-sponge" in loaded.book.mixtures


def test_problems_stand_in_the_order_of_the_book(write: Write) -> None:
    slips = "name: A\nkind: creamed\ntins: 2 rund 20 cm\nmix:\n  - 1 kg buter\n  - 2 T salt\nbake: {oven: 1, time: 2}\n"
    loaded = load_book(write({"mixtures/b.yaml": slips, "mixtures/a.yaml": slips, "house/tins.yaml": "tins: x\n"}))
    order = [(problem.place.file, problem.place.line, problem.place.column) for problem in loaded.problems]
    assert order == sorted(order)
    assert len(order) == 9
    assert loaded.errors == loaded.problems
    assert loaded.broken["mixtures/a"] == loaded.problems[1:5]


def test_a_book_is_read_the_same_each_time(write: Write) -> None:
    folder = write({"mixtures/a.yaml": "name: A\n"})
    assert load_book(folder) == load_book(folder)


def test_a_mixture_measured_in_the_houses_own_tin_is_held_to_its_measure(write: Write, base: Mapping[str, str]) -> None:
    """A tin of 2.36 l by its sizes that holds 1.3 l when measured is full at 2.6 l in two."""
    tins = "tins:\n  - {tin: round 20 cm x 7.5 cm, have: 2, measured: 1300 ml}\n"
    more = base["mixtures/plain-sponge.yaml"].replace("300 g butter", "1.6 kg butter")
    loaded = load_book(write({"house/tins.yaml": tins, "mixtures/more.yaml": more}))
    assert [(problem.code, problem.place.file) for problem in loaded.problems] == [
        ("too much", "recipes/mixtures/more.yaml")
    ]
    assert "the tins hold 2600 ml to the brim" in loaded.problems[0].hint


def test_every_mixture_of_a_book_can_be_weighed(write: Write, demo: Loaded) -> None:
    for loaded in (load_book(write()), demo):
        weighed = weigh_all(loaded.book, loaded.facts)
        assert set(weighed) == set(loaded.book.mixtures)
        assert all(batch.mass_g > 0 for batch in weighed.values())


def test_each_file_is_parsed_once(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    from tinbook.loading import parses

    files: list[str] = []

    def counting(raw: bytes, file: str) -> tuple[Document | None, object]:
        files.append(file)
        return read(raw, file)

    read = parses.read_yaml
    monkeypatch.setattr(parses, "read_yaml", counting)
    load_book(write())
    assert sorted(files) == sorted(set(files))
    assert len(files) == 5


def test_a_mixture_knows_the_tins_by_name_and_by_the_set(write: Callable[..., Path], base: Mapping[str, str]) -> None:
    shelf = 'tins:\n  - {tin: outline M0 0H160V240H0Z x 8 cm, name: Number 1}\n  - {tin: "set of round 20, 25 cm x 7.5 cm"}\n'
    sponge = base["mixtures/plain-sponge.yaml"]
    line = next(each for each in sponge.split("\n") if each.startswith("tins:"))
    made = {
        "house/tins.yaml": shelf,
        "mixtures/one.yaml": sponge.replace(line, "tins: number 1"),
        "mixtures/two.yaml": sponge.replace(line, "tins: set of round 20, 25 cm x 7.5 cm"),
    }
    loaded = load_book(write(made))
    assert not loaded.problems
    ((count, tin),) = loaded.book.mixtures["one"].tins
    assert (count, tin.full_name, tin.area_mm2) == (1, "Number 1 x 8 cm", 160.0 * 240.0)
    assert [tin.name for _, tin in loaded.book.mixtures["two"].tins] == ["round 20 cm", "round 25 cm"]
    assert [own.of_set for own in loaded.book.tins] == ["", *["set of round 20 cm, 25 cm"] * 2]
