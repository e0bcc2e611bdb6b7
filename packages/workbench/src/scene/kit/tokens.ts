import { Color } from "three";

/** The look's colours as the page's CSS says them now. */
export interface Tokens {
  readonly paper: Color;
  readonly ink: Color;
  readonly pencil: Color;
  readonly stop: Color;
  readonly hold: Color;
  readonly grid: Color;
  readonly gridZero: Color;
}

/** What stands for a token where a page has none: the look's light theme. */
const LIGHT = {
  "--paper": "#f3eee2",
  "--ink": "#19242b",
  "--pencil": "#77766b",
  "--stop": "#b3271a",
  "--hold": "#3a35b8",
  "--grid": "#cdd6cb",
  "--grid-0": "#76907b",
};

/** Reads the tokens that hold for an element. Colours are kept as they are written: the scene is not lit. */
export function readTokens(element: Element): Tokens {
  const style = getComputedStyle(element);
  const colour = (name: keyof typeof LIGHT): Color => parsed(style.getPropertyValue(name).trim() || LIGHT[name]);
  return {
    paper: colour("--paper"),
    ink: colour("--ink"),
    pencil: colour("--pencil"),
    stop: colour("--stop"),
    hold: colour("--hold"),
    grid: colour("--grid"),
    gridZero: colour("--grid-0"),
  };
}

function parsed(text: string): Color {
  const hex = /^#([0-9a-f]{6})$/i.exec(text)?.[1];
  if (hex) {
    const value = Number.parseInt(hex, 16);
    return new Color().setRGB((value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255);
  }
  const linear = new Color(text);
  return linear.convertLinearToSRGB();
}
