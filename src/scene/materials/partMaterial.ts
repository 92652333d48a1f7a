import { MeshStandardMaterial } from 'three';

/** A solid that can show a clash by red hatching and a touch of light under the pointer. */
export interface PartMaterial extends MeshStandardMaterial {
  readonly marks: { readonly uClash: { value: number }; readonly uLift: { value: number } };
}

/** Hatching runs across the screen, so that it reads the same on every face. */
const HATCHED = /* glsl */ `
  #include <dithering_fragment>
  float hatch = smoothstep(0.30, 0.42, abs(fract((gl_FragCoord.x + gl_FragCoord.y) / 11.0) - 0.5));
  gl_FragColor.rgb = mix(gl_FragColor.rgb, mix(vec3(0.78, 0.10, 0.08), vec3(1.0, 0.86, 0.82), hatch), uClash * 0.85);
  gl_FragColor.rgb += uLift * 0.09;
`;

export function createPartMaterial(): PartMaterial {
  const material = new MeshStandardMaterial({ roughness: 0.62, metalness: 0 });
  const marks = { uClash: { value: 0 }, uLift: { value: 0 } };
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, marks);
    shader.fragmentShader = `uniform float uClash, uLift;\n${shader.fragmentShader.replace(
      '#include <dithering_fragment>',
      HATCHED,
    )}`;
  };
  return Object.assign(material, { marks });
}
