"""A class's pack: the day's timetable, the pieces to have ready, what to lay out, the sheets to hand out."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from tinbook.models.orders import Order
from tinbook.pages.base.page import Desk
from tinbook.pages.base.shared import Linked, plural
from tinbook.pages.spelling import formats
from tinbook.pages.spelling.orders import clock, lasts
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.mixtures.inline import unmarked
from tinbook.plans.orders.class_work import ClassPlan, Lesson, Piece, Taught, class_plan
from tinbook.plans.techniques.kit import Kit, MaterialRow


@dataclass(frozen=True, slots=True, kw_only=True)
class LessonLine:
    """What is done when: the clock, how long hands are busy, the step, and what is said of waiting."""

    clock: str
    takes: str
    number: int
    words: str
    waits: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TaughtView:
    """A technique as it is taught: its page, its lessons, the pieces to show, and what to lay out for everyone."""

    page: Linked
    lessons: tuple[LessonLine, ...]
    pieces: tuple[str, ...]
    materials: tuple[tuple[str, str, str], ...]
    tools: tuple[str, ...]
    not_food: str
    sheet: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassPack:
    """A class: when it begins and ends, for how many, and whether it fits the time that is booked."""

    begins: str
    ends: str
    people: str
    over: str
    taught: tuple[TaughtView, ...]


def class_pack(order: Order, desk: Desk) -> ClassPack | None:
    """The pack of a class; None for any other order."""
    plan = class_plan(order, desk.book, desk.facts)
    if plan is None:
        return None
    begins = order.hand_over
    over = ""
    if plan.over_min and order.class_:
        over = (
            f"This takes {lasts(plan.over_min)} longer than the {lasts(order.class_.lasts)} that are booked: teach "
            "less, or book longer."
        )
    return ClassPack(
        begins=clock(begins), ends=clock(begins + timedelta(minutes=plan.ends_min)),
        people=plural(plan.people, "person", "people"), over=over,
        taught=tuple(_taught(each, begins, plan) for each in plan.taught),
    )  # fmt: skip


def _taught(taught: Taught, begins: datetime, plan: ClassPlan) -> TaughtView:
    things = taught.kit.not_food
    return TaughtView(
        page=Linked(f"techniques/{taught.slug}", taught.technique.name),
        lessons=tuple(_lesson(each, begins) for each in taught.lessons),
        pieces=tuple(_piece(each) for each in taught.pieces),
        materials=tuple(_material(row) for row in taught.kit.materials),
        tools=tuple(_tools(taught.kit)),
        not_food=formats.sentence([_counted(formats.figure(thing.amount), thing.name) for thing in things])
        if things
        else "",
        sheet=f"tinbook sheet {taught.slug} --people {plan.people}",
    )


def _lesson(lesson: Lesson, begins: datetime) -> LessonLine:
    waits = ""
    if lesson.piece:
        waits = f"Carry on with piece {lesson.piece}, as this one has to be left for {lasts(lesson.wait_min)}."
    elif lesson.wait_min:
        waits = f"Leave it {lasts(lesson.wait_min)}."
    return LessonLine(
        clock=clock(begins + timedelta(minutes=lesson.begins_min)), takes=lasts(lesson.hands_min),
        number=lesson.number, words=unmarked(lesson.step.do), waits=waits,
    )  # fmt: skip


def _piece(piece: Piece) -> str:
    return (
        f"Piece {piece.number}: made as far as step {piece.step}, {lasts(piece.hands_min)}, and left "
        f"{lasts(piece.wait_min)} before the class reaches that step"
    )


def _material(row: MaterialRow) -> tuple[str, str, str]:
    wanted = row.wanted if isinstance(row.wanted, str) else spell(row.wanted)
    return formats.figure(row.amount), row.amount.unit, f"{row.name}{f', {wanted}' if wanted else ''}"


def _tools(kit: Kit) -> list[str]:
    return [_counted(str(tool.count), tool.name) for tool in kit.tools]


def _counted(count: str, name: str) -> str:
    return name if count in ("", "1") else f"{count} × {name}"
