"""`tinbook template`: drawings for a cake to print at actual size: board ring, side strip, dowel plan, cutting plan."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

import click
from click.core import ParameterSource

from tinbook.cli.command import recipes_of
from tinbook.cli.table import named_tins, read_portion
from tinbook.cli.writing import put
from tinbook.loading import Loaded, load_book
from tinbook.loading.files import slug_of
from tinbook.models import Book
from tinbook.pages.spelling.sayings import spell
from tinbook.pages.technique.cake_templates import label_mm
from tinbook.pages.technique.paper import PaperPage
from tinbook.pages.technique.true_size import paper_pages
from tinbook.plans.base.asking import AskError, Query
from tinbook.plans.cakes.tables import cake_asked
from tinbook.plans.cakes.templates import templates_of_cake
from tinbook.plans.true_size.cakes import cutting_template, ring_template
from tinbook.plans.true_size.dowelling import dowel_plan, dowel_template, tier_above
from tinbook.plans.true_size.drawn import Template
from tinbook.plans.true_size.papers import PAPERS
from tinbook.plans.true_size.sides import CURVES, strip
from tinbook.press import templates_pdf
from tinbook.problems import nearest
from tinbook.tins import Tin, read_measured, says_measure
from tinbook.units import Misread, read_length

Options = Mapping[str, Any]
USUAL_DROPS = 8
PAPER = click.option(
    "--paper", type=click.Choice(list(PAPERS), case_sensitive=False), default="A4", help="The paper to print on."
)
SVG = click.option("--svg", is_flag=True, help="Write each page as a drawing (SVG) as well.")
FORCE = click.option("--force", is_flag=True, help="Overwrite a file that already exists.")


def _ring(cake: Tin, loaded: Loaded, options: Options) -> Template:
    return ring_template(cake, loaded.book, loaded.facts)


def _strip(cake: Tin, loaded: Loaded, options: Options) -> Template:
    deep, height, start = (length(options[key], key, loaded.book) for key in ("deep", "height", "start"))
    return strip(cake, loaded.book, loaded.facts, options["drops"], deep or 0.0, options["curve"], height, start or 0.0)


def _dowels(cake: Tin, loaded: Loaded, options: Options) -> Template:
    above = cake_of(options["above"], loaded.book, "--above") if options["above"] else tier_above(cake)
    return dowel_template(dowel_plan(cake, above, loaded.book.finish, loaded.facts))


def _cutting(cake: Tin, loaded: Loaded, options: Options) -> Template:
    try:
        portion = read_portion(options["portion"].strip(), loaded.book.house.spoons)
    except Misread as error:
        raise AskError(f"--portion: {error.message}", error.hint) from None
    return cutting_template(cake, portion, loaded.book, loaded.facts)


TEMPLATES: Mapping[str, tuple[str, Callable[[Tin, Loaded, Options], Template], tuple[str, ...]]] = {
    "ring": ("the board's edge and the guide ring for the cake", _ring, ()),
    "strip": (
        "the side laid flat, divided for drops or panels",
        _strip,
        ("drops", "deep", "curve", "start", "height"),
    ),
    "dowels": ("dowels under the tier above", _dowels, ("above",)),
    "cutting": ("how the cake is cut into portions", _cutting, ("portion",)),
}
"""What each is, how it is drawn, and its own options."""
WHOLE = "all"
WHOLE_SAYS = "a whole cake in the book, with --of: every part of its decorations, and its dowels"
WHOLE_TAKES = ("of", "size")


@click.command()
@click.argument("kind", required=False)
@click.option("--cake", metavar="TIN", help='The cake to draw it for, such as "round 20 cm".')
@click.option("--drops", type=int, default=USUAL_DROPS, help="strip: how many drops or panels.")
@click.option("--deep", metavar="LENGTH", help='strip: how deep a drop hangs, such as "4 cm"; leave it out for panels.')
@click.option("--curve", type=click.Choice(CURVES), default=CURVES[0], help="strip: the curve of a drop.")
@click.option("--start", metavar="LENGTH", help="strip: how far below the top edge drops begin.")
@click.option("--height", metavar="LENGTH", help="strip: how high the cake is before it is coated.")
@click.option(
    "--above", metavar="TIN", help="dowels: the tier that stands on the cake; the next size down if not given."
)
@click.option("--of", metavar="NAME", help="all: the whole cake, by the name of its file.")
@click.option(
    "--size", metavar="SIZE", help="all: its size, such as +1 or one of its names; if not given, the size in its file."
)
@click.option(
    "--portion",
    metavar="PORTION",
    default="dessert",
    help="cutting: finger, dessert, one of your own, or a size.",
)
@PAPER
@SVG
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    metavar="FILE",
    help="Where to write it; KIND-CAKE.pdf if not given.",
)
@FORCE
@click.pass_obj
def template(
    book: Path,
    /,
    kind: str | None,
    cake: str | None,
    paper: str,
    svg: bool,
    output: Path | None,
    force: bool,
    **options: Any,
) -> None:
    """Write a KIND of template for a cake, to print at actual size; without a KIND, list them all."""
    if kind is None:
        for name, (what, *_) in TEMPLATES.items():
            click.echo(f"{name:8} {what}")
        click.echo(f"{WHOLE:8} {WHOLE_SAYS}")
        return
    loaded = load_book(recipes_of(book), kitchen=False)
    try:
        if kind not in (*TEMPLATES, WHOLE):
            close = nearest(kind, (*TEMPLATES, WHOLE))
            hint = f'did you mean "{close}"?' if close else "choose from " + ", ".join((*TEMPLATES, WHOLE))
            raise AskError(f'there is no template "{kind}"', hint)
        _refuse(kind, options)
        if kind == WHOLE:
            _write_whole(loaded, Query(of=options["of"], size=options["size"]), cake, paper, svg, output, force)
            return
        if not cake:
            raise AskError("a template needs a cake", 'say which, such as --cake "round 20 cm"')
        tin = cake_of(cake, loaded.book, "--cake")
        drawn = TEMPLATES[kind][1](tin, loaded, options)
        path = _pdf(output or Path(f"{drawn.key}-{slug_of(tin.name)}.pdf"))
        pages = pages_of([drawn], paper, loaded)
        write_all(files_of(f"{spell(drawn.name)}, {tin.name}", pages, path, svg, drawn.key), force)
    except AskError as error:
        raise click.ClickException(f"{error.message}: {error.hint}") from None


def _write_whole(
    loaded: Loaded, asked: Query, cake: str | None, paper: str, svg: bool, output: Path | None, force: bool
) -> None:
    """Every template of a cake in the book, in the size asked for."""
    if cake:
        raise AskError("--cake is for a single tin", "name a cake in the book with --of")
    if asked.of is None:
        slugs = ", ".join(sorted(loaded.book.cakes))
        raise AskError("these templates need a cake", f"say which, with --of: {slugs}")
    whole, size = cake_asked(loaded.book, loaded.facts, asked)
    drawn = templates_of_cake(whole, label_mm, loaded.facts)
    if not drawn:
        raise AskError(f'"{whole.design.name}" has no parts or dowels to draw', "try another KIND of template")
    path = _pdf(output or Path(f"{whole.slug}-templates.pdf"))
    title = f"{whole.design.name}, {spell(size)}, templates"
    write_all(files_of(title, pages_of(drawn, paper, loaded), path, svg), force)


def _pdf(path: Path) -> Path:
    if path.suffix.lower() != ".pdf":
        raise AskError(f'"{path}" does not end in .pdf', "name a file that does")
    return path


def _refuse(kind: str, options: Options) -> None:
    """AskError for an option that belongs to another template, or is about drops when there are none."""
    context = click.get_current_context()
    takes_own = {**{name: theirs for name, (*_, theirs) in TEMPLATES.items()}, WHOLE: WHOLE_TAKES}
    own = takes_own[kind]
    given = [key for key in options if context.get_parameter_source(key) is ParameterSource.COMMANDLINE]
    for key in given:
        if key not in own:
            others = [name for name, theirs in takes_own.items() if key in theirs]
            takes = f"it takes {', '.join(f'--{each}' for each in own)}" if own else "it takes no options of its own"
            raise AskError(f'the template "{kind}" cannot use --{key}', f"{takes}; --{key} goes with {others[0]}")
        if key in ("curve", "start") and "deep" not in given:
            raise AskError(
                f"--{key} is only for drops, and without --deep you get panels", 'add --deep "4 cm", or leave it out'
            )


def cake_of(text: str, book: Book, option: str) -> Tin:
    """One cake by the name of its tin. AskError for what cannot be read, and for two."""
    try:
        (count, tin), *others = read_measured(text.strip(), named_tins(book), book.house.spoons)
    except Misread as error:
        raise AskError(f"{option}: {error.message}", error.hint) from None
    if says_measure(text):
        raise AskError(f"{option}: a template depends on a cake's outline, not on what its tin holds",
                       f'write "{tin.full_name}"')  # fmt: skip
    if tin.kind.in_trays:
        raise AskError(f"{option}: {tin.name} are not cut or covered like a cake", 'name a tin, such as "round 20 cm"')
    if count + len(others) != 1:
        raise AskError(f"{option}: a template is for one cake, not {count + len(others)}", f'write "{tin.name}"')
    return tin


def length(text: str | None, option: str, book: Book) -> float | None:
    """A length in mm, or None if nobody has said."""
    try:
        return None if text is None else read_length(text.strip(), book.house.spoons).base
    except Misread as error:
        raise AskError(f"--{option}: {error.message}", error.hint) from None


def pages_of(templates: Sequence[Template], paper: str, loaded: Loaded) -> tuple[PaperPage, ...]:
    """Templates on paper, with the house's name."""
    overlap_mm = loaded.facts.numbers["overlap of sheets"].value
    return paper_pages(templates, PAPERS[paper], overlap_mm, loaded.book.house.name)


