// A list under its labels: puts each of `items`, made an element, under the group of its `title`.
export function grouped(items, group, element) {
  const groups = new Map();
  for (const item of items) {
    if (!groups.has(item.title)) groups.set(item.title, group(item.title));
    groups.get(item.title).append(element(item));
  }
  return [...groups.values()];
}
