/** Paper that a printer at home takes, upright, mm. */
export interface PageSize {
  readonly name: "letter" | "a4";
  readonly label: string;
  readonly width: number;
  readonly height: number;
}

/** ANSI/ASME Y14.1 size A (8 1/2 × 11 in) and ISO 216 A4. */
export const PAGE_SIZES = {
  letter: { name: "letter", label: "Letter", width: 215.9, height: 279.4 },
  a4: { name: "a4", label: "A4", width: 210, height: 297 },
} as const satisfies Readonly<Record<PageSize["name"], PageSize>>;

/** Left free round every sheet, mm: what common printers at home cannot reach, and a hole punch at the left. */
export const MARGIN = { left: 14, right: 9, top: 9, bottom: 9 } as const;

export const lying = (page: PageSize): PageSize => ({ ...page, width: page.height, height: page.width });
