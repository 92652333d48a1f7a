import { shapeVolumeMl } from '../../model/airframe/tanks';
import { updateTank } from '../../model/document/edit';
import type { Aircraft, TankItem } from '../../model/document/types';
import { formatVolume } from '../../model/units';
import { useCommitted, useSteadyList, useView } from '../../store/react';
import { Choice, Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { Fold } from '../fold/Fold';
import { Live } from '../Live';
import { Practice } from '../Practice';
import { useReadings } from '../readings';
import { PairFields } from './PairFields';
import { PlaceFields } from './PlaceFields';
import { PlusMinusFields } from './PlusMinusFields';
import { ShapeFields } from './ShapeFields';
import { MassSource, SizeSource, sourceOfTyped } from './SourceFields';
import { SwitchTick } from './SwitchTick';
import { sizeSummary } from './summaries';
import { WhereItSits } from './WhereItSits';

/** The figures of a tank and of what is in it. */
export function TankCard({ id, name }: { readonly id: string; readonly name: string }) {
  const say = useReadings();
  const units = useView((view) => view.units);
  const read = (aircraft: Aircraft): TankItem | undefined => aircraft.tanks.find((tank) => tank.id === id);
  const change = (fields: Partial<TankItem>) => (aircraft: Aircraft) => updateTank(aircraft, id, fields);
  const holdsMl = useCommitted((aircraft) => {
    const tank = read(aircraft);
    return tank ? shapeVolumeMl(tank.shape) : 0;
  });
  const others = useCommitted(
    useSteadyList(({ tanks }: Aircraft) =>
      tanks.filter((tank) => tank.id !== id).map((tank) => ({ value: tank.id, label: tank.name })),
    ),
  );
  const feeds = [{ value: 'outlet', label: 'Outlet: engine or dump valve' }, ...others];
  return (
    <>
      <section>
        <div className="field">
          <span className="field-name">Holds</span>
          <span className="figure stated">{formatVolume(holdsMl, units)}</span>
        </div>
        <div className="field">
          <span className="field-name">In it now</span>
          <span className="figure stated">
            <Live
              read={({ balance }) =>
                formatVolume(balance.get().liquids.find(({ tankId }) => tankId === id)?.volumeMl ?? 0, units)
              }
            />
          </span>
        </div>
        <Measure
          label="At the start"
          quantity="volume"
          step={`Change the filling of ${name}`}
          empty={{ means: 'brim-full', write: change({ startMl: null }) }}
          read={(aircraft) => read(aircraft)?.startMl ?? null}
          write={(aircraft, startMl) => change({ startMl })(aircraft)}
        />
        <Measure
          label="Unusable"
          quantity="volume"
          step={`Change what stays in ${name}`}
          read={(aircraft) => read(aircraft)?.unusableMl}
          write={(aircraft, unusableMl) => change({ unusableMl })(aircraft)}
        />
        <Measure
          label="Empty mass"
          quantity="mass"
          step={`Change the mass of ${name}`}
          read={(aircraft) => read(aircraft)?.emptyMassG}
          write={(aircraft, emptyMassG) => change({ emptyMassG, ...sourceOfTyped(read(aircraft)) })(aircraft)}
        />
        <MassSource name={name} id={id} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
        <Choice
          label="Feeds"
          step={`Change what ${name} feeds`}
          options={feeds}
          read={(aircraft) => read(aircraft)?.feeds ?? 'outlet'}
          write={(aircraft, to) => change({ feeds: to })(aircraft)}
        />
        <Measure
          label="Rank"
          quantity="number"
          step={`Change the rank of ${name}`}
          read={(aircraft) => read(aircraft)?.rank}
          write={(aircraft, rank) => change({ rank: Math.round(rank) })(aircraft)}
        />
        <p className="hint">Among tanks that feed the same place the lower rank empties first.</p>
        <PlaceFields
          name={name}
          itemId={id}
          read={read}
          write={(aircraft, place) => change(place)(aircraft)}
        />
        <PairFields id={id} name={name} />
      </section>
      <WhereItSits id={id} />
      <Fold id="size" title="Inside" summary={sizeSummary(id, say)}>
        <ShapeFields
          name={name}
          without={['tube']}
          read={(aircraft) => read(aircraft)?.shape}
          write={(aircraft, shape) => (shape.kind === 'tube' ? aircraft : change({ shape })(aircraft))}
        />
        <SizeSource name={name} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
      </Fold>
      <Fold id="about" title="More">
        <PlusMinusFields name={name} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
        <Tick
          label="Locked where it is"
          step={`Lock or unlock ${name}`}
          read={(aircraft) => read(aircraft)?.locked === true}
          write={(aircraft, locked) => change({ locked })(aircraft)}
        />
        <SwitchTick id={id} name={name} kind="filled" />
        <Practice of="tanks" />
      </Fold>
    </>
  );
}
