"""Photos in a built site: there under their own names, and none that belongs to something private."""

from __future__ import annotations

import subprocess
import sys
from io import BytesIO
from pathlib import Path

from PIL import Image

TECHNIQUE = """\
name: {name}
purpose: To see.
steps: [Look.]
pictures: [{{file: {file}, alt: {name}.}}]
"""


def photo(colour: str) -> bytes:
    out = BytesIO()
    Image.new("RGB", (1200, 900), colour).save(out, "JPEG")
    return out.getvalue()


def test_photos_of_the_open_book_only(tmp_path: Path) -> None:
    recipes = tmp_path / "recipes"
    for folder in ("house", "techniques", "pictures"):
        (recipes / folder).mkdir(parents=True)
    (tmp_path / "book_src").mkdir()
    (recipes / "house/house.yaml").write_text("book: 1\nname: Lamp Room house book\n")
    (recipes / "techniques/open.yaml").write_text(TECHNIQUE.format(name="Open", file="quay.jpg"))
    (recipes / "techniques/closed.yaml").write_text(
        TECHNIQUE.format(name="Cormorant", file="secret.jpg") + "private: yes\n"
    )
    (recipes / "techniques/half.yaml").write_text(
        TECHNIQUE.format(name="Half", file="half.jpg") + "private: [pictures]\n"
    )
    for name, colour in (("quay", "red"), ("secret", "green"), ("half", "blue")):
        (recipes / f"pictures/{name}.jpg").write_bytes(photo(colour))
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: Lamp Room\ndocs_dir: book_src\ntheme: {name: material, font: false}\nplugins: [tinbook]\n"
    )
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--strict", "-f", str(tmp_path / "mkdocs.yml")]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=False)
    assert done.returncode == 0, done.stderr
    site = tmp_path / "site"
    names = sorted(path.name for path in (site / "pictures").iterdir())
    assert len(names) == 2 and all(name.startswith("quay.") and name.endswith(".jpg") for name in names)
    sizes = sorted(Image.open(site / "pictures" / name).size for name in names)
    assert sizes == [(1000, 750), (1200, 900)]
    for path in site.rglob("*"):
        if path.is_file():
            text = path.read_bytes().lower()
            assert b"cormorant" not in text and b"secret.jpg" not in text and b"half.jpg" not in text, path
