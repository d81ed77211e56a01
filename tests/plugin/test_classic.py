"""Modules made into one classic script. That it runs as the modules do is seen in tests/browser/test_offline.py."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tinbook.plugin.classic import classic_script
from tinbook.plugin.offline import ENTRIES, FINDING, LIBRARY

OURS = Path(__file__).parents[2] / "plugins" / "tinbook" / "plugin" / "theme" / "assets" / "tinbook"


def write(folder: Path, **modules: str) -> Path:
    for name, text in modules.items():
        (folder / f"{name}.js").write_text(text, "utf-8")
    return folder


def test_each_module_stands_once_and_before_who_wants_it(tmp_path: Path) -> None:
    write(
        tmp_path,
        main='import { a } from "./left.js";\nimport { b as c } from "./right.js";\na(c);\n',
        left='import { base } from "./base.js";\nexport const a = base;\n',
        right='import { base } from "./base.js";\nexport async function b() { return base; }\n',
        base="export class base {}\n",
    )
    script = classic_script(tmp_path)
    assert re.findall(r"^const \$(\w+) =", script, re.MULTILINE) == ["base", "left", "right", "main"]
    assert "const { b: c } = $right;" in script
    assert "return { b };" in script and "return { base };" in script


def test_what_is_fetched_late_is_there_from_the_start(tmp_path: Path) -> None:
    write(tmp_path, main='const a = () => import("./late.js");\n', late="export const b = 1;\n")
    script = classic_script(tmp_path)
    assert re.findall(r"^const \$(\w+) =", script, re.MULTILINE) == ["late", "main"]
    assert "const a = () => Promise.resolve($late);" in script


def test_every_module_of_the_book_is_in_the_script() -> None:
    script, find = classic_script(OURS, *ENTRIES), classic_script(OURS, FINDING)
    for path in OURS.glob("*.js"):
        if path.name != LIBRARY:
            held = find if path.stem.startswith(FINDING) else script
            assert held.count(f"const ${path.stem} = (() => {{") == 1, path.name
    assert not re.search(r"^\s*(import|export)\b", script, re.MULTILINE)


@pytest.mark.parametrize(
    "text",
    [
        'import all from "./a.js";',
        'import * as all from "./a.js";',
        'import "./a.js";',
        "export default 3;",
        "export { a };",
        "export let a = 1;",
        "const a = import('./a.js');",
        "const a = import.meta.url;",
    ],
)
def test_other_forms_are_refused(tmp_path: Path, text: str) -> None:
    write(tmp_path, main=text, a="export const a = 1;")
    with pytest.raises(ValueError, match=r"main\.js cannot be made a classic script"):
        classic_script(tmp_path)


def test_a_circle_of_imports_is_refused(tmp_path: Path) -> None:
    one, two = 'import { two } from "./two.js";', 'import { one } from "./one.js";'
    write(tmp_path, main='import { one } from "./one.js";', one=one, two=two)
    with pytest.raises(ValueError, match="in a circle: main > one > two > one"):
        classic_script(tmp_path)
