"""The bake is of the sentences that bake: what chills, rests or beats is none, and two times are none for certain."""

from __future__ import annotations

from tests.every import every

from tinbook.notes.baking import baking_of


@every(
    ("lines", "oven", "time"),
    [
        (["Heat the oven to 180C.", "Bake for 25 mins. Cool for 1 hour."], "180 °C", "25 min"),
        (["Beat for 10 minutes.", "Bake at 160 °C for 1 hour 10 minutes."], "160 °C", "70 min"),
        (["Rest for 2 hours.", "Chill overnight, 12 hours.", "Bake 30 min at 170C fan."], "170 °C fan", "30 min"),
        (["Bake at 150C for 1 hr 30 and leave in the tin for 20 minutes."], "150 °C", "90 min"),
        (["gas 4, 40 mins, 7 in sq tin"], "gas mark 4", "40 min"),
        (["Put in the oven at 180C for 20 minutes."], "180 °C", "20 min"),
        (["Cook time: 40 minutes", "Bake at 180C."], "180 °C", "40 min"),
        (["Cook time: 30 minutes", "Bake at 350F for 28 to 32 minutes."], "350 °F", "28-32 min"),
        (["Warm the syrup to 110C.", "Bake at 160C for 50 min."], "160 °C", "50 min"),
    ],
)
def test_what_is_read(lines: list[str], oven: str, time: str) -> None:
    bake = baking_of(lines, fahrenheit=False)
    assert (bake.oven, bake.time) == (oven, time)
    assert (bake.oven_doubt, bake.time_doubt) == ("", "")


@every(
    "lines",
    [
        ["Bake for 50 mins at 160C, then another 20 mins."],
        ["Bake for 50 mins at 160C.", "Turn round and bake 20 mins."],
        ["Bake at 160C for two hours or a little over."],
        ["Chill for 2 hours. Oven 180C."],
        ["Stir 1 tsp baking powder in for 3 minutes. Oven 180C."],
        [],
    ],
)
def test_a_time_that_cannot_be_read_whole_stays_open(lines: list[str]) -> None:
    bake = baking_of(lines, fahrenheit=False)
    assert bake.time == "" and bake.time_doubt


def test_two_heats_stay_open_and_so_do_words() -> None:
    assert baking_of(["Bake at 180C, then at 140C."], False).oven == ""
    assert "moderate oven" in baking_of(["Bake in a moderate oven."], False).oven_doubt


def test_what_the_data_says_stands_where_the_words_say_nothing() -> None:
    assert baking_of(["Bake at 160C."], False, "65 min").time == "65 min"
