import { expect, test } from 'vitest';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { inStatesWords, problemSentence, problemShort } from '../../../src/model/words/fitWords';
import { demo, withPartAt } from '../../demo/demoAircraft';

/** Metric, plain. */
const say = {
  units: 'metric' as const,
  fromMm: 0,
  length: (mm: number) => `${mm.toFixed(0)} mm`,
  lengthFine: (mm: number) => `${mm.toFixed(1)} mm`,
  station: (mm: number) => `${mm.toFixed(0)} mm`,
  mass: (g: number) => `${g.toFixed(0)} g`,
};

test('a pack where a wheel goes: from either side, with the load state', () => {
  const aircraft = withPartAt(demo('fieldfare'), 'power-switch', [630, 0, -40]);
  const fit = wholeFit(aircraft);
  const [problem, ...others] = fit.problems;
  expect(others).toEqual([]);
  expect(problemSentence(problem!, 'power-switch', say)).toMatch(
    /^Runs into Nose leg, \d+\.\d mm deep, wheels up\.$/,
  );
  expect(problemShort(problem!, 'power-switch')).toBe('hit by Nose leg, wheels up');
});

test('half outside the hull, a lead too short, too near: each in its words, and counted', () => {
  const sandmartin = demo('sandmartin');
  const aircraft = {
    ...withPartAt(sandmartin, 'camera', [152, 90, -20]),
    leads: sandmartin.leads!.map((lead, i) => (i === 0 ? { ...lead, lengthMm: 60 } : lead)),
    keepApart: [{ between: 'receiver', and: 'autopilot', atLeastMm: 90, why: 'noise' }],
  };
  const fit = wholeFit(aircraft);
  const words = (id: string) =>
    (fit.byId.get(id) ?? []).map((one) => problemSentence(one, id, say)).join(' ');
  expect(words('camera')).toMatch(/^Reaches \d+\.\d mm out of Pod\.$/);
  expect(words('flight-pack')).toMatch(/^Flight pack lead is \d+\.\d mm short\.$/);
  expect(words('autopilot')).toMatch(/mm from Receiver, at least 90 mm wanted: noise\.$/);
  expect(fit.byId.get('pod')).toBeUndefined();
});

test('load states by the names of their switches', () => {
  const at = (id: string, name: string) => ({ id, name, flies: true });
  const camera = { switchId: 'camera', switchName: 'Camera', positions: [at('on', 'on')] };
  const legs = { switchId: 'undercarriage', switchName: 'Undercarriage', positions: [at('down', 'down')] };
  expect(inStatesWords([])).toBe('');
  expect(inStatesWords([legs, camera])).toBe('wheels down and camera on');
});

test('what is wholly inside another says so, and the other what is in it', () => {
  const party = (id: string, name: string) => ({ id, name, pieceId: id, what: 'part' as const });
  const problem = {
    ...wholeFit(withPartAt(demo('fieldfare'), 'power-switch', [630, 0, -40])).problems[0]!,
    kind: 'within' as const,
    parties: [party('bolt', 'Bolt'), party('lead', 'Lead block')] as const,
    states: [],
  };
  expect(problemShort(problem, 'bolt')).toBe('inside Lead block');
  expect(problemShort(problem, 'lead')).toBe('has Bolt inside it');
});
