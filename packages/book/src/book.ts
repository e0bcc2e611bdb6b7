import type { Study } from "@armwright/engine";
import { type CarDocument, fingerprintOf } from "@armwright/engine/document";
import { type CutList, cutList } from "./cut/cut-list.ts";
import { frame, roomOn, type SheetFacts } from "./paper/frame.ts";
import type { Leaf } from "./paper/leaf.ts";
import { PAGE_SIZES, type PageSize } from "./paper/page-size.ts";
import { armSheets } from "./sheets/arm-sheets.ts";
import { buySheets } from "./sheets/buy-sheet.ts";
import { carSheets } from "./sheets/car-sheet.ts";
import { cutListSheets } from "./sheets/cut-list-sheets.ts";
import { cycleCards } from "./sheets/cycle-cards.ts";
import { jigSheets } from "./sheets/jig-sheets.ts";
import { linkSheets } from "./sheets/link-sheets.ts";
import { mountSheets } from "./sheets/mount-sheets.ts";
import { orderSheets } from "./sheets/order-sheet.ts";
import { settingsSheets } from "./sheets/settings-sheet.ts";
import { shaftSheets } from "./sheets/shaft-sheet.ts";
import type { Makings, Sheet } from "./sheets/sheet.ts";
import { signOffSheets } from "./sheets/sign-off-sheet.ts";
import { spindleSheets } from "./sheets/spindle-sheets.ts";
import { strengthSheets } from "./sheets/strength-sheet.ts";
import { templateSheets } from "./sheets/template-sheets.ts";

export interface BookOptions {
  readonly paper: PageSize["name"];
  /** The one thing that two books of the same car may differ in. */
  readonly date: Date;
  /** Travel of both wheels in the solid assembly, m; ride height where left out. */
  readonly travel?: number;
}

/** The sheets of a car's build book, framed and numbered, in the order in which they are used. */
export function bookLeaves(
  study: Study,
  document: CarDocument,
  options: BookOptions,
  cuts: CutList = cutList(study.corner),
): readonly Leaf[] {
  const page = PAGE_SIZES[options.paper];
  const facts: SheetFacts = {
    car: study.car.name,
    version: study.car.version,
    date: writtenDate(options.date),
    fingerprint: fingerprintOf(document),
  };
  const makings: Makings = { study, document, cuts, page, room: roomOn(page), facts };
  const sheets = SHEETS.flatMap((make) => make(makings));
  return sheets.map((sheet, index) => {
    const own = sheet.page ?? page;
    return {
      id: sheet.id,
      title: sheet.title,
      page: own,
      isTrueSize: sheet.isTrueSize ?? false,
      parts: [...frame(own, sheet.title, sheet.note, facts, `${index + 1} of ${sheets.length}`), ...sheet.parts],
    };
  });
}

/** In the order of use. */
const SHEETS: readonly ((makings: Makings) => readonly Sheet[])[] = [
  carSheets,
  orderSheets,
  jigSheets,
  armSheets,
  linkSheets,
  spindleSheets,
  shaftSheets,
  mountSheets,
  cutListSheets,
  templateSheets,
  cycleCards,
  settingsSheets,
  strengthSheets,
  signOffSheets,
  buySheets,
];

const MONTHS = "January February March April May June July August September October November December".split(" ");
const writtenDate = (date: Date): string =>
  `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
