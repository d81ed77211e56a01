"""Where something is written."""

from __future__ import annotations

from pathlib import Path

from tinbook.loading.where import line_of


def test_the_line_of_a_card(tmp_path: Path) -> None:
    folder = tmp_path / "recipes"
    (folder / "house").mkdir(parents=True)
    file = folder / "house" / "ingredients.yaml"
    file.write_text("# cards\ningredients:\n  salt: {}\n  butter:\n    allergens: [milk]\n", "utf-8")
    assert line_of(folder, "house/ingredients", ("ingredients", "butter")) == "recipes/house/ingredients.yaml:4"
    assert line_of(folder, "house/ingredients", ()) == "recipes/house/ingredients.yaml:1"
    assert line_of(folder, "house/labels", ()) == "recipes/house/labels.yaml"
    file.write_text("ingredients: [", "utf-8")
    assert line_of(folder, "house/ingredients", ("ingredients",)) == "recipes/house/ingredients.yaml"
