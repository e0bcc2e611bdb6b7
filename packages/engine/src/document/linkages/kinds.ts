import { z } from "zod";
import { type Fields, fieldFacts } from "../fields.ts";
import { DOUBLE_A_ARM, doubleAArmSection } from "./double-a-arm.ts";
import { FIVE_LINK, fiveLinkSection } from "./five-link.ts";
import type { LinkageForm } from "./form.ts";
import { H_ARM, hArmSection } from "./h-arm.ts";
import { TRAILING_ARM, trailingArmSection } from "./trailing-arm.ts";

const FORMS: readonly LinkageForm[] = [H_ARM, DOUBLE_A_ARM, TRAILING_ARM, FIVE_LINK];

export const LINKAGE_KINDS: readonly string[] = FORMS.map((form) => form.kind);

export const linkageForm = (kind: unknown): LinkageForm | undefined => FORMS.find((form) => form.kind === kind);

export const linkageSection = (f: Fields) =>
  z
    .discriminatedUnion("kind", [hArmSection(f), doubleAArmSection(f), trailingArmSection(f), fiveLinkSection(f)], {
      error: () => LINKAGE_KINDS.join("|"),
    })
    .register(fieldFacts, { meaning: "How the wheel is held: one of four kinds." });