def files_of(title: str, pages: Sequence[PaperPage], path: Path, svg: bool, all_of: str = "") -> dict[Path, bytes]:
    """The PDF of some pages and, if asked, a drawing of each next to it, named by its key without the key `all_of`
    them."""
    files = {path: templates_pdf(title, pages)}
    if svg:
        for page in pages:
            which = page.key.removeprefix(all_of).strip("-")
            files[path.with_name(f"{path.stem}-{which}.svg" if which else f"{path.stem}.svg")] = page.svg.encode()
    return files


def free(paths: Sequence[Path], force: bool) -> None:
    """Stop before anything is written if one of `paths` is taken or has no folder."""
    for path in paths:
        if path.is_dir() or (path.exists() and not force):
            cure = "name another" if path.is_dir() else "add --force to overwrite it, or give another name with -o"
            raise click.ClickException(f'"{path}" already exists and has been left alone: {cure}')
        if not path.absolute().parent.is_dir():
            raise click.ClickException(f'there is no folder "{path.parent}"')


def write_all(files: Mapping[Path, bytes], force: bool) -> None:
    """Write all of them or none, and say so."""
    free(list(files), force)
    put(files)
    for path, content in files.items():
        click.echo(f'"{path}" written, {max(1, round(len(content) / 1000))} kB.')
