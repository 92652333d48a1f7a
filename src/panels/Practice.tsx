import './practice.css';

/** What modellers say and no book is cited for. Common practice of the trade, no source. */
const sayings = {
  fuelState:
    'The CG is set with the main tanks dry and the header tank full. Slightly nose-heavy when dry is accepted, tail-heavy never.',
  noseHeavy: 'Slightly nose-heavy is accepted for a first flight, tail-heavy never.',
  tanks:
    'A fuel tank close to the CG moves it little; a header tank ahead of it adds a touch of nose weight.',
  ballast:
    'A few tens of grams of nose weight on a sport model of some kilograms is normal; hundreds say that the layout is wrong.',
  packs: 'The engine and the radio each have a pack of their own.',
} as const;

/** A sentence of common practice, marked as such. */
export function Practice({ of }: { readonly of: keyof typeof sayings }) {
  return (
    <p className="practice">
      <span>Common practice</span> {sayings[of]}
    </p>
  );
}
