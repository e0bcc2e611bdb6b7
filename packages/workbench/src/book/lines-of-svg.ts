/** The words of a drawing from above to below, those on one line from left to right. */
export function linesOfSvg(svg: string): readonly string[] {
  const lines = new Map<number, { readonly x: number; readonly words: string }[]>();
  // Without its style, which the page's own rules forbid and its words do not need.
  const bare = svg.replace(/<style>.*?<\/style>/s, "");
  for (const text of new DOMParser().parseFromString(bare, "image/svg+xml").querySelectorAll("text")) {
    const [x, y] = [Number(text.getAttribute("x")), Number(text.getAttribute("y"))];
    const words = (text.textContent ?? "").replace(/\s+/g, " ").trim();
    const row = Math.round(y * 10);
    if (words !== "") lines.set(row, [...(lines.get(row) ?? []), { x, words }]);
  }
  return [...lines]
    .sort(([a], [b]) => a - b)
    .map(([, cells]) =>
      cells
        .sort((a, b) => a.x - b.x)
        .map(({ words }) => words)
        .join("   "),
    );
}
