"""One question, one answer: parts, paste, colours, cutters and sticks of a decoration, at several doors."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import pytest
from tests.every import every

from tinbook.plans.techniques.shown import shown_g, shown_mm, shown_pot_g

LAMP, HERON, BOAT = "lighthouse-for-the-front", "heron-for-the-side", "boat-on-the-shingle"
CAKE, LARGER = "round 20 cm", "round 25 cm"

NEAREST = re.compile(r"nearest is the ([^,;]+) (\w+)(,|;|$)")


def part(d: Any, slug: str, name: str, cake: str = CAKE) -> Any:
    return d.row("parts", "--of", slug, cake=cake, part=name)


def cell(d: Any, slug: str, row: str, head: str, cake: str = CAKE) -> str:
    """A cell of the table of parts, by the part's letter: its shape with what the notes below say of it, how many there
    are, or the grams of all."""
    page, letter = d.page(f"techniques/{slug}"), row[0]
    table = page.split(f'aria-label="Parts for {cake}"', 1)[1].split("</table>", 1)[0]
    line = re.search(rf'<tr><th scope="row"><b>{letter}</b></th>(.*?)</tr>', table, re.DOTALL)[1]
    cells = [bare(each) for each in re.findall(r"<td[^>]*>(.*?)</td>", line, re.DOTALL)]
    if head == "How many":
        return cells[2]
    if head in ("Each", "All"):
        heads = [bare(each) for each in re.findall(r'<th scope="col"[^>]*>(.*?)</th>', table)]
        return cells[heads.index(cake)]
    (notes,) = re.findall(rf'<div data-cake="{cake}"[^>]*>\s*<dl class="tb-partnotes">(.*?)</dl>', page, re.DOTALL)
    of_it = (
        bare(words) for letters, words in re.findall(r"<dt>(.*?)</dt><dd>(.*?)</dd>", notes) if tells(letters, letter)
    )
    return "; ".join((cells[0], *of_it))


def bare(html: str) -> str:
    """A piece of a page without its marks."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def tells(letters: str, letter: str) -> bool:
    """Whether `A to C, E and G` is of a letter."""
    runs = (run.partition(" to ") for run in re.split(r", | and ", letters))
    return any(first <= letter <= (last or first) for first, _, last in runs)


def grid(d: Any, slug: str, cake: str, head: str) -> float:
    return float(d.number(f"techniques/{slug}", "Paste for every cake", cake, head))


def sheet(d: Any, slug: str, cake: str = CAKE) -> Any:
    (made,) = d.sheet(slug, cake)["cakes"]
    return made


def told(d: Any, slug: str, title: str, cake: str = CAKE) -> str:
    """What the sheet says of a part, by its letter, or of a colour."""
    made = sheet(d, slug, cake)
    parts = [row["line"] for row in made["table"]["rows"]]
    told = []
    for part in parts:
        words = (part["make"], *part["more"], *([part["cutter"]["words"]] if part["cutter"] else ()))
        told.append(f"{part['letter']} {part['name']} {part['count']} × {part['total']} g, {'; '.join(words)}")
    told += [f"{each['title']} {each['text']}" for each in made["colours"]]
    return next(each for each in told if each.startswith(title))


def pastes(d: Any, slug: str, cake: str = CAKE) -> Any:
    return d.row("pastes", "--of", slug, cake=cake)


def in_all(d: Any, slug: str, cake: str, asked: str) -> float:
    """The sum of the rows of a table, each paste and colour once."""
    rows = [row for row in d.rows(asked, "--of", slug) if row["cake"] == cake]
    if asked == "colours":
        return sum({row["colour"]: row["exact_g"] for row in rows}.values())
    return sum(row["total_g"] for row in rows)


def on_page(d: Any, slug: str, cake: str, words: str) -> float:
    """The figure behind some words of what a page says for a cake."""
    said = d.words(f"techniques/{slug}").split(f"For a {cake} cake:", 1)[1]
    return float(d.figure(said.split(words, 1)[1] if words else said))


def ready_on_sheet(d: Any, slug: str, cake: str) -> float:
    (words,) = sheet(d, slug, cake)["ready"]
    return float(d.figure(words.removeprefix("Have")))


def where(text: str) -> str:
    """In what the rest of a stick stands: `15 mm into the rock`."""
    found = re.search(r"and ([\d.]+ mm into the \w+)", text)
    assert found, text
    return found[1]


def rest(d: Any, slug: str, name: str, cake: str = CAKE) -> float:
    row = part(d, slug, name, cake)
    return float(row["support_mm"] - row["support_in_part_mm"] - row["support_through_mm"])


