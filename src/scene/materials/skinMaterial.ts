import { Color, ShaderMaterial, type Side, Vector2 } from 'three';
import { cutPlanes } from './useCut';

const vertexShader = /* glsl */ `
  attribute vec3 aTags;
  varying vec3 vNormal, vToEye, vTags;
  varying float vStation;
  #include <clipping_planes_pars_vertex>
  void main() {
    vStation = position.x;
    vTags = aTags;
    vNormal = normalMatrix * normal;
    vec4 mvPosition = modelViewMatrix * vec4(position, 1.0);
    vToEye = isOrthographic ? vec3(0.0, 0.0, 1.0) : -mvPosition.xyz;
    gl_Position = projectionMatrix * mvPosition;
    #include <clipping_planes_vertex>
  }
`;

/**
 * Vellum, or thin glass: clear where it faces the eye, bright at the rim, one soft highlight from a lamp over the
 * left shoulder. The far side carries the body, the near side only what gleams. Layers of one colour give the same
 * picture in any order, so nothing needs sorting.
 */
const fragmentShader = /* glsl */ `
  varying vec3 vNormal, vToEye, vTags;
  varying float vStation;
  uniform vec3 uVellum, uBand, uRoom;
  uniform float uClear, uRim, uThere, uDark, uNear;
  uniform vec2 uLimits, uRoomAt, uFlat;
  uniform vec2 uFree[MOST_FREE];
  uniform float uLimitsOn, uRoomOn;

  #include <clipping_planes_pars_fragment>

  float edge(float at, float px) { return 1.0 - smoothstep(0.4 * px, 1.4 * px, abs(vStation - at)); }

  void main() {
    #include <clipping_planes_fragment>
    vec3 n = normalize(vNormal);
    vec3 eye = normalize(vToEye);
    if (dot(n, eye) < 0.0) n = -n;
    float facing = dot(n, eye);
    float flatness = mix(uFlat.x, uFlat.y, vTags.z);
    float rim = pow(1.0 - facing, 3.0) * (1.0 - flatness);
    vec3 upright = normalize((viewMatrix * vec4(0.0, 1.0, 0.0, 0.0)).xyz);
    float lamp = 0.5 + 0.5 * dot(n, upright);
    vec3 light = normalize((viewMatrix * vec4(-0.34, 0.84, 0.42, 0.0)).xyz);
    float gleam = pow(max(dot(n, normalize(light + eye)), 0.0), 34.0) * (1.0 - 0.8 * flatness) * (isOrthographic ? 0.3 : 1.0);
    // In an elevation a wing stands edge on, layer behind layer: there the skin gives way to its lines.
    float open = max(mix(1.0, smoothstep(0.0, 0.5, facing), flatness), 0.24);
    float body = uClear * mix(0.6, 1.3, lamp);
    float veil = (body + uRim * rim + 0.2 * vTags.x) * open;
    vec3 colour = mix(uVellum, mix(uVellum, vec3(0.62, 0.8, 0.9), 0.35), uDark);
    float px = max(length(vec2(dFdx(vStation), dFdy(vStation))), 1e-5);
    if (uLimitsOn > 0.5 && vStation > uLimits.x && vStation < uLimits.y) {
      colour = mix(colour, uBand, 0.85);
      veil = veil * 0.9 + 0.08;
    }
    veil *= uThere;
    veil += uNear * gleam * 0.62 * open * mix(0.5, 1.0, uThere);
    colour = mix(colour, vec3(1.0), uNear * gleam);
    if (uRoomOn > 0.5 && vTags.y > 0.5) {
      float inside = step(uRoomAt.x, vStation) * step(vStation, uRoomAt.y);
      float hatch = smoothstep(0.35, 0.5, abs(fract((gl_FragCoord.x + gl_FragCoord.y) / 9.0) - 0.5) * 1.0);
      // Where something else stands in the way only the hatching is left.
      float clear = 0.0;
      for (int i = 0; i < MOST_FREE; i++) clear = max(clear, step(uFree[i].x, vStation) * step(vStation, uFree[i].y));
      colour = mix(colour, uRoom, inside * mix(0.55, 0.9, clear));
      veil += inside * mix(0.06 * hatch, 0.11 + 0.08 * hatch, clear);
      float end = max(edge(uRoomAt.x, px), edge(uRoomAt.y, px));
      colour = mix(colour, uRoom, end);
      veil = max(veil, end * 0.9);
    }
    gl_FragColor = vec4(colour, clamp(veil, 0.0, 0.94));
    #include <colorspace_fragment>
  }
`;

/** At most so many free stretches of the room can be shown. */
const MOST_FREE = 6;

/** How much of a view the skin of either side takes. */
const BODY = { far: { clear: 0.12, rim: 0.24 }, near: { clear: 0.05, rim: 0.6 } } as const;

/** One side of the skin of the airframe: `BackSide` is the far one, `FrontSide` the near one. */
export const createSkinMaterial = (side: Side) => {
  const near = side === 0;
  const { clear, rim } = near ? BODY.near : BODY.far;
  return new ShaderMaterial({
    defines: { MOST_FREE },
    vertexShader,
    fragmentShader,
    transparent: true,
    depthWrite: false,
    side,
    clipping: true,
    clippingPlanes: cutPlanes,
    uniforms: {
      uVellum: { value: new Color() },
      uBand: { value: new Color() },
      uRoom: { value: new Color() },
      uClear: { value: clear },
      uRim: { value: rim },
      uNear: { value: near ? 1 : 0 },
      uThere: { value: 1 },
      uDark: { value: 0 },
      uFlat: { value: new Vector2() },
      uLimits: { value: new Vector2() },
      uLimitsOn: { value: 0 },
      uRoomAt: { value: new Vector2() },
      uRoomOn: { value: 0 },
      uFree: { value: Array.from({ length: MOST_FREE }, () => new Vector2(1, 0)) },
    },
  });
};
