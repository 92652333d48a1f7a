import type { MeshFindings } from '../../engine/mesh/soundMesh';
import type { ReadMesh } from '../../model/airframe/meshReading';
import { type MeshUse, meshTextLength } from '../../model/airframe/ownMesh';
import { formatArea, formatNumber, formatVolume } from '../../model/units';
import { useReadings } from '../readings';

interface MeshFactsProps {
  readonly read: ReadMesh;
  readonly use: MeshUse;
}

/** What was found in the mesh: its size, what it holds, and what is odd about it. */
export function MeshFacts({ read, use }: MeshFactsProps) {
  const say = useReadings();
  const { verdict, sizeMm, volume, surface, triangles } = read;
  const [length, width, height] = sizeMm.map(say.length);
  return (
    <section>
      <dl className="mesh-facts">
        <div>
          <dt>Length, width, height</dt>
          <dd className="figure">
            {length} × {width} × {height}
          </dd>
        </div>
        {volume && (
          <div>
            <dt>{use === 'tank' ? 'Holds' : 'Volume'}</dt>
            <dd className="figure">{formatVolume(volume.volumeMm3 / 1000, say.units)}</dd>
          </div>
        )}
        {surface && (
          <div>
            <dt>Skin</dt>
            <dd className="figure">{formatArea(surface.areaMm2, say.units)}</dd>
          </div>
        )}
        <div>
          <dt>Triangles</dt>
          <dd className="figure">{formatNumber(triangles, 0)}</dd>
        </div>
        {verdict.ok && (
          <div>
            <dt>In the aircraft’s file</dt>
            <dd className="figure">about {formatNumber(meshTextLength(verdict.mesh) / 1000, 0)} kB</dd>
          </div>
        )}
      </dl>
      {verdict.ok ? (
        <ul className="mesh-notes">
          <li>It is closed: its mass, its inside and what it holds are worked out from it.</li>
          {oddities(verdict.findings).map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      ) : (
        <p className="fault" role="alert">
          {verdict.sentence}
        </p>
      )}
    </section>
  );
}

const many = (count: number, noun: string): string =>
  `${formatNumber(count, 0)} ${noun}${count === 1 ? '' : 's'}`;

/** What was put right or is worth a look, each in a sentence. */
function oddities({ shells, hollows, turned, shrunk, doubled, cuts }: MeshFindings): string[] {
  const words: string[] = [];
  if (shells > 1)
    words.push(
      `${many(shells, 'shell')}${hollows > 0 ? `, ${hollows} of them inside another and taken as ${hollows === 1 ? 'a hollow' : 'hollows'}` : ''}.`,
    );
  if (turned > 0)
    words.push(
      `${many(turned, 'triangle')} faced inwards and ${turned === 1 ? 'was' : 'were'} turned round.`,
    );
  if (shrunk > 0)
    words.push(`${many(shrunk, 'triangle')} without any size ${shrunk === 1 ? 'is' : 'are'} left out.`);
  if (doubled > 0)
    words.push(
      `${many(doubled, 'triangle')} that ${doubled === 1 ? 'was' : 'were'} there twice ${doubled === 1 ? 'is' : 'are'} left out once.`,
    );
  if (cuts > 0)
    words.push(
      `The skin cuts through itself in ${cuts >= 1000 ? 'at least ' : ''}${many(cuts, 'place')}, marked on the stage: what lies inside twice counts twice in the mass.`,
    );
  return words;
}
