const quarterSines = [0, 1, 0, -1];

/** Sine of an angle in degrees; quarter turns come out exact. */
export function sinDeg(angleDeg: number): number {
  const quarters = angleDeg / 90;
  if (Number.isInteger(quarters)) return quarterSines[((quarters % 4) + 4) % 4] ?? Number.NaN;
  return Math.sin((angleDeg * Math.PI) / 180);
}

/** Cosine of an angle in degrees; quarter turns come out exact. */
export function cosDeg(angleDeg: number): number {
  const quarters = angleDeg / 90;
  if (Number.isInteger(quarters)) return quarterSines[(((quarters + 1) % 4) + 4) % 4] ?? Number.NaN;
  return Math.cos((angleDeg * Math.PI) / 180);
}
