import type { Assumption, Car, UnitSystem } from "../../car/car.ts";
import type { CarDocument, ChassisMeshDocument, RightDocument } from "../schema.ts";
import { resolveLog } from "./as-built.ts";
import { resolveChassisMesh } from "./chassis-mesh.ts";
import { resolveLinkage } from "./linkage.ts";
import { withLoads } from "./loads.ts";
import { resolveBumpStop, resolveDriveshaft, resolveShock, resolveStrap } from "./parts.ts";
import { makeResolver, type Resolver } from "./resolver.ts";
import { isOnRight, mirroredKeepOut } from "./right-keep-outs.ts";
import { resolveRodEnds } from "./rod-ends.ts";
import { withStrength } from "./strength.ts";
import { resolveWheel } from "./wheel.ts";
import { resolveChassis, resolveKeepOut, resolveStops, resolveTargets } from "./whole-car.ts";

/** The car in SI out of a document that passed every check; with its right side where that has its own. */
export function resolveCar(document: CarDocument): Car {
  const side = resolveSide(document, undefined);
  const meshed = document.chassisMesh ? withMesh(side, document.chassisMesh, document.units) : side;
  const left = withLoads(withStrength(meshed, document), document);
  const { right } = document;
  const hasOwn = right !== undefined && Object.keys(right).length > 0;
  if (!hasOwn && !left.keepOuts.some(isOnRight)) return left;
  const own = resolveSide(document, right);
  // Seen as a left corner: what stands on the left stands there too, mirrored; what is entered on the right is only there.
  const keepOuts = own.keepOuts.map((keepOut) => (isOnRight(keepOut) ? mirroredKeepOut(keepOut) : keepOut));
  return { ...left, right: { ...own, keepOuts } };
}

/** Only the left corner is held against the mesh: mirrored it would be another mesh. */
function withMesh(left: Car, chassisMesh: ChassisMeshDocument, units: UnitSystem): Car {
  const r = makeResolver(units, "left");
  const resolved = resolveChassisMesh(chassisMesh, r);
  return { ...left, chassisMesh: resolved, assumed: [...left.assumed, ...r.assumed] };
}

type OwnSections = Pick<Car, "wheel" | "linkage" | "rodEnds" | "driveshaft" | "shock" | "strap" | "bumpStop">;

/** One side as a left corner: its own sections where given for it, the left one's otherwise. */
function resolveSide(document: CarDocument, right: RightDocument | undefined): Car {
  const whole = makeResolver(document.units, "left");
  const ownRight = makeResolver(document.units, "right", ["right"]);
  const { underbody = [], keepOuts = [] } = document;
  const own = resolveOwn(document, right ?? {}, whole, ownRight);
  const common = {
    name: document.name,
    ...(document.version === undefined ? {} : { version: document.version }),
    units: document.units,
    datum: document.datum,
    underbody: underbody.map((low) => ({ name: low.name, point: whole.point(low) })),
    keepOuts: keepOuts.map((keepOut, index) => resolveKeepOut(keepOut, index, whole)),
    chassis: resolveChassis(document, whole),
    targets: resolveTargets(document, whole),
    ...(document.asBuilt ? { asBuilt: resolveLog(document.asBuilt, whole) } : {}),
    ...(document.tolerances
      ? {
          tolerances: {
            ...(document.tolerances.tacked === undefined ? {} : { tacked: whole.length(document.tolerances.tacked) }),
            ...(document.tolerances.joint === undefined ? {} : { joint: whole.length(document.tolerances.joint) }),
            ...(document.tolerances.turned === undefined
              ? {}
              : { turned: whole.value(document.tolerances.turned, "turns") }),
          },
        }
      : {}),
    stops: resolveStops(document, whole),
  };
  const assumed: readonly Assumption[] = [...whole.assumed, ...ownRight.assumed];
  return { ...common, ...own, assumed };
}

function resolveOwn(document: CarDocument, right: RightDocument, ofLeft: Resolver, ofRight: Resolver): OwnSections {
  const linkage = right.linkage ?? document.linkage;
  const onLinkageSide = right.linkage ? ofRight : ofLeft;
  const rodEnds = right.rodEnds ?? document.rodEnds;
  const driveshaft = either(right.driveshaft, document.driveshaft, ofRight, ofLeft, resolveDriveshaft);
  const shock = either(right.shock, document.shock, ofRight, ofLeft, resolveShock);
  const strap = either(right.strap, document.strap, ofRight, ofLeft, resolveStrap);
  const bumpStop = either(right.bumpStop, document.bumpStop, ofRight, ofLeft, resolveBumpStop);
  const wheel = right.wheel ? resolveWheel(right.wheel, ofRight) : resolveWheel(document.wheel, ofLeft);
  return {
    wheel,
    linkage: resolveLinkage(linkage, wheel.hubFace, onLinkageSide),
    rodEnds: resolveRodEnds(linkage, onLinkageSide.point, rodEnds, right.rodEnds ? ofRight : ofLeft),
    ...(driveshaft ? { driveshaft } : {}),
    ...(shock ? { shock } : {}),
    ...(strap ? { strap } : {}),
    ...(bumpStop ? { bumpStop } : {}),
  };
}

function either<Section, Resolved>(
  right: Section | undefined,
  left: Section | undefined,
  ofRight: Resolver,
  ofLeft: Resolver,
  resolve: (section: Section, r: Resolver) => Resolved,
): Resolved | undefined {
  if (right) return resolve(right, ofRight);
  return left ? resolve(left, ofLeft) : undefined;
}
