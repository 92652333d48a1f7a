import { MeshStandardMaterial } from 'three';

const NOBODY = -1;

/**
 * All parts in one material. `aTag` says of each corner which part it is of, and how much it mirrors a soft studio
 * light; `aHatch` how boldly it is
 * hatched. The parts that are lit are named by their number.
 */
export interface PartMaterial extends MeshStandardMaterial {
  readonly marks: {
    readonly uLit: { value: [selected: number, hovered: number] };
  };
}

/** Hatching runs across the screen, so that it reads the same on every face. */
const FRAGMENT = /* glsl */ `
  #include <dithering_fragment>
  vec3 eye = isOrthographic ? vec3(0.0, 0.0, 1.0) : normalize(vViewPosition);
  vec3 up = normalize((viewMatrix * vec4(0.0, 1.0, 0.0, 0.0)).xyz);
  // A light tent: one broad soft box above, a thin one at the horizon.
  float sky = dot(reflect(-eye, normal), up);
  float box = smoothstep(0.35, 0.95, sky) * 0.5 + smoothstep(0.02, 0.1, sky) * (1.0 - smoothstep(0.1, 0.3, sky)) * 0.35;
  gl_FragColor.rgb += vTag.y * box * (0.35 + 0.65 * pow(1.0 - abs(dot(normal, eye)), 2.0));
  gl_FragColor.rgb *= mix(0.8, 1.0, smoothstep(-0.9, 0.2, dot(normal, up)));
  float lit = step(abs(vTag.x - uLit.x), 0.5) + step(abs(vTag.x - uLit.y), 0.5);
  gl_FragColor.rgb += min(lit, 1.0) * 0.09;
  float hatch = smoothstep(0.30, 0.42, abs(fract((gl_FragCoord.x + gl_FragCoord.y) / 11.0) - 0.5));
  gl_FragColor.rgb = mix(gl_FragColor.rgb, mix(vec3(0.78, 0.10, 0.08), vec3(1.0, 0.86, 0.82), hatch), vHatch * 0.85);
`;

export function createPartMaterial(): PartMaterial {
  const material = new MeshStandardMaterial({
    roughness: 0.55,
    metalness: 0,
    vertexColors: true,
    transparent: true,
  });
  const marks: PartMaterial['marks'] = {
    uLit: { value: [NOBODY, NOBODY] },
  };
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, marks);
    shader.vertexShader = `attribute vec2 aTag;\nattribute float aHatch;\nvarying vec2 vTag;\nvarying float vHatch;\n${shader.vertexShader.replace(
      '#include <begin_vertex>',
      '#include <begin_vertex>\n  vTag = aTag;\n  vHatch = aHatch;',
    )}`;
    shader.fragmentShader = `uniform vec2 uLit;\nvarying vec2 vTag;\nvarying float vHatch;\n${shader.fragmentShader.replace(
      '#include <dithering_fragment>',
      FRAGMENT,
    )}`;
  };
  return Object.assign(material, { marks });
}
