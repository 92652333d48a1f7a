import type { Aircraft, Part, PartPower, PowerSupply } from './types';

/** Parts without the word of a feeder that is gone; the same list where none was fed by it. */
export function partsWithoutFeeder(parts: readonly Part[], gone: string): readonly Part[] {
  const isFed = ({ power }: Part) => power?.fedBy?.some(({ from }) => from === gone) ?? false;
  if (!parts.some(isFed)) return parts;
  return parts.map((part) =>
    isFed(part)
      ? {
          ...part,
          power: { ...part.power, fedBy: part.power?.fedBy?.filter(({ from }) => from !== gone) ?? [] },
        }
      : part,
  );
}

/** Says what a part is to the wiring; null takes it out of it, and it feeds nothing any more. */
export function setPower(aircraft: Aircraft, id: string, power: PartPower | null): Aircraft {
  const changed = aircraft.parts.map((part): Part => {
    if (part.id !== id) return part;
    if (power) return { ...part, power };
    const { power: _, ...bare } = part;
    return bare;
  });
  return { ...aircraft, parts: power ? changed : partsWithoutFeeder(changed, id) };
}

/** Feeds a part from another as well, or changes how it does. */
export function feed(aircraft: Aircraft, id: string, supply: PowerSupply): Aircraft {
  const power = aircraft.parts.find((part) => part.id === id)?.power ?? {};
  const before = power.fedBy ?? [];
  const fedBy = before.some(({ from }) => from === supply.from)
    ? before.map((other) => (other.from === supply.from ? supply : other))
    : [...before, supply];
  return setPower(aircraft, id, { ...power, fedBy });
}

/** No longer feeds a part from another. */
export function unfeed(aircraft: Aircraft, id: string, from: string): Aircraft {
  const power = aircraft.parts.find((part) => part.id === id)?.power;
  if (!power) return aircraft;
  return setPower(aircraft, id, {
    ...power,
    fedBy: (power.fedBy ?? []).filter((other) => other.from !== from),
  });
}
