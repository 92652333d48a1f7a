import { useMemo, useRef } from 'react';
import { Matrix4, type Mesh, Quaternion, ShaderMaterial, Vector3 } from 'three';
import { principalMoments } from '../../engine/mass/principal';
import { cgErrorOf, PICTURE_95 } from '../../model/balance/certainty';
import { haloFactor } from '../../model/balance/haloScale';
import { useLive } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import { extentOnce } from '../frame/useGround';
import { useDisposed } from '../materials/useDisposed';

/** Clear in the middle and white towards the outline. */
const createHaloMaterial = () =>
  new ShaderMaterial({
    transparent: true,
    depthTest: false,
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
      void main() {
        float facing = abs(dot(normalize(vNormal), normalize(vToEye)));
        gl_FragColor = vec4(vec3(1.0), mix(1.0, 0.24, smoothstep(0.08, 0.4, facing)));
      }
    `,
  });

/**
 * How well the CG is known: an ellipsoid about it whose outline, looked at from anywhere, holds 95 % of the places where
 * the CG may truly be. Enlarged by the factor that the aircraft's card names.
 */
export function CgHalo() {
  const halo = useRef<Mesh>(null);
  const material = useDisposed(createHaloMaterial, []);
  const turned = useMemo(() => new Matrix4(), []);
  const turn = useMemo(() => new Quaternion(), []);

  useLive(({ document, balance, view }) => {
    const mesh = halo.current;
    if (!mesh) return;
    const answer = balance.get();
    const error = cgErrorOf(document.current(), answer);
    mesh.visible =
      error !== null &&
      answer.cgMm !== null &&
      layerShown(view.getState(), 'cg') &&
      !view.getState().looking.quiet;
    if (!error || !answer.cgMm) return;
    const { minMm, maxMm } = extentOnce(document.api.getState().committed);
    const factor = PICTURE_95 * haloFactor(Math.max(...error.sigmaMm), maxMm[0] - minMm[0]);
    // A covariance has principal axes as an inertia has.
    const { momentsGmm2: variances, axes } = principalMoments(error.covarianceMm2);
    turned.makeBasis(new Vector3(...axes[0]), new Vector3(...axes[1]), new Vector3(...axes[2]));
    mesh.quaternion.copy(turn.setFromRotationMatrix(turned));
    const [a, b, c] = variances.map((variance) => Math.max(factor * Math.sqrt(Math.max(0, variance)), 0.01));
    mesh.scale.set(a ?? 1, b ?? 1, c ?? 1);
    mesh.position.set(...answer.cgMm);
  });

  return (
    <mesh ref={halo} material={material} renderOrder={39} frustumCulled={false}>
      <sphereGeometry args={[1, 48, 32]} />
    </mesh>
  );
}
