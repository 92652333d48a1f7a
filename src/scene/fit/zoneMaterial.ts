import { Color, DoubleSide, ShaderMaterial } from 'three';

/** The colour of what is to be kept out of. */
export const KEEP_OUT = '#ffcf4a';

/** A tint with hatching across the screen, so that colour is not alone. */
export const createZoneMaterial = () =>
  new ShaderMaterial({
    vertexShader: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: /* glsl */ `
      uniform vec3 uColor;
      uniform float uStrength;
      void main() {
        float hatch = smoothstep(0.36, 0.46, abs(fract((gl_FragCoord.x - gl_FragCoord.y) / 12.0) - 0.5));
        gl_FragColor = vec4(uColor, uStrength * (0.10 + 0.22 * hatch));
        #include <colorspace_fragment>
      }
    `,
    uniforms: { uColor: { value: new Color(KEEP_OUT) }, uStrength: { value: 0.55 } },
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
  });
