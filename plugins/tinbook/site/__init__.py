"""The book as pages with addresses and a place in the contents. It knows nothing of servers or themes."""

from tinbook.site.book import Site, build_site
from tinbook.site.contents import contents

__all__ = ["Site", "build_site", "contents"]
