import { armFrames, type Car, type Corner, FOOT, INCH, linkTubes } from "@armwright/engine";
import { type CutPlan, cutPlan, type Piece } from "./cut-plan.ts";
import { tubeWords } from "./hardware.ts";
import { type CopeEnd, massOfPiece, type TubePiece } from "./tube-piece.ts";
import { tubePieces } from "./tube-pieces.ts";

/** A tube to cut, both sides of the car. */
export interface CutLine {
  /** Counted from 1, as on the sheets. */
  readonly number: number;
  readonly piece: TubePiece;
  readonly count: 2;
  /** kg of one. */
  readonly mass: number;
  /** Numbers of the templates of its two ends; null where it is sawn square. */
  readonly fromTemplate: number | null;
  readonly toTemplate: number | null;
}

/** Bars of one tube size and material, and what comes off each. */
export interface StockPlan {
  readonly tube: string;
  readonly material: string;
  readonly plan: CutPlan;
}

export interface CutList {
  readonly lines: readonly CutLine[];
  /** Coped ends in the order of their numbers, from 1. */
  readonly templates: readonly { readonly number: number; readonly piece: TubePiece; readonly end: CopeEnd }[];
  readonly stock: readonly StockPlan[];
  readonly bar: number;
  readonly kerf: number;
}

export interface Stock {
  /** Length of a bar as bought, m. */
  readonly bar: number;
  /** Width of a saw cut, m. */
  readonly kerf: number;
}

/** Bars as tube is commonly sold, a band saw's cut: common practice. */
export const USUAL_STOCK: Readonly<Record<Car["units"], Stock>> = {
  "inch-pound": { bar: 20 * FOOT, kerf: INCH / 8 },
  metric: { bar: 6, kerf: 0.003 },
};

/** All tubes of a car, numbered, with their templates, nested into bars. */
export function cutList(corner: Corner, stock: Stock = USUAL_STOCK[corner.car.units]): CutList {
  const { car } = corner;
  const pieces = tubePieces(corner, armFrames(car), linkTubes(car));
  const templates: { number: number; piece: TubePiece; end: CopeEnd }[] = [];
  const lines = pieces.map((piece, index): CutLine => {
    const template = (end: TubePiece["from"]): number | null => {
      if (end.kind !== "cope") return null;
      templates.push({ number: templates.length + 1, piece, end });
      return templates.length;
    };
    return {
      number: index + 1,
      piece,
      count: 2,
      mass: massOfPiece(piece),
      fromTemplate: template(piece.from),
      toTemplate: template(piece.to),
    };
  });
  const kinds = new Map<string, { tube: string; material: string; pieces: Piece[] }>();
  for (const { piece, number, count } of lines) {
    const tube = tubeWords(piece.diameter, piece.wall, car.units);
    const key = `${tube} ${piece.material}`;
    const kind = kinds.get(key) ?? { tube, material: piece.material, pieces: [] };
    kinds.set(key, kind);
    for (let i = 0; i < count; i += 1)
      kind.pieces.push({ name: `${number}${i === 0 ? "L" : "R"}`, length: piece.length });
  }
  return {
    lines,
    templates,
    stock: [...kinds.values()].map(({ tube, material, pieces: of }) => ({
      tube,
      material,
      plan: cutPlan(of, stock.bar, stock.kerf),
    })),
    ...stock,
  };
}
