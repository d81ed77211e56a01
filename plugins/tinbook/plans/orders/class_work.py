"""A class: what is taught when, which pieces have to be ready at which stage, and what to lay out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tinbook.facts import Facts
from tinbook.models import Book, Step, Technique
from tinbook.models.orders import Order
from tinbook.plans.base.saying import saying
from tinbook.plans.orders.tasks import After, rounds
from tinbook.plans.orders.work import DAY_MIN, UNSAID_MIN, Work
from tinbook.plans.techniques.kit import Kit, kit

LONGEST_WAIT_MIN = 20.0
"""What has to be left alone for longer is not waited for in a class: a piece stands ready (our own judgement)."""
LAY_OUT_MIN = 5.0
"""How long it takes to lay out what one person needs for one technique (our own judgement)."""
GREET_MIN = 10.0
"""Aprons, hands, and what is going to happen (our own judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """A step as it is taught: when it begins, minutes into the class, and how long hands are busy and it is then left;
    `piece`: the number of the piece that goes on from here, for one that is not waited for."""

    begins_min: float
    hands_min: float
    wait_min: float
    step: Step
    number: int
    piece: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece to have ready: made up to a step, and left for `wait_min` before it is shown; `hands_min` to make it."""

    number: int
    step: int
    hands_min: float
    wait_min: float
    ahead_min: float | None


@dataclass(frozen=True, kw_only=True)
class Taught:
    """A technique in a class: its lessons in order, the pieces to show, and what to lay out for everyone."""

    slug: str
    technique: Technique
    lessons: tuple[Lesson, ...]
    pieces: tuple[Piece, ...]
    kit: Kit


@dataclass(frozen=True, kw_only=True)
class ClassPlan:
    """A class from its beginning; `over_min`: by how much it takes longer than booked, 0 if it does not."""

    taught: tuple[Taught, ...]
    people: int
    ends_min: float
    over_min: float


def class_plan(order: Order, book: Book, facts: Facts) -> ClassPlan | None:
    """The plan of a class; None for an order that is not one. Hands are counted at the most a step says."""
    booked = order.class_
    if booked is None:
        return None
    at, taught = GREET_MIN, []
    for slug in booked.techniques:
        if technique := book.techniques.get(slug):
            lessons, pieces = _taught(technique, at)
            at = lessons[-1].begins_min + lessons[-1].hands_min + _waited(lessons[-1]) if lessons else at
            with_kit = kit(technique, book, facts, booked.people)
            taught.append(Taught(slug=slug, technique=technique, lessons=lessons, pieces=pieces, kit=with_kit))
    return ClassPlan(taught=tuple(taught), people=booked.people, ends_min=at, over_min=max(0.0, at - booked.lasts))


def _waited(lesson: Lesson) -> float:
    return 0.0 if lesson.piece else lesson.wait_min


def _taught(technique: Technique, at: float) -> tuple[tuple[Lesson, ...], tuple[Piece, ...]]:
    lessons, pieces, so_far = list[Lesson](), list[Piece](), 0.0
    last = len(technique.steps)
    for number, step in enumerate(technique.steps, 1):
        hands = step.hands_on.high.base if step.hands_on else 0.0
        wait = (step.waiting.low.base if step.waiting else 0.0) + (step.stands.minutes if step.stands else 0.0)
        so_far += hands
        piece = None
        if wait > LONGEST_WAIT_MIN and number < last:
            piece = len(pieces) + 1
            ahead = step.ahead.minutes if step.ahead else None
            pieces.append(Piece(number=piece, step=number, hands_min=so_far, wait_min=wait, ahead_min=ahead))
        left = wait if number < last else 0.0
        lesson = Lesson(begins_min=at, hands_min=hands, wait_min=left, step=step, number=number, piece=piece)
        lessons.append(lesson)
        at += hands + _waited(lesson)
    return tuple(lessons), tuple(pieces)


def class_work(work: Work, facts: Facts) -> list[After]:
    """The tasks before a class: pieces to show, and everything laid out."""
    plan = class_plan(work.order, work.book, facts)
    return [after for taught in plan.taught for after in _before(work, taught, plan.people)] if plan else []


def _before(work: Work, taught: Taught, people: int) -> Iterator[After]:
    name = taught.technique.name
    for piece in taught.pieces:
        made = work.task(
            f"piece-{taught.slug}-{piece.number}",
            saying("task_piece", technique=name, step=piece.step),
            max(piece.ahead_min or UNSAID_MIN, piece.wait_min + DAY_MIN),
            hands_min=rounds(piece.hands_min),
            of=taught.slug,
            said_min=rounds(piece.hands_min),
        )
        yield After(key=made.key, wait_min=piece.wait_min)
    laid = work.task(
        f"lay-out-{taught.slug}",
        saying("task_lay_out", technique=name, people=people),
        DAY_MIN,
        hands_min=rounds(LAY_OUT_MIN * people),
    )
    yield After(key=laid.key)
