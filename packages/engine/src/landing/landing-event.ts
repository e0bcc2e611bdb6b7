import type { RoadClass } from "./random-road.ts";

/** What happens to the wheel. SI. */
export type LandingEvent = Drop | Bump | Whoops | RandomRoadRide;

/** The whole car falls level: tyres `height` above even ground. */
export interface Drop {
  readonly kind: "drop";
  readonly height: number;
  /** Only the left wheel meets the ground at first: under the right one it lies so much lower, m. */
  readonly otherLower?: number;
}

/** One rounded bump, at the car's speed; under both wheels, or under the left one only. */
export interface Bump {
  readonly kind: "bump";
  readonly height: number;
  readonly length: number;
  readonly speed: number;
  readonly oneWheel?: boolean;
}

/** So many bumps in a row under both wheels. */
export interface Whoops {
  readonly kind: "whoops";
  readonly height: number;
  /** Crest to crest. */
  readonly spacing: number;
  readonly count: number;
  readonly speed: number;
}

/** A random road of a class after ISO 8608, the same under both wheels. */
export interface RandomRoadRide {
  readonly kind: "road";
  readonly roadClass: RoadClass;
  readonly speed: number;
  readonly seconds: number;
  readonly seed: number;
}
