import { addAfterEffect, useThree } from '@react-three/fiber';
import { useEffect } from 'react';

/** The kind of material that a program was made for; the library's own declarations leave it out. */
const typeOf = (program: object): unknown => ('type' in program ? program.type : undefined);

/** Of our own shaders; such a program is identified by more than its text, and kept ones would pile up. */
const OWN = 'ShaderMaterial';

/**
 * Keeps the programs of the library's materials for as long as the stage lives. The renderer drops one with the last
 * material that uses it and compiles it again when a part is put aboard, by far its most costly work.
 * There are as many as kinds of look, however many parts.
 */
export function useKeptPrograms(): void {
  const info = useThree(({ gl }) => gl.info);
  useEffect(() => {
    const kept = new Set<object>();
    return addAfterEffect(() => {
      for (const program of info.programs ?? []) {
        if (typeOf(program) === OWN || kept.has(program)) continue;
        kept.add(program);
        program.usedTimes += 1;
      }
    });
  }, [info]);
}
