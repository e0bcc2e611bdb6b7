import { distance, type Mount, NO_VALUE, unitOf } from "@armwright/engine";
import type { JigPoint } from "../jig/jig-part.ts";
import type { Block } from "../paper/flow.ts";
import { type Measure, type PartLine, partView } from "../paper/part-view.ts";
import { FROM_BEHIND, FROM_THE_WHEEL, onTheRight, type Side } from "../paper/side.ts";
import { endsOf } from "./ends-of-travel.ts";
import { flowSheets } from "./flow-sheets.ts";
import { lengthsIn, type Makings, type Sheet, tape } from "./sheet.ts";

/** Where shock, strap and bump stop are mounted, left and right each; then what each must measure. */
export function mountSheets(makings: Makings): readonly Sheet[] {
  const pairs = pairsOf(makings);
  if (pairs.length === 0) return [];
  return [
    ...(["left", "right"] as const).flatMap((hand) => placesSheet(pairs, hand, makings)),
    ...lengthSheets(makings),
  ];
}

/** Two places that one part goes between. */
interface Pair {
  readonly upper: JigPoint & { readonly on: string };
  readonly lower: JigPoint & { readonly on: string };
}

function pairsOf({ study }: Makings): readonly Pair[] {
  const { shock, strap, bumpStop } = study.car;
  const wanted: readonly (readonly [Mount | undefined, string, Mount | undefined, string])[] = [
    [shock?.upper, "shock, upper mount", shock?.lower, "shock, lower mount"],
    [strap?.upper, "strap, upper tab", strap?.lower, "strap, lower tab"],
    [bumpStop?.base, "bump stop, base", bumpStop?.strikes, "bump stop, landing place"],
  ];
  const marks = [..."ABCDEF"];
  const place = ({ point, on }: Mount, label: string) => ({
    mark: marks.shift()!,
    label,
    point,
    on: on.replace("-", " "),
  });
  return wanted.flatMap(([upper, above, lower, below]) =>
    upper && lower ? [{ upper: place(upper, above), lower: place(lower, below) }] : [],
  );
}

function placesSheet(pairs: readonly Pair[], hand: "left" | "right", makings: Makings): readonly Sheet[] {
  const points = pairs.flatMap(({ upper, lower }) => [upper, lower]);
  const lines = pairs.map(({ upper, lower }): PartLine => ({ from: upper.point, to: lower.point, as: "axis" }));
  const views = [FROM_BEHIND, FROM_THE_WHEEL].map(
    (side): Block => ({
      kind: "view",
      share: 1,
      least: 62,
      draw: (box) =>
        partView(
          { tubes: [], points, lines, measures: measuresIn(side, pairs, makings) },
          hand === "left" ? side : onTheRight(side),
          box,
        ).parts,
    }),
  );
  return flowSheets(
    {
      id: `mounts-${hand}`,
      title: `Mounts of shock, strap, stop, ${hand.toUpperCase()}`,
      note: `${hand === "right" ? "mirror image; " : ""}at ride height; ${lengthsIn(makings)}`,
    },
    [
      ...views,
      {
        kind: "table",
        columns: [
          { head: "", share: 5, bold: true },
          { head: "place", share: 32 },
          { head: "on the", share: 16 },
          { head: "forward", share: 13, align: "end", bold: true },
          { head: "out", share: 13, align: "end", bold: true },
          { head: "up", share: 13, align: "end", bold: true },
          { head: "as built", share: 18 },
        ],
        rows: points.map(({ mark, label, on, point }) => [
          mark,
          label,
          on,
          tape(makings, point.x),
          tape(makings, point.y),
          tape(makings, point.z),
          "",
        ]),
        style: { isForm: true, size: "text" },
      },
      {
        kind: "words",
        words: `Forward counts from: ${makings.study.car.datum}. Out from the centreline, up from the floor. Two tabs a bolt, each tied to a tube's node; weld all round but for the last ${tape(makings, 0.00635)} ${unitOf("length", makings.study.car.units)} at a plate's end. Tack only, until the cycle cards are filled in.`,
        style: { ink: "ink-2" },
      },
    ],
    makings,
  );
}

/** Upper place over lower: its height where the sheet shows up, its way out or forward across. */
function measuresIn(side: Side, pairs: readonly Pair[], makings: Makings): Measure[] {
  const least = 0.003;
  return pairs.flatMap(({ upper, lower }): Measure[] => {
    const name = `${upper.mark}-${lower.mark}`;
    const [from, to] = [upper.point, lower.point];
    const rise = side.up(from) - side.up(to);
    const across = side.across(from) - side.across(to);
    return [
      ...(Math.abs(rise) > least
        ? [{ from, to, words: `${name} ${tape(makings, Math.abs(rise))}`, along: "upright" } as const]
        : []),
      ...(Math.abs(across) > least
        ? [{ from, to, words: `${name} ${tape(makings, Math.abs(across))}`, along: "level" } as const]
        : []),
    ];
  });
}

function lengthSheets(makings: Makings): readonly Sheet[] {
  const { shock, strap, bumpStop, units } = makings.study.car;
  const mark = (metres: number): string => `${tape(makings, metres)} ${unitOf("length", units)}`;
  const section = (title: string, rows: readonly (readonly string[])[], note: string): Block[] =>
    rows.length === 0
      ? []
      : [
          { kind: "head", words: title },
          {
            kind: "table",
            columns: [
              { head: "", share: 54 },
              { head: "must read", share: 22, align: "end", bold: true },
              { head: "left, as built", share: 16 },
              { head: "right, as built", share: 16 },
            ],
            rows: rows.map((row) => [...row, "", ""]),
            style: { isForm: true, size: "text" },
          },
          { kind: "words", words: note, style: { ink: "ink-2" }, gap: 2 },
        ];
  return flowSheets(
    { id: "mounts", title: "Shock, strap, bump stop", note: lengthsIn(makings) },
    [
      ...section(
        "Shock, one a side",
        shock
          ? [
              ["eye to eye, fully closed", mark(shock.shortest)],
              ["eye to eye, fully open", mark(shock.longest)],
              ["eye to eye at ride height", mark(distance(shock.upper.point, shock.lower.point))],
              ...endsOf(makings, "shockLength", "eye to eye"),
              ["widest, to keep clear round", mark(shock.diameter)],
            ]
          : [],
        "Both eyes' bolts parallel at ride height; a little side float, not clamped. A shock under gas pushes itself open: let it down or strap it before the bolt comes out.",
      ),
      ...section(
        "Strap, one a side",
        strap ? [["hole to hole, pulled tight", mark(strap.length)], ...endsOf(makings, "strapSlack", "slack")] : [],
        "Tabs first, then tape mount to mount at full droop; it stretches: measure again after the first runs. Never on the shock's bolt.",
      ),
      ...section(
        "Bump stop, one a side",
        bumpStop
          ? [
              ["foot to free face", mark(bumpStop.reach)],
              ["foot to face, squeezed solid", mark(bumpStop.solid)],
              ...endsOf(makings, "bumpStopGap", "stop to strike plate", (gap) => gapWords(gap, mark)),
            ]
          : [],
        "Strike plate flat and square to the stop where it first touches, never on bare tube.",
      ),
    ],
    makings,
  );
}

/** A gap, or how far the stop is squeezed where there is none left. */
const gapWords = (gap: number | null, mark: (metres: number) => string): string =>
  gap === null ? NO_VALUE : gap < 0 ? `squeezed ${mark(-gap)}` : `gap ${mark(gap)}`;
