import { isOverfull } from '../../engine/liquid/liquidInShape';
import { plumbingFaults } from '../../engine/liquid/plumbingFaults';
import type { Tank } from '../../engine/liquid/types';
import { tankShapeFault } from '../../engine/liquid/vesselOf';
import { shapeFault } from '../../engine/mass/shapeFault';
import { engineTank, shapeVolumeMl } from '../airframe/tanks';
import type { TankItem } from '../document/types';
import { type Checked, soundItems } from './checked';
import type { Fault } from './fault';

/** What is wrong with each tank, with what it feeds, and with the tanks together. */
export function tankFaults(checked: Checked): readonly Fault[] {
  const { aircraft, sound, tell } = checked;
  const items = soundItems(checked, 'tanks');
  const faults = items.flatMap(({ item, index }) => [
    ...contentFaults(item, index, checked),
    ...feedFaults(item, index, checked),
  ]);
  if (items.length > 0 && aircraft.fuel === null) {
    faults.push(tell(['fuel'], 'expected what the tanks hold, got null.', 'what the tanks hold', 'null'));
  }
  const plumbed = items.filter(
    ({ item }, place) =>
      item.id !== 'outlet' && items.findIndex(({ item: other }) => other.id === item.id) === place,
  );
  const ids = new Set(plumbed.map(({ item }) => item.id));
  const share = sound('fuel') ? aircraft.fuel?.share : undefined;
  const circuit = plumbed.map(({ item }) => asPlumbedOnly(item, ids, share ?? 'volume'));
  for (const sentence of plumbingFaults(circuit)) {
    faults.push(tell(['tanks'], sentence, 'tanks that drain to the outlet', `${items.length} tanks`));
  }
  return faults;
}

function contentFaults(item: TankItem, index: number, { tell }: Checked): readonly Fault[] {
  const sentence = shapeFault(item.shape) ?? tankShapeFault(item.shape);
  if (sentence)
    return [tell(['tanks', index, 'shape'], sentence, 'a shape that can hold liquid', item.shape.kind)];
  const holds = shapeVolumeMl(item.shape);
  return (['startMl', 'unusableMl'] as const).flatMap((key) => {
    const volume = item[key];
    if (volume === null || !isOverfull(volume, holds)) return [];
    const expected = `at most ${Number(holds.toPrecision(6))} ml`;
    const sentence = `the tank holds ${expected}, got ${volume} ml.`;
    return [tell(['tanks', index, key], sentence, expected, String(volume))];
  });
}

function feedFaults(item: TankItem, index: number, { aircraft, tell }: Checked): readonly Fault[] {
  const { feeds } = item;
  if (feeds === 'outlet' || aircraft.tanks.some((tank) => tank?.id === feeds)) return [];
  const sentence = `there is no tank "${feeds}"; a tank feeds the outlet or another tank.`;
  return [tell(['tanks', index, 'feeds'], sentence, '"outlet" or the id of a tank', `"${feeds}"`)];
}

/** The tank as far as plumbing goes: what else may be wrong with it has been reported already. */
function asPlumbedOnly(item: TankItem, ids: ReadonlySet<string>, share: Tank['share']): Tank {
  return {
    ...engineTank({ ...item, shape: ANY_TANK, startMl: 0, unusableMl: 0 }, null),
    densityGPerMl: 1,
    feeds: ids.has(item.feeds) ? item.feeds : 'outlet',
    share,
  };
}

const ANY_TANK = { kind: 'box', lengthMm: 100, widthMm: 100, heightMm: 100 } as const;
