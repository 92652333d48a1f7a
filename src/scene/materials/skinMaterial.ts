import { Color, DoubleSide, ShaderMaterial, Vector2 } from 'three';

const vertexShader = /* glsl */ `
  varying vec3 vNormal;
  varying vec3 vToEye;
  varying float vStation;
  void main() {
    vec4 world = modelMatrix * vec4(position, 1.0);
    vec4 seen = viewMatrix * world;
    vStation = world.x;
    vNormal = normalize(normalMatrix * normal);
    vToEye = isOrthographic ? vec3(0.0, 0.0, 1.0) : -seen.xyz;
    gl_Position = projectionMatrix * seen;
  }
`;

/**
 * Vellum: one colour all over, and only its opacity tells the form (clear where it faces the eye, bright
 * at the silhouette). Layers of one colour give the same picture in any order, so nothing needs sorting.
 */
const fragmentShader = /* glsl */ `
  varying vec3 vNormal;
  varying vec3 vToEye;
  varying float vStation;
  uniform vec3 uVellum, uBand, uRoom;
  uniform float uClear, uRim, uLit, uFlat;
  uniform vec2 uLimits, uRoomAt;
  uniform vec2 uFree[MOST_FREE];
  uniform float uLimitsOn, uRoomOn;

  float edge(float at, float px) { return 1.0 - smoothstep(0.4 * px, 1.4 * px, abs(vStation - at)); }

  void main() {
    vec3 n = normalize(vNormal);
    float facing = abs(dot(n, normalize(vToEye)));
    float rim = pow(1.0 - facing, 2.6);
    float lamp = 0.5 + 0.5 * n.y;
    // In an elevation a wing stands edge on, layer behind layer: there the skin gives way to its lines.
    float open = mix(1.0, smoothstep(0.0, 0.5, facing), uFlat);
    float veil = (uClear * mix(0.75, 1.35, lamp) + uRim * rim * (1.0 - uFlat) + uLit) * max(open, 0.24);
    vec3 colour = uVellum;
    float px = max(length(vec2(dFdx(vStation), dFdy(vStation))), 1e-5);
    if (uLimitsOn > 0.5 && vStation > uLimits.x && vStation < uLimits.y) {
      colour = mix(colour, uBand, 0.85);
      veil = veil * 0.9 + 0.1;
    }
    if (uRoomOn > 0.5) {
      float inside = step(uRoomAt.x, vStation) * step(vStation, uRoomAt.y);
      float hatch = smoothstep(0.35, 0.5, abs(fract((gl_FragCoord.x + gl_FragCoord.y) / 9.0) - 0.5) * 1.0);
      // Where something else stands in the way only the hatching is left.
      float clear = 0.0;
      for (int i = 0; i < MOST_FREE; i++) clear = max(clear, step(uFree[i].x, vStation) * step(vStation, uFree[i].y));
      colour = mix(colour, uRoom, inside * mix(0.55, 0.9, clear));
      veil += inside * mix(0.12 * hatch, 0.18 + 0.12 * hatch, clear);
      float end = max(edge(uRoomAt.x, px), edge(uRoomAt.y, px));
      colour = mix(colour, uRoom, end);
      veil = max(veil, end * 0.9);
    }
    gl_FragColor = vec4(colour, clamp(veil, 0.0, 0.94));
    #include <colorspace_fragment>
  }
`;

/** So many stretches of the room can be told from what is taken. */
export const MOST_FREE = 6;

/** The skin of the airframe. Hulls show the room of the selected part, so theirs is a material of its own. */
export const createSkinMaterial = () =>
  new ShaderMaterial({
    defines: { MOST_FREE },
    vertexShader,
    fragmentShader,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    uniforms: {
      uVellum: { value: new Color() },
      uBand: { value: new Color() },
      uRoom: { value: new Color() },
      uClear: { value: 0.11 },
      uRim: { value: 0.62 },
      uLit: { value: 0 },
      uFlat: { value: 0 },
      uLimits: { value: new Vector2() },
      uLimitsOn: { value: 0 },
      uRoomAt: { value: new Vector2() },
      uRoomOn: { value: 0 },
      uFree: { value: Array.from({ length: MOST_FREE }, () => new Vector2(1, 0)) },
    },
  });
