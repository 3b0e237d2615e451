import { distance, type Point } from './point.ts';

const DEG_PER_RAD = 180 / Math.PI;

/** The nearest crossing of a grid of that step, m. (0.13, 0.27) on 0.05 is (0.15, 0.25). A step of 0 snaps nothing. */
export function snapToGrid(p: Point, stepM: number): Point {
  if (!(stepM > 0)) return p;
  return { xM: Math.round(p.xM / stepM) * stepM, yM: Math.round(p.yM / stepM) * stepM };
}

/**
 * The nearest point to p on the rays from `from` at every multiple of `stepDeg` (degrees from the x axis), so that a
 * cable drawn nearly straight is straight. From (0,0), (1, 0.05) gives (1, 0).
 */
export function snapAngle(from: Point, p: Point, stepDeg = 15): Point {
  const lengthM = distance(from, p);
  if (lengthM === 0 || !(stepDeg > 0)) return p;
  const angleDeg = Math.atan2(p.yM - from.yM, p.xM - from.xM) * DEG_PER_RAD;
  const snappedDeg = Math.round(angleDeg / stepDeg) * stepDeg;
  // the foot of p on the ray, not p turned about `from`: the finger stays beside its point
  const alongM = lengthM * Math.cos((angleDeg - snappedDeg) / DEG_PER_RAD);
  return {
    xM: from.xM + alongM * Math.cos(snappedDeg / DEG_PER_RAD),
    yM: from.yM + alongM * Math.sin(snappedDeg / DEG_PER_RAD),
  };
}
