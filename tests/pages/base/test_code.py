"""A code to scan, read back by zxing-cpp (https://github.com/zxing-cpp/zxing-cpp)."""

import re

import pytest
import zxingcpp
from PIL import Image, ImageDraw

from tinbook.pages.base.code import code

SCALE = 8


def drawn(svg: str) -> Image.Image:
    """The code as an image: its path is rows of strokes, one module high, at half modules down."""
    size = [int(part) for part in re.findall(r'viewBox="0 0 (\d+) (\d+)"', svg)[0]]
    image = Image.new("L", (size[0] * SCALE, size[1] * SCALE), 255)
    pen = ImageDraw.Draw(image)
    (path,) = re.findall(r'stroke="#000" d="([^"]*)"', svg)
    x = y = 0.0
    for kind, numbers in re.findall(r"([Mmh])([^Mmh]*)", path):
        found = [float(each) for each in re.findall(r"-?[\d.]+", numbers)]
        if kind == "h":
            pen.rectangle((x * SCALE, (y - 0.5) * SCALE, (x + found[0]) * SCALE - 1, (y + 0.5) * SCALE - 1), fill=0)
            x += found[0]
        else:
            x, y = found if kind == "M" else (x + found[0], y + found[1])
    return image


@pytest.mark.parametrize("address", ["https://heronsmouth.example/techniques/cover-a-board/", "https://b.example/½/"])
def test_it_says_its_address(address: str) -> None:
    svg = str(code(address))
    assert svg.startswith(f'<svg role="img" aria-label="Code for {address}"')
    (found,) = zxingcpp.read_barcodes(drawn(svg))
    assert found.text == address


def test_an_address_is_text() -> None:
    assert "<script>" not in code('https://b.example/"><script>')
