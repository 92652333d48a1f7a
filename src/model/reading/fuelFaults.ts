import { fuelDensity } from '../airframe/tanks';
import type { Checked } from './checked';
import type { Fault } from './fault';

/** What is wrong with the fuel: a temperature that its density cannot be corrected to, a table out of order. */
export function fuelFaults(checked: Checked): readonly Fault[] {
  const { aircraft, sound } = checked;
  return aircraft.fuel && sound('fuel') ? [...temperatureFaults(checked), ...tableFaults(checked)] : [];
}

function temperatureFaults({ aircraft: { fuel }, tell }: Checked): readonly Fault[] {
  if (fuel?.temperatureC === undefined) return [];
  if (fuel.kind !== 'kerosene') {
    const sentence =
      'only kerosene has a published correction for temperature; weigh other fuels as they are.';
    return [tell(['fuel', 'temperatureC'], sentence, 'no temperature', `${fuel.temperatureC}`)];
  }
  try {
    fuelDensity(fuel);
    return [];
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const sentence = `expected kerosene of 0.7705 to 0.8385 g/ml at 15 °C, got ${fuel.densityGPerMl} g/ml.`;
    return [tell(['fuel', 'densityGPerMl'], sentence, '0.7705 to 0.8385', String(fuel.densityGPerMl))];
  }
}

function tableFaults({ aircraft: { fuel }, tell }: Checked): readonly Fault[] {
  const table = fuel?.flow.table ?? [];
  return table.flatMap(({ throttlePct }, index) => {
    const below = table[index - 1]?.throttlePct ?? 0;
    if (throttlePct > below && throttlePct < 100) return [];
    const sentence = `throttles rise between idle and full: expected more than ${below} and less than 100 %, got ${throttlePct} %.`;
    const at = ['fuel', 'flow', 'table', index, 'throttlePct'];
    return [tell(at, sentence, `more than ${below} and less than 100`, String(throttlePct))];
  });
}
