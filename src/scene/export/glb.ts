import { GLTFExporter } from 'three/examples/jsm/exporters/GLTFExporter.js';
import type { Aircraft } from '../../model/document/types';
import { disposeModel, type ModelColours, modelScene } from './modelScene';

/** The aircraft as a binary glTF 2.0 file, metres, y up. */
export async function glbOf(aircraft: Aircraft, colours: ModelColours): Promise<Uint8Array<ArrayBuffer>> {
  const model = modelScene(aircraft, colours);
  try {
    const made = await new GLTFExporter().parseAsync(model, { binary: true, onlyVisible: false });
    if (!(made instanceof ArrayBuffer)) throw new Error('the model did not come as one file');
    return new Uint8Array(made);
  } finally {
    disposeModel(model);
  }
}
