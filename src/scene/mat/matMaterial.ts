import { Color, ShaderMaterial, type Texture, Vector2, Vector3, Vector4 } from 'three';

const vertexShader = /* glsl */ `
  varying vec2 vPlace;
  void main() {
    vPlace = position.xy;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;

/** Lines keep a width of their own in mm, never thinner on screen than a pixel, and fade before they crowd. */
const fragmentShader = /* glsl */ `
  varying vec2 vPlace;
  uniform vec3 uMat, uLine, uRule, uBand;
  uniform vec4 uRect;
  uniform float uCorner, uMasked;
  uniform vec3 uSteps;
  uniform float uOrigin;
  uniform vec2 uLimits;
  uniform float uLimitsOn;
  uniform vec4 uRuleAt;
  uniform sampler2D uShadow;
  uniform vec4 uShadowRect;
  uniform float uShadowDepth;

  float perPixel(float c) { return max(length(vec2(dFdx(c), dFdy(c))), 1e-6); }
  float stripe(float d, float halfWide, float px) {
    float drawn = max(halfWide, px * 0.5);
    return (1.0 - smoothstep(drawn - px * 0.5, drawn + px * 0.5, d)) * min(1.0, halfWide / drawn + 0.35);
  }
  float every(float c, float step, float halfWide, float px) {
    float d = abs(fract(c / step - 0.5) - 0.5) * step;
    return stripe(d, halfWide, px) * smoothstep(4.0, 11.0, step / px);
  }
  float within(float c, float from, float to, float px) {
    return smoothstep(from - px * 0.5, from + px * 0.5, c) * (1.0 - smoothstep(to - px * 0.5, to + px * 0.5, c));
  }
  float roundedRect(vec2 p, vec4 rect, float r) {
    vec2 q = abs(p - (rect.xy + rect.zw) * 0.5) - (rect.zw - rect.xy) * 0.5 + r;
    return length(max(q, 0.0)) + min(max(q.x, q.y), 0.0) - r;
  }
  float grain(vec2 p) { return fract(sin(dot(floor(p), vec2(12.9898, 78.233))) * 43758.5453); }

  void main() {
    vec2 px = vec2(perPixel(vPlace.x), perPixel(vPlace.y));
    vec2 c = vec2(vPlace.x - uOrigin, vPlace.y);
    float minor = max(every(c.x, uSteps.x, 0.14, px.x), every(c.y, uSteps.x, 0.14, px.y));
    float middle = max(every(c.x, uSteps.y, 0.3, px.x), every(c.y, uSteps.y, 0.3, px.y));
    float major = max(every(c.x, uSteps.z, 0.55, px.x), every(c.y, uSteps.z, 0.55, px.y));
    vec3 colour = uMat;
    colour *= 1.0 + (grain(vPlace * 0.7) - 0.5) * 0.05 * smoothstep(3.0, 0.8, max(px.x, px.y));
    float ink = max(max(minor * 0.3, middle * 0.5), major * 0.95);

    float edge = roundedRect(vPlace, uRect, uCorner);
    float edgePx = perPixel(edge);
    float border = stripe(abs(edge + 14.0), 0.8, edgePx) * uMasked;
    ink *= mix(1.0, 1.0 - smoothstep(-16.0, -14.0, edge), uMasked);
    colour = mix(colour, uLine, max(ink, border * 0.9));

    float lit = 0.0;
    if (uLimitsOn > 0.5) {
      float inside = within(vPlace.x, uLimits.x, uLimits.y, px.x);
      float limit = max(stripe(abs(vPlace.x - uLimits.x), 0.8, px.x), stripe(abs(vPlace.x - uLimits.y), 0.8, px.x));
      float on = mix(1.0, 1.0 - smoothstep(-15.0, -14.0, edge), uMasked);
      vec3 strip = mix(uBand, uMat, ink * 0.3);
      colour = mix(colour, strip, inside * on * mix(0.36, 0.92, uMasked));
      colour = mix(colour, uBand, limit * on * 0.95);
      lit = max(inside, limit) * 0.65;
    }

    if (uRuleAt.y > uRuleAt.x) {
      float along = within(vPlace.x, uRuleAt.x - px.x, uRuleAt.y + px.x, px.x);
      float below = uRuleAt.z - vPlace.y;
      float base = stripe(abs(below), 0.9, px.y);
      float t = every(c.x, uSteps.x, 0.45, px.x) * within(below, 0.0, uRuleAt.w * 0.2, px.y);
      t = max(t, every(c.x, uSteps.y, 0.6, px.x) * within(below, 0.0, uRuleAt.w * 0.33, px.y));
      t = max(t, every(c.x, uSteps.z, 0.8, px.x) * within(below, 0.0, uRuleAt.w * 0.5, px.y));
      colour = mix(colour, uRule, max(base, t) * along);
    }

    if (uShadowDepth > 0.0) {
      vec2 s = (vPlace - uShadowRect.xy) / (uShadowRect.zw - uShadowRect.xy);
      vec2 dark = texture2D(uShadow, s).rg;
      // The band stays a bright strip even where the wing shades all of it.
      colour *= 1.0 - uShadowDepth * (1.0 - lit) * (1.0 - (1.0 - dark.r * 0.75) * (1.0 - dark.g));
    }

    float rim = stripe(abs(edge), 1.6, edgePx) * uMasked;
    colour = mix(colour, uLine * 1.15, rim * 0.8);
    float outside = smoothstep(-edgePx * 0.5, edgePx * 0.5, edge) * uMasked;
    float under = 0.34 * exp(-max(edge, 0.0) / 34.0) * (1.0 - smoothstep(60.0, 140.0, edge));
    gl_FragColor = vec4(mix(colour, vec3(0.02, 0.03, 0.03), outside), mix(1.0, under, outside));
    #include <colorspace_fragment>
  }
`;

export const createMatMaterial = () =>
  new ShaderMaterial({
    vertexShader,
    fragmentShader,
    transparent: true,
    depthWrite: false,
    uniforms: {
      uMat: { value: new Color() },
      uLine: { value: new Color() },
      uRule: { value: new Color() },
      uBand: { value: new Color() },
      uRect: { value: new Vector4() },
      uCorner: { value: 24 },
      uMasked: { value: 1 },
      uSteps: { value: new Vector3(10, 50, 100) },
      uOrigin: { value: 0 },
      uLimits: { value: new Vector2() },
      uLimitsOn: { value: 0 },
      uRuleAt: { value: new Vector4() },
      uShadow: { value: null as Texture | null },
      uShadowRect: { value: new Vector4(0, 0, 1, 1) },
      uShadowDepth: { value: 0 },
    },
  });