ASKED: dict[str, tuple[Callable[[Any], object], ...]] = {
    "what does the tower weigh": (
        lambda d: part(d, LAMP, "tower")["each_g"],
        lambda d: float(cell(d, LAMP, "A tower", "Each")),
        lambda d: d.figure(re.search(r"([\d.]+) g", told(d, LAMP, "A tower"))[0]),
    ),
    "what does it weigh for a 25 cm cake": (
        lambda d: shown_g(part(d, LAMP, "tower", LARGER)["total_g"]),
        lambda d: float(cell(d, LAMP, "A tower", "All", LARGER)),
        lambda d: shown_g(68.0 * 1.25**3),
    ),
    "how much paste is in the lighthouse": (
        lambda d: shown_g(in_all(d, LAMP, CAKE, "parts") + in_all(d, LAMP, CAKE, "marks")),
        lambda d: shown_g(in_all(d, LAMP, CAKE, "colours")),
        lambda d: shown_g(pastes(d, LAMP)["parts_g"]),
        lambda d: on_page(d, LAMP, CAKE, ""),
        lambda d: grid(d, LAMP, CAKE, "All"),
        lambda d: float(sheet(d, LAMP)["total"]),
    ),
    "how much paste is in it for a 25 cm cake": (
        lambda d: shown_g(in_all(d, LAMP, LARGER, "colours")),
        lambda d: shown_g(pastes(d, LAMP, LARGER)["parts_g"]),
        lambda d: on_page(d, LAMP, LARGER, ""),
        lambda d: grid(d, LAMP, LARGER, "All"),
        lambda d: float(sheet(d, LAMP, LARGER)["total"]),
    ),
    "how much paste to have ready": (
        lambda d: pastes(d, LAMP)["ready_g"],
        lambda d: d.data(f"techniques/{LAMP}", "tb-kit")["lines"][0]["mass_g"],
        lambda d: d.figure(d.words(f"techniques/{LAMP}").split("## Have ready", 1)[1].split("cups", 1)[1]),
        lambda d: on_page(d, LAMP, CAKE, "Have"),
        lambda d: grid(d, LAMP, CAKE, "Paste to have ready"),
        lambda d: ready_on_sheet(d, LAMP, CAKE),
        lambda d: d.figure(d.sheet(LAMP, CAKE)["materials"][0]["amount"]),
    ),
    "how much paste to have ready for a 25 cm cake": (
        lambda d: shown_g(pastes(d, LAMP, LARGER)["ready_g"]),
        lambda d: on_page(d, LAMP, LARGER, "Have"),
        lambda d: grid(d, LAMP, LARGER, "Paste to have ready"),
        lambda d: ready_on_sheet(d, LAMP, LARGER),
        lambda d: shown_g(200.0 * pastes(d, LAMP, LARGER)["parts_g"] / pastes(d, LAMP)["parts_g"]),
    ),
    "for which cake the paste among the materials is": (
        lambda d: str(d.loaded.book.techniques[LAMP].parts_for.name),
        lambda d: re.search(r"Boatshed modelling paste for (round \d+ cm)", d.words(f"techniques/{LAMP}"))[1],
        lambda d: d.sheet(LAMP, LARGER)["materials"][0]["wanted"].removeprefix("for ").replace("\xa0", " "),
    ),
    "how much of it is white": (
        lambda d: shown_g(d.rows("colours", "--of", LAMP, "--tin", CAKE)[0]["exact_g"]),
        lambda d: grid(d, LAMP, CAKE, "Gull white"),
        lambda d: d.figure(told(d, LAMP, "Gull white").split(",", 1)[1]),
    ),
    "how much white from the pot": (
        lambda d: shown_pot_g(d.rows("colours", "--of", LAMP, "--tin", CAKE)[0]["pot_g"]),
        lambda d: d.figure(told(d, LAMP, "Gull white").split(" g ", 1)[1]),
        lambda d: shown_pot_g(in_white(d) * d.figure(d.words("colours").split("Gull white", 1)[1].split("For 100 g of paste:", 1)[1]) / 100.0),
    ),
    "what the law wants beside the red": (
        lambda d: next(row["warning"] for row in d.rows("colours", "--of", LAMP) if row["colour"] == "lamp red"),
        lambda d: next(row["warning"] for row in d.rows("parts", "--of", LAMP) if row["colour"] == "lamp red"),
        lambda d: re.search(r"Statutory warning: (E129.*?)\.", d.words("colours"))[1],
        lambda d: re.search(r"Statutory warning: (E129.*?)\.", d.words(f"techniques/{LAMP}"))[1],
    ),
    "how long is the stick of the lighthouse": (
        lambda d: part(d, LAMP, "tower")["support_mm"],
        lambda d: sum(map(float, re.findall(r"([\d.]+) mm into the", cell(d, LAMP, "A tower", "Make")))),
        lambda d: sum(map(float, re.findall(r"([\d.]+) mm into the", told(d, LAMP, "A tower").replace("\xa0", " ")))),
    ),
    "where does the rest of it stand": (
        lambda d: f"{rest(d, LAMP, 'tower'):g} mm into the rock",
        lambda d: where(cell(d, LAMP, "A tower", "Make")),
        lambda d: where(told(d, LAMP, "A tower").replace("\xa0", " ")),
    ),
    "where it stands under a 25 cm cake's lighthouse": (
        lambda d: f"{shown_mm(rest(d, LAMP, 'tower', LARGER)):g} mm into the rock",
        lambda d: where(cell(d, LAMP, "A tower", "Make", LARGER)),
        lambda d: where(told(d, LAMP, "A tower", LARGER).replace("\xa0", " ")),
    ),
    "where the sticks of the boat stand": (
        lambda d: f"{rest(d, BOAT, 'hull'):g} mm into the cake",
        lambda d: where(cell(d, BOAT, "B hull", "Make")),
        lambda d: where(told(d, BOAT, "B hull").replace("\xa0", " ")),
    ),
    "how many sticks are counted in": (
        lambda d: part(d, BOAT, "hull")["supports"],
        lambda d: d.figure(d.words(f"techniques/{BOAT}").split("Not edible:", 1)[1]),
        lambda d: d.figure(d.sheet(BOAT, CAKE)["counted"][0]),
    ),
    "how many courses of stone": (
        lambda d: d.row("marks", "--of", LAMP, cake=CAKE)["count"],
        lambda d: float(cell(d, LAMP, "H courses", "How many")),
        lambda d: d.figure(told(d, LAMP, "H courses").split("courses of stone", 1)[1]),
    ),
    "how many scallops": (
        lambda d: part(d, "scalloped-board-edge", "scallop")["count"],
        lambda d: float(cell(d, "scalloped-board-edge", "A scallop", "How many")),
    ),
    "how long does the tower dry": (
        lambda d: f"{part(d, LAMP, 'tower')['dries_low_min'] / 60:g}–{part(d, LAMP, 'tower')['dries_high_min'] / 60:g} h",
        lambda d: re.search(r"drying time ([\d–]+ h)", cell(d, LAMP, "A tower", "Make"))[1],
        lambda d: re.search(r"drying time ([\d–]+ h)", told(d, LAMP, "A tower").replace("\xa0", " "))[1],
    ),
    "which cutter is nearest for the reeds of a 25 cm cake": (
        lambda d: str(part(d, HERON, "reed", LARGER)["cutter_owned"]),
        lambda d: " ".join(NEAREST.search(cell(d, HERON, "E reed", "Make", LARGER)).group(2, 1)),
        lambda d: " ".join(NEAREST.search(told(d, HERON, "E reed", LARGER).replace("\xa0", " ")).group(2, 1)),
    ),
    "how much hangs on the side": (
        lambda d: shown_g(sum(row["total_g"] for row in d.rows("parts", "--of", HERON) if row["cake"] == CAKE and row["on"] == "side")),
        lambda d: d.figure(d.words(f"techniques/{HERON}").split(f"For a {CAKE} cake:", 1)[1].split("board.", 1)[1]),
        lambda d: d.figure(sheet(d, HERON)["heavy"]),
    ),
}  # fmt: skip
"""Questions of techniques, with the ways of asking each."""


