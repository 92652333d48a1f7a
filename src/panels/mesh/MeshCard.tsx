import './mesh.css';
import { useState } from 'react';
import type { ReadMesh } from '../../model/airframe/meshReading';
import { addOwnMesh, withMeshHull } from '../../model/airframe/ownMesh';
import { setDown } from '../../model/fit/setDown';
import type { MeshInHand } from '../../store/meshStore';
import { useBench, useMeshInHand } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { useEdit } from '../fields/useEdit';
import { Icon, RoleMark } from '../icons';
import { petrol } from '../manifest/newThings';
import { useReadings } from '../readings';
import { MeshFacts } from './MeshFacts';
import { MeshWays } from './MeshWays';

/** A mesh file before it goes aboard: how its figures are taken, what it comes to, and what it is to be. */
export function MeshCard() {
  const inHand = useMeshInHand();
  return inHand && <Looked {...inHand} />;
}

function Looked(inHand: MeshInHand) {
  const { mesh } = useBench();
  const { name, read, reading } = inHand;
  return (
    <div className="card mesh-card" data-testid="mesh-card" aria-busy={reading}>
      <header>
        <RoleMark of="airframe" />
        <h2>{name}</h2>
        <button type="button" className="button bare" aria-label="Leave the mesh" onClick={mesh.close}>
          <Icon name="cross" />
        </button>
      </header>
      {!read && (
        <section>
          <p className="hint">Reading it on this machine…</p>
        </section>
      )}
      {read && !read.ok && (
        <section>
          <p className="fault" role="alert">
            {read.sentence}
          </p>
        </section>
      )}
      {read?.ok && (
        <>
          <MeshWays read={read} inHand={inHand} />
          <MeshFacts read={read} use={inHand.use} />
          <Aboard read={read} inHand={inHand} />
        </>
      )}
    </div>
  );
}

interface AboardProps {
  readonly read: ReadMesh;
  readonly inHand: MeshInHand;
}

/** The file's name without its ending, as a name for people. */
const plainName = (name: string): string =>
  name
    .replace(/\.[^.]+$/, '')
    .replace(/[_\s]+/g, ' ')
    .trim()
    .slice(0, 60) || 'Mesh';

function Aboard({ read, inHand }: AboardProps) {
  const bench = useBench();
  const say = useReadings();
  const edit = useEdit();
  const [fault, setFault] = useState<string | null>(null);
  const { use, hullId, reading } = inHand;
  const { verdict, volume } = read;
  const put = () => {
    if (!verdict.ok) return;
    const name = plainName(inHand.name);
    const before = bench.document.api.getState().committed;
    const stationMm = Math.round(bench.balance.get().cgMm?.[0] ?? 200);
    let selectedId = hullId;
    const refused = edit(hullId ? `Take ${name} as hull` : `Add ${name}`, (aircraft) => {
      if (hullId) return withMeshHull(aircraft, hullId, verdict.mesh);
      const volumeMm3 = volume?.volumeMm3 ?? 0;
      const added = addOwnMesh(aircraft, use, verdict.mesh, { name, volumeMm3, stationMm, fuel: petrol });
      selectedId = added.id;
      return use === 'fuselage' ? added.aircraft : setDown(added.aircraft, added.id, stationMm).aircraft;
    });
    setFault(refused);
    if (refused !== null) return;
    bench.mesh.close();
    bench.view.setState({ selectedId });
    const { document, notice } = bench;
    if (hullId === null && document.api.getState().committed !== before)
      notice.tell({ about: 'edit', tone: 'note', text: assumedWords(name, use === 'fuselage', say.mass) });
  };
  return (
    <section className="mesh-aboard">
      {verdict.ok ? (
        <button type="button" className="button primary" disabled={reading} onClick={put}>
          {hullId ? 'Take it as the hull' : 'Put it aboard'}
        </button>
      ) : (
        <p className="hint">Mend it in the program that it came from, and open it again.</p>
      )}
      <button type="button" className="button" onClick={bench.mesh.close}>
        Leave it
      </button>
      <Refusal fault={fault} />
    </section>
  );
}

const assumedWords = (name: string, hull: boolean, mass: (g: number) => string): string =>
  hull
    ? `The mass of ${name} is assumed: a skin of ${mass(600)} to the square metre. Weigh it, and enter what the scales say.`
    : `The mass of ${name} is assumed. Weigh it, and enter what the scales say.`;
