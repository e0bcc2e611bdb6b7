import type { Carried } from "../../packages/engine/dist/cycle/carried.js";
import type { Corner } from "../../packages/engine/dist/cycle/corner.js";
import type { Vec3 } from "../../packages/engine/dist/geometry/vec3.js";
import { doubleAArmConstants } from "../../packages/engine/dist/linkage/double-a-arm-constants.js";
import { fiveLinkConstants } from "../../packages/engine/dist/linkage/five-link-constants.js";
import { hArmConstants } from "../../packages/engine/dist/linkage/h-arm.js";
import { AT, designState } from "../../packages/engine/dist/linkage/motion-state.js";

/** Kinds in the order in which the C program counts them. */
export const KINDS_IN_C = ["h-arm", "double-a-arm", "five-link"] as const;

/** All numbers that the C program needs of a corner, one after the other, in the order of the structs of c/cycle.h. */
export function constantsForC(corner: Corner, travels: Float64Array): Float64Array {
  const kind = KINDS_IN_C.indexOf(corner.kind.kind as (typeof KINDS_IN_C)[number]);
  return Float64Array.from([
    kind,
    travels.length,
    corner.width,
    ...travels,
    ...linkageNumbers(corner, travels),
    ...outputNumbers(corner),
  ]);
}

const xyz = (v: Vec3): readonly number[] => [v.x, v.y, v.z];

/** The corner solved at a travel. */
function stateAt(corner: Corner, travel: number): Float64Array {
  const state = designState();
  if (corner.mechanism.solve(travel, state) < 0) throw new Error(`no position at ${travel} m`);
  return state;
}

/** Lower-arm angles a little outside the travels, between which the solver searches. */
function bracket(corner: Corner, travels: Float64Array): readonly number[] {
  const margin = 0.01;
  return [Math.min(...travels) - margin, Math.max(...travels) + margin].map(
    (travel) => stateAt(corner, travel)[AT.firstArm + 2]!,
  );
}

function linkageNumbers(corner: Corner, travels: Float64Array): readonly number[] {
  const { linkage } = corner.car;
  if (linkage.kind === "h-arm") {
    const h = hArmConstants(linkage, corner.wheelCentre, {});
    return [
      ...[h.cx, h.cy, h.cz, ...xyz(h.a), ...xyz(h.e), ...xyz(h.o), ...xyz(h.w), h.designHeight],
      ...[h.Pk, h.Pc, h.Ps, h.Qk, h.Qc, h.Qs, h.Sk, h.Sc, h.Ss],
      ...[h.z0k, h.z0c, h.z0s, h.zck, h.zcc, h.zcs, h.zsk, h.zsc, h.zss, h.designBranch],
      ...bracket(corner, travels),
    ];
  }
  if (linkage.kind === "double-a-arm") {
    const m = doubleAArmConstants(linkage, corner.wheelCentre, {});
    return [
      ...[m.c1, m.a1, m.lAlong, m.lSquare, m.lQuarter, m.c2, m.a2, m.uAlong, m.uSquare, m.uQuarter].flatMap(xyz),
      ...[m.uSquared, m.kingpin, ...[m.helper, m.e0, m.g0, m.k0].flatMap(xyz)],
      ...[m.te, m.tg, m.tk, m.we, m.wg, m.wk, ...xyz(m.toeInner), m.toeLength, m.designHeight],
      ...[m.upperBranch, m.toeBranch, ...bracket(corner, travels)],
    ];
  }
  if (linkage.kind === "five-link") {
    const five = fiveLinkConstants(linkage, corner.wheelCentre, {});
    // A known position near the first travel, as the engine takes one from its path.
    const seed = stateAt(corner, travels[0]! + 0.004);
    return [...five.inner, ...five.arm, ...five.halfSquare, five.wheelCentre.z, ...seed];
  }
  throw new Error(`no C program for ${linkage.kind}`);
}

function outputNumbers(corner: Corner): readonly number[] {
  const { attitude, shock, shaft, rodEnds, carried } = corner;
  const { strap, bumpStop, lowest } = corner.stops;
  if (!shock || !shaft || !strap || !bumpStop || lowest === undefined) throw new Error("the car is not complete");
  const point = ({ carrier, parts }: Carried): readonly number[] => [carrier, ...parts];
  return [
    ...[...xyz(attitude.axis), ...xyz(attitude.designContact)],
    ...[attitude.loadedRadius, attitude.driveLever, attitude.brakeLever],
    ...[...point(shock.upper), ...point(shock.lower)],
    ...[shaft.inner, shaft.outputAxis, shaft.outer, shaft.stubAxis].flatMap(xyz),
    ...[shaft.designLength, shaft.engagement, shaft.cosPhase, shaft.sinPhase],
    ...[Number(shaft.innerRipples), Number(shaft.outerRipples)],
    ...[carried.now.length, ...carried.now],
    ...[carried.pointsEnd, carried.spindleEnd, carried.firstArmEnd, carried.secondArmEnd],
    ...[...carried.places, ...carried.parts],
    ...[strap.upper, strap.lower, strap.length],
    ...[bumpStop.base, bumpStop.strikes, bumpStop.reach, bumpStop.solid, lowest],
    ...[rodEnds.hinges.length, ...rodEnds.hinges.flatMap(({ place, angle, slant }) => [place, angle, slant])],
    ...[rodEnds.arms.length, ...rodEnds.arms.flatMap(({ place, housing, bolt }) => [place, housing, bolt])],
    rodEnds.links.length,
    ...rodEnds.links.flatMap(({ perLength, first, second, clocking }) => [
      perLength,
      ...[first, second].flatMap(({ place, centre, bolt, cosLimit }) => [place, centre, bolt, cosLimit]),
      clocking,
    ]),
  ];
}
