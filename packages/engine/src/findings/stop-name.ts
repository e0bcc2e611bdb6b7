/** What ends the travel, in words. */
export const STOP_NAME = {
  "bump-stop": "bump stop",
  strap: "strap",
  shock: "shock",
  travel: "aimed-at stop",
} as const;
