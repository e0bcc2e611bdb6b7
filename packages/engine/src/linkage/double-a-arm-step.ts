import type { DoubleAArmConstants } from "./double-a-arm-constants.ts";
import { type MotionState, AT as STATE_PLACES } from "./motion-state.ts";

// A local copy: its numbers are then constants to the compiler, where an imported object is looked up at run time.
const AT = STATE_PLACES;

/** How far the two closures are from falling into line at the last place looked at, see DrivenPosition. */
export const closure = new Float64Array(2);

const OPEN = 0;
export const UPPER_CLOSED = 1;
const TOE_CLOSED = 2;

/** Turns derivatives by the driving angle into derivatives by travel: x′ = x_α α′, x″ = x_αα α′² + x_α α″. */
export function deriveByTravel(s: MotionState, travel: number): void {
  const rate = 1 / s[AT.velocity + 2]!;
  const acceleration = -s[AT.acceleration + 2]! * rate * rate * rate;
  toTravel(s, AT.spin, AT.spinRate, rate, acceleration);
  toTravel(s, AT.spin + 1, AT.spinRate + 1, rate, acceleration);
  toTravel(s, AT.spin + 2, AT.spinRate + 2, rate, acceleration);
  toTravel(s, AT.velocity, AT.acceleration, rate, acceleration);
  toTravel(s, AT.velocity + 1, AT.acceleration + 1, rate, acceleration);
  toTravel(s, AT.velocity + 2, AT.acceleration + 2, rate, acceleration);
  toTravel(s, AT.secondArm + 3, AT.secondArm + 4, rate, acceleration);
  s[AT.secondArm + 2] = Math.atan2(s[AT.secondArm + 1]!, s[AT.secondArm]!);
  s[AT.firstArm + 3] = rate;
  s[AT.firstArm + 4] = acceleration;
  s[AT.travel] = travel;
}

function toTravel(s: MotionState, first: number, second: number, rate: number, acceleration: number): void {
  const byAngle = s[first]!;
  s[second] = s[second]! * rate * rate + byAngle * acceleration;
  s[first] = byAngle * rate;
}

/**
 * Flat kernel: pose at lower-arm angle α, with first and second derivative by α in the state's derivative places.
 * `upperBranch`, `toeBranch`: 1 as in the design position, −1 the other way round. Gives OPEN, or which closure does not
 * close, the state then left half written.
 */
