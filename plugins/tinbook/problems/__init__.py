"""A problem as a value: what is wrong, where it was written, and what to write instead."""

from tinbook.problems.problem import Place, Problem, Severity, as_dict
from tinbook.problems.spelling import spell
from tinbook.problems.words import nearest

__all__ = ["Place", "Problem", "Severity", "as_dict", "nearest", "spell"]
