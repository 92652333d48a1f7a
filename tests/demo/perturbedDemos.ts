import { seededRandom } from '../../src/engine/fit/random';
import { addPart, placeItem, removeItem, updatePart } from '../../src/model/document/edit';
import type { Aircraft, Part } from '../../src/model/document/types';
import { editFault } from '../../src/model/reading/editFault';

type Change = (aircraft: Aircraft, part: Part, random: () => number) => Aircraft;

const moved: Change = (aircraft, { id, positionMm: [x, y, z] }, random) =>
  placeItem(aircraft, id, [x + 160 * (random() - 0.5), y, z]);

const heavier: Change = (aircraft, { id, massG }, random) =>
  updatePart(aircraft, id, { massG: massG * (0.3 + 2.5 * random()) });

const leftAtHome: Change = (aircraft, { id }) => removeItem(aircraft, id);

const ballasted: Change = (aircraft, { positionMm: [x, , z] }, random) =>
  addPart(aircraft, {
    name: 'Planted lead',
    role: 'ballast',
    shape: { kind: 'box', lengthMm: 20, widthMm: 20, heightMm: 10 },
    massG: Math.round(20 + 500 * random()),
    positionMm: [x, 0, z],
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
  }).aircraft;

const otherBand: Change = (aircraft, _, random) => {
  const { targetBand } = aircraft;
  if (targetBand?.by !== 'station') return aircraft;
  const byMm = 40 * (random() - 0.5);
  const { forwardMm, aftMm } = targetBand;
  return { ...aircraft, targetBand: { ...targetBand, forwardMm: forwardMm + byMm, aftMm: aftMm + byMm } };
};

const screwedDown: Change = (aircraft, _, random) => ({
  ...aircraft,
  parts: aircraft.parts.map((part) => (random() < 0.4 ? { ...part, locked: true } : part)),
});

const CHANGES = [moved, moved, heavier, leftAtHome, ballasted, otherBand, screwedDown] as const;

/** A demo aircraft with one to three changes by chance; a change that a file could not hold is left out. */
export function perturbed(aircraft: Aircraft, seed: number): Aircraft {
  const random = seededRandom(seed);
  let after = aircraft;
  for (let left = 1 + Math.floor(3 * random()); left > 0; left -= 1) {
    const part = after.parts[Math.floor(random() * after.parts.length)];
    const change = CHANGES[Math.floor(random() * CHANGES.length)]!;
    const next = part ? change(after, part, random) : after;
    if (editFault(after, next) === null) after = next;
  }
  return after;
}
