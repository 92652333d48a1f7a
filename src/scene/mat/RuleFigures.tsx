import { useEffect, useState } from 'react';
import type { UnitSystem } from '../../model/units';
import { useDisposed } from '../materials/useDisposed';
import { type RuleRun, ruleNumerals } from './graduation';
import { numeralGeometry, numeralTexture } from './ruleNumerals';

interface RuleFiguresProps {
  readonly run: RuleRun;
  readonly units: UnitSystem;
  readonly color: string;
}

const FONT = '"Atkinson Hyperlegible Mono", ui-monospace, monospace';

/** The figures printed along the rule, in the page's own face once it has loaded. */
export function RuleFigures({ run, units, color }: RuleFiguresProps) {
  const [face, setFace] = useState('fallback');
  useEffect(() => {
    let here = true;
    document.fonts.load(`600 40px ${FONT}`).then(() => here && setFace('loaded'));
    return () => {
      here = false;
    };
  }, []);
  const { fromMm, toMm, zeroMm, atMm, mirrored, every, figureMm } = run;
  const deps = [fromMm, toMm, zeroMm, atMm, mirrored, every, figureMm, units];
  const geometry = useDisposed(() => numeralGeometry(ruleNumerals(run, units), run.figureMm), deps);
  const texture = useDisposed(() => numeralTexture(ruleNumerals(run, units), FONT), [...deps, face]);
  return (
    <mesh geometry={geometry} renderOrder={-19}>
      <meshBasicMaterial key={texture.uuid} map={texture} color={color} transparent depthWrite={false} />
    </mesh>
  );
}
