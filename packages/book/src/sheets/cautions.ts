/** What stands on the first sheet and wherever something can hurt: common practice. */
export const CAUTIONS: readonly string[] = [
  "Jack stands under the frame, wheels chocked, before anybody is under the car; a jack lifts, it does not hold.",
  "A squeezed spring kills: shock fully open and the wheel hanging before the collar is turned off.",
  "Shocks and gas stops hold pressure: let it down through the valve, face away, before anything is opened; nitrogen only.",
  "Welds here carry lives. Tack, cycle, measure, then have them made by somebody who can; look for cracks after the first runs.",
  "This book is geometry and a screen of strength, no approval. Local law, your rule book and a licensed engineer decide.",
];