def in_white(d: Any) -> float:
    return float(
        sum(
            {
                row["part"]: row["total_g"]
                for row in d.rows("parts", "--of", LAMP, "--tin", CAKE)
                if row["colour"] == "gull white"
            }.values()
        )
    )


@every("question", ASKED)
def test_one_answer(question: str, agree: Callable[[Any], None]) -> None:
    agree(ASKED[question])


def test_no_stick_of_the_lighthouse_stands_in_the_cake(doors: Any) -> None:
    """Its rock is of sugar: neither page nor sheet nor template says of any cake that it goes into the cake."""
    assert "mm into the cake" not in doors.words(f"techniques/{LAMP}")
    for cake in ("round 10 cm", CAKE, "round 30 cm", "square 15 cm"):
        rows = sheet(doors, LAMP, cake)["table"]["rows"]
        assert rows and all("in the cake" not in " ".join(row["line"]["more"]) for row in rows)


def test_fifty_questions_are_asked(request: pytest.FixtureRequest) -> None:
    """In this folder, each once and at two doors or more."""
    files = sorted(request.path.parent.glob("test_one_answer_*.py"))
    asked = [
        line for file in files for line in file.read_text("utf-8").splitlines() if re.match(r'    "[a-z].*": \($', line)
    ]
    assert len(asked) == len(set(asked)) >= 50
