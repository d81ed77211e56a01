"""The book as pages with addresses and a place in the contents. It knows no server and no theme."""

from tinbook.site.book import Site, build_site
from tinbook.site.contents import contents

__all__ = ["Site", "build_site", "contents"]
