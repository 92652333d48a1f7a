import { Color, ShaderMaterial } from 'three';

/** Clear where it faces the eye, bright at the rim, with a narrow gleam: the wall of a tank. */
export const createGlassMaterial = () =>
  new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    vertexShader: /* glsl */ `
      varying vec3 vNormal, vToEye;
      void main() {
        vec4 seen = modelViewMatrix * vec4(position, 1.0);
        vNormal = normalMatrix * normal;
        vToEye = isOrthographic ? vec3(0.0, 0.0, 1.0) : -seen.xyz;
        gl_Position = projectionMatrix * seen;
      }
    `,
    fragmentShader: /* glsl */ `
      varying vec3 vNormal, vToEye;
      uniform vec3 uColor;
      uniform float uLit;
      void main() {
        vec3 n = normalize(vNormal);
        vec3 eye = normalize(vToEye);
        float rim = pow(1.0 - abs(dot(n, eye)), 3.0);
        vec3 light = normalize((viewMatrix * vec4(-0.34, 0.84, 0.42, 0.0)).xyz);
        float gleam = pow(max(dot(n, normalize(light + eye)), 0.0), 60.0);
        gl_FragColor = vec4(mix(uColor, vec3(1.0), gleam), clamp(0.06 + 0.4 * rim + 0.6 * gleam + uLit, 0.0, 0.9));
        #include <colorspace_fragment>
      }
    `,
    uniforms: { uColor: { value: new Color() }, uLit: { value: 0 } },
  });