export function placeByAngle(m: DoubleAArmConstants, upperBranch: number, toeBranch: number, s: MotionState): number {
  const alpha = s[AT.firstArm + 2]!;
  const ca = Math.cos(alpha);
  const sa = Math.sin(alpha);
  // Lower ball from its line's point, velocity and acceleration by α.
  const lsx = ca * m.lSquare.x + sa * m.lQuarter.x;
  const lsy = ca * m.lSquare.y + sa * m.lQuarter.y;
  const lsz = ca * m.lSquare.z + sa * m.lQuarter.z;
  const lvx = ca * m.lQuarter.x - sa * m.lSquare.x;
  const lvy = ca * m.lQuarter.y - sa * m.lSquare.y;
  const lvz = ca * m.lQuarter.z - sa * m.lSquare.z;
  const lx = m.c1.x + m.lAlong.x + lsx;
  const ly = m.c1.y + m.lAlong.y + lsy;
  const lz = m.c1.z + m.lAlong.z + lsz;
  // Upper arm: |u(γ) − r|² = kingpin², r from its line's point to the lower ball.
  const rx = lx - m.c2.x;
  const ry = ly - m.c2.y;
  const rz = lz - m.c2.z;
  const P1 = m.uSquare.x * rx + m.uSquare.y * ry + m.uSquare.z * rz;
  const Q1 = m.uQuarter.x * rx + m.uQuarter.y * ry + m.uQuarter.z * rz;
  const S1 =
    0.5 * (m.uSquared + rx * rx + ry * ry + rz * rz - m.kingpin * m.kingpin) -
    (m.uAlong.x * rx + m.uAlong.y * ry + m.uAlong.z * rz);
  const N1 = P1 * P1 + Q1 * Q1;
  const D1 = N1 - S1 * S1;
  closure[0] = D1 / N1;
  if (!(D1 > 0)) return UPPER_CLOSED;
  const root1 = m.upperBranch * upperBranch * Math.sqrt(D1);
  const cg = (P1 * S1 - Q1 * root1) / N1;
  const sg = (Q1 * S1 + P1 * root1) / N1;
  const usx = cg * m.uSquare.x + sg * m.uQuarter.x;
  const usy = cg * m.uSquare.y + sg * m.uQuarter.y;
  const usz = cg * m.uSquare.z + sg * m.uQuarter.z;
  const uqx = cg * m.uQuarter.x - sg * m.uSquare.x;
  const uqy = cg * m.uQuarter.y - sg * m.uSquare.y;
  const uqz = cg * m.uQuarter.z - sg * m.uSquare.z;
  // d: from the lower to the upper ball; its length stays.
  const dx = m.uAlong.x + usx - rx;
  const dy = m.uAlong.y + usy - ry;
  const dz = m.uAlong.z + usz - rz;
  const perUpper = 1 / (dx * uqx + dy * uqy + dz * uqz);
  const g1 = (dx * lvx + dy * lvy + dz * lvz) * perUpper;
  const d1x = g1 * uqx - lvx;
  const d1y = g1 * uqy - lvy;
  const d1z = g1 * uqz - lvz;
  const gg = g1 * g1;
  // Second derivatives: the balls' own are −square (lower) and γ″ quarter − γ′² square (upper).
  const g2 =
    -(d1x * d1x + d1y * d1y + d1z * d1z + dx * (lsx - gg * usx) + dy * (lsy - gg * usy) + dz * (lsz - gg * usz)) *
    perUpper;
  const d2x = g2 * uqx - gg * usx + lsx;
  const d2y = g2 * uqy - gg * usy + lsy;
  const d2z = g2 * uqz - gg * usz + lsz;
  // The kingpin's frame e, g, k now.
  const perKingpin = 1 / m.kingpin;
  const ex = dx * perKingpin;
  const ey = dy * perKingpin;
  const ez = dz * perKingpin;
  const he = m.helper.x * ex + m.helper.y * ey + m.helper.z * ez;
  const perG = 1 / Math.sqrt(1 - he * he);
  const gx = (m.helper.x - he * ex) * perG;
  const gy = (m.helper.y - he * ey) * perG;
  const gz = (m.helper.z - he * ez) * perG;
  const kx = ey * gz - ez * gy;
  const ky = ez * gx - ex * gz;
  const kz = ex * gy - ey * gx;
  // Toe link: |t(δ) − q|² = length², q from the lower ball to the link's inner end.
  const qx = m.toeInner.x - lx;
  const qy = m.toeInner.y - ly;
  const qz = m.toeInner.z - lz;
  const qe = qx * ex + qy * ey + qz * ez;
  const qg = qx * gx + qy * gy + qz * gz;
  const qk = qx * kx + qy * ky + qz * kz;
  const P2 = m.tg * qg + m.tk * qk;
  const Q2 = m.tg * qk - m.tk * qg;
  const S2 =
    0.5 * (m.te * m.te + m.tg * m.tg + m.tk * m.tk + qx * qx + qy * qy + qz * qz - m.toeLength * m.toeLength) -
    m.te * qe;
  const N2 = P2 * P2 + Q2 * Q2;
  const D2 = N2 - S2 * S2;
  closure[1] = D2 / N2;
  if (!(D2 > 0)) return TOE_CLOSED;
  const root2 = m.toeBranch * toeBranch * Math.sqrt(D2);
  const cd = (P2 * S2 - Q2 * root2) / N2;
  const sd = (Q2 * S2 + P2 * root2) / N2;
  // Design frame's g and k after the spindle's turn.
  const Gx = cd * gx + sd * kx;
  const Gy = cd * gy + sd * ky;
  const Gz = cd * gz + sd * kz;
  const Kx = cd * kx - sd * gx;
  const Ky = cd * ky - sd * gy;
  const Kz = cd * kz - sd * gz;
  const { e0, g0, k0 } = m;
  s[AT.rotation] = ex * e0.x + Gx * g0.x + Kx * k0.x;
  s[AT.rotation + 1] = ex * e0.y + Gx * g0.y + Kx * k0.y;
  s[AT.rotation + 2] = ex * e0.z + Gx * g0.z + Kx * k0.z;
  s[AT.rotation + 3] = ey * e0.x + Gy * g0.x + Ky * k0.x;
  s[AT.rotation + 4] = ey * e0.y + Gy * g0.y + Ky * k0.y;
  s[AT.rotation + 5] = ey * e0.z + Gy * g0.z + Ky * k0.z;
  s[AT.rotation + 6] = ez * e0.x + Gz * g0.x + Kz * k0.x;
  s[AT.rotation + 7] = ez * e0.y + Gz * g0.y + Kz * k0.y;
  s[AT.rotation + 8] = ez * e0.z + Gz * g0.z + Kz * k0.z;
  // Angular velocity e × e′ + σ e; σ from the toe link's length.
  const e1x = d1x * perKingpin;
  const e1y = d1y * perKingpin;
  const e1z = d1z * perKingpin;
  const ox = ey * e1z - ez * e1y;
  const oy = ez * e1x - ex * e1z;
  const oz = ex * e1y - ey * e1x;
  const tx = m.te * ex + m.tg * Gx + m.tk * Kx;
  const ty = m.te * ey + m.tg * Gy + m.tk * Ky;
  const tz = m.te * ez + m.tg * Gz + m.tk * Kz;
  const fx = tx - qx;
  const fy = ty - qy;
  const fz = tz - qz;
  const perToe = 1 / (fx * (ey * tz - ez * ty) + fy * (ez * tx - ex * tz) + fz * (ex * ty - ey * tx));
  const sigma =
    -(fx * (lvx + oy * tz - oz * ty) + fy * (lvy + oz * tx - ox * tz) + fz * (lvz + ox * ty - oy * tx)) * perToe;
  const px = ox + sigma * ex;
  const py = oy + sigma * ey;
  const pz = oz + sigma * ez;
  // Angular acceleration e × e″ + σ e′ + σ′ e; the toe link again gives σ′.
  const bx = (ey * d2z - ez * d2y) * perKingpin + sigma * e1x;
  const by = (ez * d2x - ex * d2z) * perKingpin + sigma * e1y;
  const bz = (ex * d2y - ey * d2x) * perKingpin + sigma * e1z;
  const tvx = py * tz - pz * ty;
  const tvy = pz * tx - px * tz;
  const tvz = px * ty - py * tx;
  const vtx = lvx + tvx;
  const vty = lvy + tvy;
  const vtz = lvz + tvz;
  const sigma1 =
    -(
      vtx * vtx +
      vty * vty +
      vtz * vtz +
      fx * (by * tz - bz * ty + py * tvz - pz * tvy - lsx) +
      fy * (bz * tx - bx * tz + pz * tvx - px * tvz - lsy) +
      fz * (bx * ty - by * tx + px * tvy - py * tvx - lsz)
    ) * perToe;
  const ax = bx + sigma1 * ex;
  const ay = by + sigma1 * ey;
  const az = bz + sigma1 * ez;
  const wx = m.we * ex + m.wg * Gx + m.wk * Kx;
  const wy = m.we * ey + m.wg * Gy + m.wk * Ky;
  const wz = m.we * ez + m.wg * Gz + m.wk * Kz;
  const wvx = py * wz - pz * wy;
  const wvy = pz * wx - px * wz;
  const wvz = px * wy - py * wx;
  s[AT.wheelCentre] = lx + wx;
  s[AT.wheelCentre + 1] = ly + wy;
  s[AT.wheelCentre + 2] = lz + wz;
  s[AT.spin] = px;
  s[AT.spin + 1] = py;
  s[AT.spin + 2] = pz;
  s[AT.velocity] = lvx + wvx;
  s[AT.velocity + 1] = lvy + wvy;
  s[AT.velocity + 2] = lvz + wvz;
  s[AT.spinRate] = ax;
  s[AT.spinRate + 1] = ay;
  s[AT.spinRate + 2] = az;
  s[AT.acceleration] = ay * wz - az * wy + py * wvz - pz * wvy - lsx;
  s[AT.acceleration + 1] = az * wx - ax * wz + pz * wvx - px * wvz - lsy;
  s[AT.acceleration + 2] = ax * wy - ay * wx + px * wvy - py * wvx - lsz;
  s[AT.firstArm] = ca;
  s[AT.firstArm + 1] = sa;
  s[AT.secondArm] = cg;
  s[AT.secondArm + 1] = sg;
  s[AT.secondArm + 3] = g1;
  s[AT.secondArm + 4] = g2;
  return OPEN;
}
