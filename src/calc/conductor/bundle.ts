/** Across of a bundle over that of its cables, for more than three: round cables fill 1 / 1.2^2 = 69 % of it. Common practice. */
const BUNDLE_ACROSS = 1.2;

/** Radius of the circle round two touching ones and a third beside them; radii descending. */
function roundThree(r1: number, r2: number, r3: number): number {
  const round = r1 + r2;
  const besideBoth = 1 / (1 / r1 + 1 / r2 - 1 / round);
  if (r3 <= besideBoth) return round;
  const [k1, k2, k3] = [1 / r1, 1 / r2, 1 / r3];
  return 1 / (2 * Math.sqrt(k1 * k2 + k2 * k3 + k3 * k1) - k1 - k2 - k3);
}

/**
 * Diameter of the smallest round hole that all these cables pass together, mm, from their outside diameters, mm (above 0;
 * 0 for none). Up to three: exact, rigid and round (Descartes' circle theorem, where the third does not find room beside
 * the two). More: no less than their three thickest, and 1.2 x the root of the sum of squares, as harness makers reckon
 * (common practice: within 3.2 % of the closest packing of 4 to 12 alike, but for 7: 5.8 % above it).
 * 10 and 10: 20. 10, 10 and 10: 21.5. Four of 10: 24.
 */
export function bundleAcrossMm(outsidesMm: readonly number[]): number {
  const radii = outsidesMm.map((outside) => outside / 2).sort((one, other) => other - one);
  const [r1 = 0, r2 = 0, r3 = 0] = radii;
  if (radii.length < 3) return 2 * (r1 + r2);
  const thickest = 2 * roundThree(r1, r2, r3);
  return radii.length === 3 ? thickest : Math.max(thickest, BUNDLE_ACROSS * Math.hypot(...outsidesMm));
}
